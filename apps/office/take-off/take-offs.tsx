// The take-offs of a job in few words: which surface has one, and whether it still counts.

import { Link } from '@tanstack/react-router';
import type { JobView } from '#jobs/contract';
import { feetInches } from '#drawings';
import { Heads, ScrollTable, Tag } from '../parts/table.js';
import { capital, moment } from '../parts/words.js';

export function TakeOffs({
  job,
  nameOf,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
}) {
  const surfaces = job.surfaces.filter(({ withdrawn }) => withdrawn === null);
  if (surfaces.length === 0) return null;
  return (
    <ScrollTable caption="Take-offs">
      <Heads names={['Surface', 'State', 'Pieces', 'Longest', 'Covered', 'Recorded']} />
      <tbody>
        {surfaces.map(({ id, name }) => {
          const taken = job.take_offs.find((each) => each.surface === id);
          return (
            <tr key={id}>
              <th scope="row">
                <Link
                  className="row-link"
                  to="/jobs/$job/take-off/$surface"
                  params={{ job: job.id, surface: id }}
                >
                  Take-off of {name}
                </Link>
              </th>
              <td>
                {!taken ? (
                  'not taken off yet'
                ) : taken.stands === 'current' ? (
                  <Tag tone="ready">Up to date</Tag>
                ) : (
                  <>
                    <Tag tone="blocked">Out of date</Tag> {capital(taken.stale_because.join('; '))}
                  </>
                )}
              </td>
              <td>{taken ? taken.pieces : ''}</td>
              <td>{taken ? feetInches(Number(taken.longest_in)) : ''}</td>
              <td>{taken ? `${Number(taken.area_ft2).toFixed(0)} ft²` : ''}</td>
              <td>{taken ? `${nameOf(taken.recorded.by)}, ${moment(taken.recorded.at)}` : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </ScrollTable>
  );
}
