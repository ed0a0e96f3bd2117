// Legal holds: those that stand keep whom they cover from being erased.

import { Link } from '@tanstack/react-router';
import type { Hold } from '../api/disposal.js';
import { Empty } from '../parts/states.js';
import { PlainTable, Tag } from '../parts/table.js';
import { ActDialog } from './act-dialog.js';
import { who } from './erasures.js';

export function Holds({ holds }: { readonly holds: readonly Hold[] }) {
  if (holds.length === 0)
    return (
      <Empty title="No legal hold was placed">
        <p>While a hold stands on a job, nobody its record names can be erased.</p>
      </Empty>
    );
  return (
    <PlainTable
      caption="Legal holds"
      note="Newest first"
      columns={['On', 'State', 'Placed', 'Released', 'What you can do']}
      rows={holds.map(({ id, on, placed, released }) => [
        on.kind === 'job' ? (
          <Link key="job" to="/jobs/$job" params={{ job: on.id }}>
            Job {on.name}
          </Link>
        ) : (
          on.name
        ),
        released ? (
          <Tag key="state" tone="plain">
            Released
          </Tag>
        ) : (
          <Tag key="state" tone="blocked">
            Stands
          </Tag>
        ),
        who(placed),
        released ? who(released) : '',
        !released && (
          <ActDialog
            key="release"
            path={`/disposal/holds/${id}/release`}
            opener="Release"
            about={`the hold on ${on.name}`}
            words={{
              title: `Release the hold on ${on.name}`,
              does: 'Release it',
              done: 'The hold is released.',
            }}
            withReason
          >
            <p>Erasures that it kept back can then be asked for and confirmed.</p>
          </ActDialog>
        ),
      ])}
    />
  );
}
