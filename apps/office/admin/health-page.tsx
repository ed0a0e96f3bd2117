// Health of the service: its version, whether the record held when it was last verified, and how far each
// list is behind it.

import { useQuery } from '@tanstack/react-query';
import type { Health } from '../api/answers.js';
import { healthQuery } from '../api/queries.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { moment } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';
import { timed } from '../record/time-words.js';
import { Verification } from './verification.js';

export function HealthPage() {
  const health = useQuery({ ...healthQuery, refetchInterval: 10_000 });
  const text = (n: number) => n.toLocaleString('en-US');
  return (
    <Page title="Health of the service" section="Admin">
      <AdminNav />
      {health.isPending && <Loading what="the health" />}
      {health.error && <Failure error={health.error} retry={() => void health.refetch()} />}
      {health.data && (
        <>
          <p role="status">
            <strong>{health.data.ok ? 'The service works.' : 'Something is wrong.'}</strong> Version{' '}
            {health.data.version}.
          </p>
          {health.data.verification && <Verification found={health.data.verification} />}
          {health.data.time_stamp && (
            <section className="stack" aria-labelledby="time-title">
              <h2 id="time-title">Time-stamps</h2>
              {timed(health.data.time_stamp).map((words) => (
                <p key={words}>{words}</p>
              ))}
            </section>
          )}
          {health.data.clock && <Clock found={health.data.clock} />}
          <PlainTable
            caption="Lists kept from the record"
            note="Behind means entries recorded and not yet in the list"
            columns={[
              'List',
              { name: 'At position', num: true },
              { name: 'Record at', num: true },
              { name: 'Behind', num: true },
            ]}
            rows={health.data.lists.map(({ name, pos, head }) => [
              name,
              text(pos),
              text(head),
              text(Math.max(0, head - pos)),
            ])}
          />
        </>
      )}
    </Page>
  );
}

function Clock({ found: { steps, last } }: { readonly found: NonNullable<Health['clock']> }) {
  const seconds = (last.behind_ms / 1000).toLocaleString('en-US', { maximumFractionDigits: 1 });
  return (
    <p>
      <strong>The clock was set back{steps === 1 ? '' : ` ${steps} times`}.</strong> It last showed{' '}
      {moment(last.clock)} when the newest entry was of {moment(last.after)}, {seconds} s later. The
      record kept its order, by position, and tells of it at position{' '}
      {last.position.toLocaleString('en-US')}; until the clock had caught up, the times of entries
      show their order and not the hour. Have the server’s clock looked at.
    </p>
  );
}
