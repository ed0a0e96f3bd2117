// The signing key of the record: its public form and fingerprint, and what to do with them.

import { useQuery } from '@tanstack/react-query';
import { keysQuery, type SigningKeys } from '../api/administration.js';
import { useNames } from '../api/queries.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { count, moment } from '../parts/words.js';
import { Keys } from '../record/keys.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';

export function KeysPage() {
  const keys = useQuery(keysQuery);
  return (
    <Page title="Keys" section="Admin">
      <AdminNav />
      {keys.isPending && <Loading what="the keys" />}
      {keys.error && <Failure error={keys.error} retry={() => void keys.refetch()} />}
      {keys.data && !keys.data.signs && (
        <Empty title="This installation signs nothing">
          <p>
            It was started without a folder for its key. Papers carry no proof, and whoever has the
            database could rewrite the record unseen.
          </p>
        </Empty>
      )}
      {keys.data?.signs && <Signing {...keys.data} />}
    </Page>
  );
}

function Signing({ keys, changes, checkpoint }: SigningKeys) {
  const nameOf = useNames(changes.map(({ by }) => by));
  return (
    <>
      <p>
        Checkpoints of the record are signed with this key. Its secret half lies in the folder of
        keys beside the data, outside the database, readable for the service alone; no page shows
        it.
      </p>
      <Keys keys={keys} />
      <section className="sheet stack" aria-labelledby="keep">
        <h2 id="keep">Keep this outside the office</h2>
        <p>
          Give the key and a checkpoint to somebody who does not work here: the company’s
          accountant, counsel, an insurer. With them a later alteration of the record shows; without
          them nobody outside can tell.
        </p>
        {checkpoint ? (
          <>
            <p>
              The last checkpoint covers {count(checkpoint.size, 'entry', 'entries')} of the record.
            </p>
            <pre className="digest note">{checkpoint.note}</pre>
          </>
        ) : (
          <p>No checkpoint is signed yet; the first paper that is issued makes one.</p>
        )}
      </section>
      <section className="sheet stack" aria-labelledby="change-key">
        <h2 id="change-key">Changing the key</h2>
        <p>
          The key is the installation’s and signs for every company in it, so whoever keeps the
          server changes it, on that server: when the folder of keys may have been seen by somebody,
          or when a person who could read it leaves. The first command says what is in use and what
          a change does; the second one changes it.
        </p>
        <pre className="digest note">
          {`npm run -s keys -- show\nnpm run -s keys -- change --from ${keys[0]?.fingerprint ?? 'FINGERPRINT'}`}
        </pre>
        <p>
          What the key before has signed stays valid. Give the new key to whoever held the old one.
        </p>
      </section>
      {changes.length === 0 ? (
        <p>The key was never changed. A change is an entry of the record, signed by both keys.</p>
      ) : (
        <PlainTable
          caption="Changes of key"
          note="Entries of the record, signed by the key that went and the one that came"
          columns={[{ name: 'Position', num: true }, 'When', 'By', 'From', 'To']}
          rows={changes.map(({ pos, at, by, from, to }) => [
            pos.toLocaleString('en-US'),
            moment(at),
            nameOf(by),
            from.split('+')[1] ?? from,
            to.split('+')[1] ?? to,
          ])}
        />
      )}
    </>
  );
}
