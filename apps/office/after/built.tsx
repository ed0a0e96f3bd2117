// Delivery and installation in words: lots by plane, as built, inspection, punch list, completion.

import type { JobView } from '#jobs/contract';
import { PlainTable, Tag } from '../parts/table.js';
import { day } from '../parts/words.js';
import { List } from './orders.js';
import { surfaceName } from './pick.js';
import { To } from './to.js';

const MIXED = {
  no: 'one lot',
  accepted: 'mixed lots, accepted in writing',
  'not accepted': 'mixed lots, not accepted',
} as const;

export function Built({ job }: { readonly job: JobView }) {
  const { lots, as_built, inspection, punch, completed_on } = job.after;
  const open = punch.filter((each) => each.open);
  return (
    <section className="sheet stack" aria-label="Delivery and installation">
      <h3>Delivery and installation</h3>
      {lots.length > 0 && (
        <PlainTable
          caption="Lots by plane"
          columns={['Surface', 'Lots', 'Standing']}
          rows={lots.map((each) => [
            surfaceName(job, each.surface),
            each.lots.join(', ') || 'none recorded',
            MIXED[each.mixed],
          ])}
        />
      )}
      {as_built.length === 0 && <p>Nothing is recorded as built.</p>}
      {as_built.map(({ surface, differences }) =>
        differences.length === 0 ? (
          <p key={surface}>{surfaceName(job, surface)}: built as approved.</p>
        ) : (
          <List
            key={surface}
            name={`${surfaceName(job, surface)}: differs from what was approved`}
            lines={differences}
          />
        ),
      )}
      <p>
        {inspection === null
          ? 'The final inspection is not recorded.'
          : `Final inspection on ${day(inspection.on)}: ${inspection.passed ? 'passed' : 'not passed'}.`}
      </p>
      {punch.length > 0 && (
        <>
          <p>
            Punch list: {open.length} of {punch.length} open.
          </p>
          <ul>
            {punch.map((each) => (
              <li key={each.id}>
                <Tag tone={each.open ? 'waiting' : 'ready'}>{each.open ? 'Open' : 'Closed'}</Tag>{' '}
                {each.words}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        {completed_on === null
          ? 'Completion is not recorded.'
          : `Completed on ${day(completed_on)}.`}
      </p>
      <p className="row">
        <To job={job} command="accept-mixed-lots" />
        <To job={job} command="record-as-built" />
        <To job={job} command="record-inspection" />
        <To job={job} command="close-punch-item" />
        <To job={job} command="record-completion" />
      </p>
    </section>
  );
}
