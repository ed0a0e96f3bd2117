// "Order and after" on a job's page: the order, what was built, warranty, claims, the papers.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { label, type JobView } from '#jobs/contract';
import { sessionQuery } from '../api/queries.js';
import { SaleFacts } from '../facts/fact-list.js';
import { capital } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { TakeOffs } from '../take-off/take-offs.js';
import { Built } from './built.js';
import { Orders } from './orders.js';
import { Papers } from './papers.js';
import { Claims, Warranties } from './warranties.js';

export function OrderAndAfter({
  job,
  nameOf,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
}) {
  const office = has(useQuery(sessionQuery).data, ...OFFICE);
  const ordered = job.after.orders.length > 0;
  return (
    <section className="stack wide" id="order-and-after" aria-labelledby="order-and-after-title">
      <div className="row ends">
        <h2 id="order-and-after-title">Order and after</h2>
        {office && (
          <Link to="/jobs/$job/order" params={{ job: job.id }} className="button">
            {ordered ? 'Issue another order' : 'Issue an order'}
          </Link>
        )}
      </div>
      {job.after.stage !== null && <p>Stands at: {capital(label(job.after.stage))}.</p>}
      <SaleFacts job={job} nameOf={nameOf} may={office} />
      <TakeOffs job={job} nameOf={nameOf} />
      <Orders job={job} nameOf={nameOf} />
      {ordered && <Built job={job} />}
      {ordered && <Warranties job={job} />}
      {(ordered || job.after.claims.length > 0) && <Claims job={job} nameOf={nameOf} />}
      <Papers job={job} />
    </section>
  );
}
