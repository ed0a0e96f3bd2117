// The computed tests of a claim: each with its outcome in words and its numbers. An open question stays
// one.

import type { ClaimView } from '#jobs/contract';
import { PlainTable, Tag, type Tone } from '../parts/table.js';
import { capital, count, prose } from '../parts/words.js';

type Test = NonNullable<ClaimView['tests']>[number];
const OUTCOMES: Readonly<Record<Test['outcome'], readonly [Tone, string]>> = {
  met: ['ready', 'Met'],
  'not met': ['blocked', 'Not met'],
  open: ['waiting', 'Open question'],
};

export function Tests({ claim }: { readonly claim: ClaimView }) {
  const { tests } = claim;
  return (
    <section className="stack" aria-labelledby="tests">
      <h2 id="tests">The tests, {claim.decided ? 'as decided' : 'as they compute today'}</h2>
      {tests === null ? (
        <p>The tests cannot be computed here: no catalogue is at hand.</p>
      ) : (
        <>
          <p>{sentence(tests)}</p>
          <PlainTable
            caption="Tests"
            columns={['Test', 'Outcome', 'Numbers and why']}
            rows={tests.map(({ test, outcome, words }) => {
              const [tone, said] = OUTCOMES[outcome];
              return [
                capital(test),
                <Tag key="outcome" tone={tone}>
                  {said}
                </Tag>,
                capital(prose(words)),
              ];
            })}
          />
        </>
      )}
    </section>
  );
}

function sentence(tests: readonly Test[]): string {
  const of = (outcome: Test['outcome']) => tests.filter((each) => each.outcome === outcome).length;
  const open = of('open');
  return (
    `${count(tests.length, 'test')}: ${of('met')} met, ${of('not met')} not met, ${open} open. ` +
    (open > 0 ? 'An open question is for a person; nothing is assumed for it.' : '')
  ).trim();
}
