// What is known otherwise today than when the gauge of the claim's surface was chosen: only what differs.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { jobQuery } from '../api/queries.js';
import { surfaceName } from '../after/pick.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { count, moment } from '../parts/words.js';
import { differences } from '../record/differences.js';
import type { OfClaim } from './of-claim.js';

export function Since({ job, claim }: OfClaim) {
  const chosen = job.surfaces.find(({ id }) => id === claim.surface)?.stages.gauge.confirmed?.at;
  return (
    <section className="stack" aria-labelledby="since">
      <h2 id="since">Known then, and known today</h2>
      {chosen === undefined ? (
        <p>No gauge was chosen for {surfaceName(job, claim.surface)}.</p>
      ) : (
        <Compared job={job} claim={claim} chosen={chosen} />
      )}
    </section>
  );
}

function Compared({ job, claim, chosen }: OfClaim & { readonly chosen: string }) {
  const then = useQuery(jobQuery(job.id, { asOf: chosen }));
  if (then.isPending) return <Loading what="the job as it stood" />;
  if (then.data === undefined)
    return <Failure error={then.error} retry={() => void then.refetch()} />;
  const name = surfaceName(job, claim.surface);
  const rows = differences(then.data.job, job).filter(
    ({ what }) => what.startsWith(`${name}:`) || what.startsWith('Site:'),
  );
  return (
    <>
      <p>
        The gauge was chosen on {moment(chosen)}.{' '}
        {rows.length === 0
          ? 'What is known of this surface and its site has not changed since.'
          : `${count(rows.length, 'thing')} of this surface and its site ${rows.length === 1 ? 'is' : 'are'} known otherwise today.`}
      </p>
      {rows.length > 0 && (
        <PlainTable
          caption="Facts of the surface and the site"
          columns={['What', 'How', 'Known then', 'Known today']}
          rows={rows.map((row) => [row.what, row.how, row.before, row.after])}
        />
      )}
      <p>
        <Link to="/jobs/$job/record" params={{ job: job.id }} search={{ asOf: chosen }}>
          The decision record as of that moment
        </Link>
      </p>
    </>
  );
}
