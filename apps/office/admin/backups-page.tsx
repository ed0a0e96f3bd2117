// Backups, honestly: the service makes none; how they are made, what was noted, and noting one.

import { useQuery } from '@tanstack/react-query';
import { backupsQuery, type BackupNote } from '../api/administration.js';
import { useNames } from '../api/queries.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { day, moment } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';
import { NoteBackup } from './note-backup.js';

export function BackupsPage() {
  const backups = useQuery(backupsQuery);
  return (
    <Page title="Backups" section="Admin">
      <AdminNav />
      {backups.isPending && <Loading what="the backups" />}
      {backups.error && <Failure error={backups.error} retry={() => void backups.refetch()} />}
      {backups.data && (
        <>
          <p role="status">
            <strong>{last(backups.data.noted)}</strong>
          </p>
          <How />
          <NoteBackup />
          <Noted noted={backups.data.noted} />
        </>
      )}
    </Page>
  );
}

function last(noted: readonly BackupNote[]): string {
  const made = noted.filter(({ what }) => what === 'made').map(({ on }) => on);
  const tried = noted.filter(({ what }) => what === 'restored-on-trial').map(({ on }) => on);
  const newest = (days: readonly string[]) => day([...days].sort().at(-1));
  return [
    made.length > 0 ? `The last backup noted is of ${newest(made)}.` : 'No backup is noted.',
    tried.length > 0
      ? `One was last restored on trial on ${newest(tried)}.`
      : 'None was ever restored on trial: until then nobody knows that one works.',
  ].join(' ');
}

const How = () => (
  <section className="sheet stack" aria-labelledby="how">
    <h2 id="how">How backups are made</h2>
    <p>
      This service makes no backups and cannot see whether somebody does. Whoever runs the server
      copies two things, each day, to another place:
    </p>
    <ol className="steps-of">
      <li>
        The database, whole, while the service runs:
        <pre className="digest note">
          pg_dump --format=custom --file=gauge-DATE.dump "$DATABASE_URL"
        </pre>
        With the database that comes with the product, stop the service and copy its data folder
        instead.
      </li>
      <li>
        The folder of keys beside the data. Without it old papers still verify, but nothing can be
        signed with the same key; keep it as you keep a signature stamp.
      </li>
    </ol>
    <p>
      Restoring an old copy takes entries away. The signer notices: it refuses to sign a record that
      does not continue its last checkpoint, and says so on the page of health.
    </p>
  </section>
);

function Noted({ noted }: { readonly noted: readonly BackupNote[] }) {
  const nameOf = useNames(noted.map(({ by }) => by));
  if (noted.length === 0) return null;
  return (
    <PlainTable
      caption="What was noted"
      note="Newest first; each an entry of the record"
      columns={['On', 'What', 'Where', 'Noted by']}
      rows={noted.map(({ what, on, where, by, at }) => [
        day(on),
        what === 'made' ? 'Backup made' : 'Restored on trial',
        where,
        `${nameOf(by)}, ${moment(at)}`,
      ])}
    />
  );
}
