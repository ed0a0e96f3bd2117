// Erasures that were asked for: what state each is in, and who can do what about it.

import type { Act, Erasure, Ground } from '../api/disposal.js';
import { Empty } from '../parts/states.js';
import { PlainTable, Tag, type Tone } from '../parts/table.js';
import { moment } from '../parts/words.js';
import { ActDialog } from './act-dialog.js';

export const GROUNDS: Readonly<Record<Ground, string>> = {
  'asked-by-the-person': 'The person asked for it',
  'asked-by-law': 'The law asks for it',
  'no-longer-needed': 'No longer needed',
};

const STATES: Readonly<Record<Erasure['state'], readonly [Tone, string]>> = {
  open: ['waiting', 'Waits for another administrator'],
  confirmed: ['blocked', 'Confirmed, and not completed'],
  withdrawn: ['plain', 'Withdrawn'],
  done: ['ready', 'Erased'],
};

export function Erasures({ erasures }: { readonly erasures: readonly Erasure[] }) {
  if (erasures.length === 0)
    return (
      <Empty title="No erasure was asked for">
        <p>Ask for one below, from a job that names the person or the site.</p>
      </Empty>
    );
  return (
    <PlainTable
      caption="Erasures"
      note="Newest first"
      columns={['Of', 'State', 'Why', 'Asked', 'Answered', 'What you can do']}
      rows={erasures.map((each) => {
        const [tone, words] = STATES[each.state];
        const { ground, asked, confirmed, withdrawn } = each;
        return [
          each.party.name,
          <Tag key="state" tone={tone}>
            {words}
          </Tag>,
          GROUNDS[ground],
          who(asked),
          confirmed
            ? `Confirmed: ${who(confirmed)}`
            : withdrawn
              ? `Withdrawn: ${who(withdrawn)}`
              : '',
          <Acts key="acts" erasure={each} />,
        ];
      })}
    />
  );
}

export const who = ({ by, at, why }: Act): string =>
  `${by}, ${moment(at)}${why === undefined ? '' : `: ${why}`}`;

function Acts({ erasure: { id, state, mine, party, asked } }: { readonly erasure: Erasure }) {
  if (state === 'done' || state === 'withdrawn') return null;
  const confirm = state === 'confirmed' || !mine;
  return (
    <div className="row">
      {confirm && (
        <ActDialog
          path={`/disposal/erasures/${id}/confirmation`}
          opener={state === 'confirmed' ? 'Complete' : 'Confirm'}
          about={`the erasure of ${party.name}`}
          words={{
            title: `Erase ${party.name}`,
            does: 'Erase for good',
            done: 'The details are erased.',
          }}
          danger
        >
          <p>
            Asked for by {who(asked)}. All versions of the details and the prints that name them go,
            and cannot be brought back; backups keep them until those are gone.
          </p>
        </ActDialog>
      )}
      {!confirm && <span>You asked; another administrator confirms</span>}
      {state === 'open' && (
        <ActDialog
          path={`/disposal/erasures/${id}/withdrawal`}
          opener="Withdraw"
          about={`the erasure of ${party.name}`}
          words={{
            title: `Withdraw the erasure of ${party.name}`,
            does: 'Withdraw it',
            done: 'The erasure is withdrawn.',
          }}
          withReason
        >
          <p>The details stay. The erasure can be asked for again.</p>
        </ActDialog>
      )}
    </div>
  );
}
