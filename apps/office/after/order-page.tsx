// Issuing an order, or a new revision of it: fields, everything that stands against it, a review, then
// confirmed.

import { useQuery } from '@tanstack/react-query';
import { Link, useSearch } from '@tanstack/react-router';
import type { JobView } from '#jobs/contract';
import { sessionQuery, type JobAnswer } from '../api/queries.js';
import { jobCrumbs, WithJob } from '../jobs/use-job.js';
import { Cautions, LOAD_CAUTIONS, ROOF_CAUTIONS } from '../parts/cautions.js';
import { Empty } from '../parts/states.js';
import { day, parseDay } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { CommandForm } from './command-form.js';
import { LinesTable } from './lines-table.js';
import {
  askedOrder,
  orderCommand,
  orderFaults,
  orderTyped,
  type OrderTyped,
} from './order-entry.js';
import { OrderFields, STANDINGS } from './order-fields.js';
import { nextId, surfaceName } from './pick.js';

export const OrderPage = () => <WithJob>{(answer) => <Order {...answer} />}</WithJob>;

function Order({ job, version }: JobAnswer) {
  const { order: named } = useSearch({ strict: false }) as { order?: string };
  const office = has(useQuery(sessionQuery).data, ...OFFICE);
  const changing = job.after.orders
    .filter(({ change_order }) => change_order)
    .map(({ order }) => order);
  const order =
    changing.find((each) => each === named) ??
    changing[0] ??
    nextId(
      '',
      job.after.orders.map((each) => each.order),
    );
  const again = changing.includes(order);
  return (
    <Page
      title={again ? `Issue order ${order} again` : `Issue order ${order}`}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={
        <p>
          An order freezes what each surface’s stages settled. What changes later is a change order.
        </p>
      }
    >
      {office ? (
        <CommandForm<OrderTyped>
          key={order}
          job={job}
          version={version}
          name={`order ${order}`}
          initial={orderTyped(job, order)}
          faults={(typed) => orderFaults(job, typed)}
          command={(typed) => orderCommand(order, typed)}
          asked={(typed) => askedOrder(order, typed)}
          place={place}
          button="Issue the order"
          saved="The order was issued."
          review={{
            correct:
              'Open a change order, with a reason, and issue it again. Both revisions stay, with the difference.',
            words: (typed) => reviewWords(job, typed),
            below: (typed) => (
              <LinesTable job={job} caption="Lines of the order" lines={typed.lines} />
            ),
          }}
        >
          {(given) => <OrderFields job={job} {...given} />}
        </CommandForm>
      ) : (
        <Empty title="Not for your role">
          <p>
            Your role may read orders, not issue them.{' '}
            <Link to="/jobs/$job" params={{ job: job.id }}>
              Back to the job
            </Link>
          </p>
        </Empty>
      )}
      <Cautions lines={[...LOAD_CAUTIONS, ...ROOF_CAUTIONS]} />
    </Page>
  );
}

const place = (pointer: string): string => {
  const [, name = ''] = pointer.split('/');
  return (
    {
      landing_place: 'landing',
      lines: 'add-line',
      supplier: 'supplier',
      date: 'date',
      delivery: 'delivery',
    }[name] ?? ''
  );
};

const reviewWords = (job: JobView, typed: OrderTyped): readonly (readonly [string, string])[] => [
  ['Supplier', typed.supplier],
  ['Date', day(parseDay(typed.date))],
  ['Delivery', day(parseDay(typed.delivery)) || 'no date'],
  ['Landing place', typed.landing || 'none named'],
  ...typed.lengths.map(
    ({ surface, by, standing, signedBy }) =>
      [
        `Lengths of ${surfaceName(job, surface)}`,
        `${by === 'take-off' ? 'From the take-off' : 'Entered'}. ${STANDINGS.find(({ value }) => value === standing)?.label}${standing === 'signed' ? `: ${signedBy}` : ''}`,
      ] as const,
  ),
];
