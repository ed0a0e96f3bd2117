// As built against as approved, of the claim's surface.

import { attachmentLines } from './attachment-lines.js';
import { FactTable } from '../parts/fact-table.js';
import { Tag } from '../parts/table.js';
import { prose } from '../parts/words.js';
import type { OfClaim } from './of-claim.js';

export function Built({ job, claim }: OfClaim) {
  const built = job.after.as_built.find(({ surface }) => surface === claim.surface);
  const lots = job.after.lots.find(({ surface }) => surface === claim.surface);
  return (
    <section className="sheet stack" aria-labelledby="built">
      <h2 id="built">As built against as approved</h2>
      {built === undefined ? (
        <p>Nothing was recorded as built: whether it was built as approved is an open question.</p>
      ) : (
        <>
          <p>
            {built.differences.length === 0 ? (
              <Tag tone="ready">Built as approved</Tag>
            ) : (
              <Tag tone="blocked">Differs from what was approved</Tag>
            )}
          </p>
          {built.differences.length > 0 && (
            <ul>
              {built.differences.map((words) => (
                <li key={words}>{prose(words)}</li>
              ))}
            </ul>
          )}
          <FactTable
            rows={[
              ['Fastener as built', built.fastener],
              ['Spacing as built', attachmentLines(built.zones)],
              ['Photos kept', String(built.files.length)],
            ]}
          />
        </>
      )}
      <p>
        Lots on this plane: {lots?.lots.join(', ') || 'not recorded'}
        {lots && lots.lots.length > 1 && `; mixed lots: ${lots.mixed}`}.
      </p>
    </section>
  );
}
