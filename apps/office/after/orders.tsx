// Orders in words: the revision in force, differences, what is still short, what comes next.

import { Link } from '@tanstack/react-router';
import {
  label,
  type JobView,
  type LineDifference,
  type OrderView,
  type RevisionView,
} from '#jobs/contract';
import { Tag } from '../parts/table.js';
import { day, moment, prose } from '../parts/words.js';
import { LinesTable } from './lines-table.js';
import { inForce, surfaceName } from './pick.js';
import { To } from './to.js';

export function Orders({
  job,
  nameOf,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
}) {
  if (job.after.orders.length === 0) return <p>Nothing is ordered yet.</p>;
  return job.after.orders.map((order) => (
    <Order key={order.order} job={job} order={order} nameOf={nameOf} />
  ));
}

function Order({
  job,
  order,
  nameOf,
}: {
  readonly job: JobView;
  readonly order: OrderView;
  readonly nameOf: (id: string) => string;
}) {
  const now = inForce(order);
  const { change_order, acknowledgment, receipts, short, damaged } = order;
  return (
    <section className="sheet stack" aria-label={`Order ${order.order}`}>
      <h3>Order {order.order}</h3>
      {change_order && (
        <p>
          <Tag tone="waiting">Change order open</Tag> {change_order.reason} (
          {moment(change_order.at)}).{' '}
          <Link to="/jobs/$job/order" params={{ job: job.id }} search={{ order: order.order }}>
            Issue it again
          </Link>
        </p>
      )}
      {now && <Revision job={job} order={order} now={now} nameOf={nameOf} />}
      {order.revisions.length > 1 && (
        <Differences name="What this revision changed" list={now?.difference ?? []} />
      )}
      {acknowledgment === null ? (
        <p>The supplier’s acknowledgment is not recorded yet.</p>
      ) : (
        <Differences name="The supplier’s acknowledgment" list={acknowledgment.differences} />
      )}
      <p>
        {receipts.length === 0
          ? 'Nothing was received yet.'
          : `${receipts.length} ${receipts.length === 1 ? 'receipt' : 'receipts'}, the last on ${day(receipts.at(-1)?.on)}.`}
        {receipts.length > 0 && short.length === 0 && ' Nothing is short.'}
      </p>
      {receipts.length > 0 && short.length > 0 && <List name="Still short" lines={short} />}
      {damaged.length > 0 && <List name="Damaged, not settled" lines={damaged} />}
      <p className="row">
        <To job={job} command="record-acknowledgment" about={order.order} />
        <To job={job} command="record-receipt" about={order.order} />
        {(short.length > 0 || damaged.length > 0) && (
          <To job={job} command="settle-receipt" about={order.order} />
        )}
        {change_order ? (
          <To job={job} command="withdraw-change-order" about={order.order} />
        ) : (
          <To job={job} command="open-change-order" about={order.order} />
        )}
      </p>
    </section>
  );
}

const Revision = ({
  job,
  order,
  now,
  nameOf,
}: {
  readonly job: JobView;
  readonly order: OrderView;
  readonly now: RevisionView;
  readonly nameOf: (id: string) => string;
}) => {
  const files = `/api/jobs/${job.id}/orders/${order.order}.${now.revision}`;
  return (
    <>
      <p>
        Revision {now.revision} is in force
        {now.revision > 1 && `; ${now.revision - 1} before it superseded`}. {now.supplier}, dated{' '}
        {day(now.date)}; delivery {day(now.delivery) || 'without a date'}; landing place{' '}
        {now.landing_place ?? 'not named'}. Issued by {nameOf(now.issued.by)},{' '}
        {moment(now.issued.at)}.
      </p>
      <p>
        Lines of revision {now.revision}: <a href={`${files}/lines.csv`}>CSV</a> or{' '}
        <a href={`${files}/lines.xlsx`}>XLSX</a>
      </p>
      <LinesTable
        job={job}
        caption={`Order ${order.order}, revision ${now.revision}`}
        lines={now.lines.map((line) => ({
          ...line,
          length: line.length?.v ?? '',
          count: String(line.count),
          weight: line.weight?.v ?? '',
          price: line.price?.v ?? '',
        }))}
      />
      <ul>
        {now.lengths.map(({ surface, standing, by, signed_by }) => (
          <li key={surface}>
            Lengths of {surfaceName(job, surface)}: {lengthsWords(now, surface, by)};{' '}
            {standing === 'signed' ? `measured by ${signed_by ?? 'nobody'}` : label(standing)}
          </li>
        ))}
      </ul>
    </>
  );
};

/** "from take-off 2 of Roof plan A2" or "entered". */
function lengthsWords({ take_offs }: RevisionView, surface: string, by: string): string {
  const taken = take_offs.find((each) => each.surface === surface);
  if (taken) return `from take-off ${taken.number}, ${taken.measured_from}`;
  return by === 'take-off' ? 'from a take-off' : 'entered';
}

const Differences = ({
  name,
  list,
}: {
  readonly name: string;
  readonly list: readonly LineDifference[];
}) =>
  list.length === 0 ? (
    <p>{name}: no difference.</p>
  ) : (
    <List
      name={name}
      lines={list.map(
        ({ line, what, from, to }) =>
          `${line.toUpperCase()} ${what}: ${from ?? 'nothing'} → ${to ?? 'nothing'}`,
      )}
    />
  );

export const List = ({
  name,
  lines,
}: {
  readonly name: string;
  readonly lines: readonly string[];
}) => (
  <div>
    <p>{name}:</p>
    <ul>
      {lines.map((each, i) => (
        <li key={i}>{prose(each)}</li>
      ))}
    </ul>
  </div>
);
