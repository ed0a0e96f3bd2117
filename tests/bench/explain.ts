// How long an evaluation and its explanation take over the full rulebook and the demonstration's
// catalogue: `node --conditions=gauge-source --import ./.config/typescript.mjs
// tests/bench/explain.ts`. Limits are of processor time, which a busy machine hardly changes.

import { BUDGET, evaluate, explain } from '#jobs';
import { demonstrationCatalogue } from '../../apps/cli/demonstration/catalogue.js';
import { questions } from './questions.js';

const COUNT = 400;
const EVALUATE_MEDIAN_MS = 1;
const EXPLAIN_P95_MS = 150;
const BUDGET_REACHED_SHARE = 0.01;

interface Timed<T> {
  readonly value: T;
  readonly wall: number;
  readonly cpu: number;
}

function timed<T>(run: () => T): Timed<T> {
  const cpu = process.cpuUsage();
  const start = performance.now();
  const value = run();
  const wall = performance.now() - start;
  const used = process.cpuUsage(cpu);
  return { value, wall, cpu: (used.user + used.system) / 1000 };
}

function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? NaN;
}
const ms = (value: number): string => `${value.toFixed(2)} ms`;
const mean = (numbers: readonly number[]): string =>
  (numbers.reduce((sum, each) => sum + each, 0) / numbers.length).toFixed(1);

function report(what: string, times: readonly Timed<unknown>[]): void {
  const wall = times.map((each) => each.wall);
  const cpu = times.map((each) => each.cpu);
  const total = wall.reduce((sum, each) => sum + each, 0);
  console.log(
    `${what}: p50 ${ms(at(wall, 0.5))}, p95 ${ms(at(wall, 0.95))}; ` +
      `processor p50 ${ms(at(cpu, 0.5))}, p95 ${ms(at(cpu, 0.95))}; ` +
      `${((1000 * times.length) / total).toFixed(0)} per second`,
  );
}

const asked = questions(demonstrationCatalogue(), COUNT, 20260302);
for (const question of asked.slice(0, 100)) explain(question, evaluate(question, []));
const evaluations = asked.map((question) => timed(() => evaluate(question, [])));
const explanations = asked.map((question, i) =>
  timed(() => explain(question, evaluations[i]!.value)),
);
report('evaluate', evaluations);
report('explain', explanations);

const found = explanations.map(({ value }) => value);
const judgements = found.map(({ searched }) => searched.judgements);
const reached = found.filter(({ budget_reached }) => budget_reached).length;
console.log(
  `judgements: mean ${mean(judgements)}, most ${Math.max(...judgements)} of ${BUDGET}; ` +
    `changes: mean ${mean(found.map(({ what_would_change }) => what_would_change.length))}; ` +
    `not reproduced: ${mean(found.map(({ searched }) => searched.not_reproduced))}`,
);
console.log(`budget reached: ${reached} of ${COUNT}`);

const median = at(
  evaluations.map(({ cpu }) => cpu),
  0.5,
);
const p95 = at(
  explanations.map(({ cpu }) => cpu),
  0.95,
);
const kept =
  median <= EVALUATE_MEDIAN_MS && p95 <= EXPLAIN_P95_MS && reached <= BUDGET_REACHED_SHARE * COUNT;
console.log(kept ? 'all limits are kept' : 'a limit is not kept');
process.exitCode = kept ? 0 : 1;
