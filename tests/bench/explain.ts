// How long an evaluation and its explanation take over the full rulebook and the demonstration's
// catalogue: `npm run -s bench:engineering`. Times depend on the machine; the counts do not.

import { evaluate, explain } from '#jobs';
import { fullCatalogue } from './catalogue.js';
import { questions } from './questions.js';

const asked = questions(fullCatalogue(), 400, 20260302);
const timed = <T>(run: () => T): readonly [T, number] => {
  const start = performance.now();
  return [run(), performance.now() - start];
};
const at = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.floor(share * (times.length - 1))] ?? NaN;

function report(what: string, times: readonly number[]): void {
  const total = times.reduce((sum, each) => sum + each, 0);
  console.log(
    `${what}: p50 ${at(times, 0.5).toFixed(2)} ms, p95 ${at(times, 0.95).toFixed(2)} ms, ${((1000 * times.length) / total).toFixed(0)} per second`,
  );
}

for (const question of asked.slice(0, 50)) explain(question, evaluate(question, []));
const evaluations = asked.map((question) => timed(() => evaluate(question, [])));
const explanations = asked.map((question, i) => timed(() => explain(question, evaluations[i]![0])));
report(
  'evaluate',
  evaluations.map(([, ms]) => ms),
);
report(
  'explain',
  explanations.map(([, ms]) => ms),
);
const found = explanations.map(([explanation]) => explanation);
const mean = (numbers: readonly number[]): string =>
  (numbers.reduce((sum, each) => sum + each, 0) / numbers.length).toFixed(1);
console.log(
  `judgements: mean ${mean(found.map(({ searched }) => searched.judgements))}, most ${Math.max(...found.map(({ searched }) => searched.judgements))}`,
);
console.log(
  `changes: mean ${mean(found.map(({ what_would_change }) => what_would_change.length))}; not reproduced: ${mean(found.map(({ searched }) => searched.not_reproduced))}`,
);
console.log(
  `budget reached: ${found.filter(({ budget_reached }) => budget_reached).length} of ${found.length}`,
);
