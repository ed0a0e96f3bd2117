// Which later stages a change would put up for re-check, said before the change is made.

import { label } from '#jobs/contract';
import type { JobView, Rehearsal } from '#jobs/contract';
import { capital, pathWords } from './words.js';

export function Reopens({
  job,
  reopens,
}: {
  readonly job: Pick<JobView, 'surfaces'>;
  readonly reopens: Rehearsal['reopens'];
}) {
  if (reopens.length === 0) return null;
  const surface = (id: string) => job.surfaces.find((each) => each.id === id)?.name ?? id;
  return (
    <section className="notice waiting stack tight" role="status" aria-label="What this reopens">
      <h2>
        This puts {reopens.length} {reopens.length === 1 ? 'stage' : 'stages'} up for re-check
      </h2>
      <ul>
        {reopens.map((each, i) => (
          <li key={i}>
            <strong>
              {surface(each.surface)}, {capital(label(each.stage))}
            </strong>
            {each.because.length > 0 && `: it read ${each.because.map(pathWords).join('; ')}`}
          </li>
        ))}
      </ul>
      <p>
        What they say stays visible, but counts only when confirmed again. An approved sign-off must
        be given again or reaffirmed by its engineer.
      </p>
    </section>
  );
}
