// The goals table: each measured ratio beside what it must be and what it should be.

import { CEILING, OURS } from './append.js';
import type { AppendCell } from './append.js';
import type { RebuildRates } from './rebuild.js';
import type { Row } from './measure.js';

export interface Goal {
  readonly what: string;
  readonly measured: number;
  readonly must: number;
  readonly aim: number;
  /** True where less is better. */
  readonly atMost?: boolean;
}

export interface Measured {
  readonly append: readonly AppendCell[];
  readonly read: readonly Row[];
  readonly rebuild: RebuildRates;
  /** Events per second, in one process and with worker threads. */
  readonly verify: { readonly one: number; readonly workers: number };
  readonly cost: { readonly json: number; readonly added: number };
  /** Seconds for 100,000 entries of 1.6 kB with two worker threads, and the most memory it took, MB. */
  readonly whole: { readonly seconds: number; readonly megabytes: number };
  /** p99 from a commit to the list that has it, ms: in this process, and in another one. */
  readonly delay: { readonly here: number; readonly elsewhere: number };
}

/** Of the ceiling, for 1 and 5 events at 1, 8 and 32 clients: must and aim. */
const APPEND: Readonly<Record<string, readonly [number, number]>> = {
  '1 at 1': [0.55, 0.85],
  '1 at 8': [1.1, 1.5],
  '1 at 32': [1.8, 2.3],
  '5 at 1': [0.6, 0.8],
  '5 at 8': [0.6, 0.8],
  '5 at 32': [1.0, 1.5],
};

export function goals(measured: Measured): Goal[] {
  const { append, read, rebuild, verify } = measured;
  return [
    ...append.flatMap(appendGoals),
    costGoal(measured),
    { what: 'stream read, of the driver', measured: ratioOf(read, 1), must: 0.9, aim: 1 },
    { what: 'rebuild, of the plain loop', measured: rebuild.ours / rebuild.raw, must: 0.8, aim: 1 },
    {
      what: 'verification, events/s',
      measured: Math.round(Math.max(verify.one, verify.workers)),
      must: 25_000,
      aim: 60_000,
    },
    verifySecondsGoal(measured.whole.seconds),
    // The roomiest machine this is meant for has far more; what counts is that it does not grow.
    {
      what: 'its memory, MB',
      measured: measured.whole.megabytes,
      must: 600,
      aim: 400,
      atMost: true,
    },
    {
      what: 'commit to list, p99 ms',
      measured: measured.delay.here,
      must: 5,
      aim: 2,
      atMost: true,
    },
    {
      what: 'to a list elsewhere, p99 ms',
      measured: measured.delay.elsewhere,
      must: 20,
      aim: 10,
      atMost: true,
    },
  ];
}

/** Requirement 13. */
export const verifySecondsGoal = (seconds: number): Goal => ({
  what: 'verify 100,000 of 1.6 kB, s',
  measured: seconds,
  must: 30,
  aim: 10,
  atMost: true,
});

function appendGoals({ events, clients, rows }: AppendCell): Goal[] {
  const ours = find(rows, OURS);
  const peers = rows.filter((row) => row.name !== OURS && row.name !== CEILING);
  const [must, aim] = APPEND[`${events} at ${clients}`] ?? [Number.NaN, Number.NaN];
  const what = `append ${events} at ${clients}`;
  const goal = { what: `${what}, of the ceiling`, measured: ours.ratio, must, aim };
  if (peers.length === 0) return [goal];
  const best = Math.max(...peers.map((peer) => peer.ratio));
  const against = events === 5 ? 1.7 : clients === 1 ? 0 : 2;
  const quickest = Math.min(...peers.map((peer) => peer.p99));
  return [
    goal,
    {
      what: `${what}, of the best peer`,
      measured: ours.ratio / best,
      must: against,
      aim: Math.max(1, against),
    },
    ...(clients === 32
      ? [{ what: `${what}, p99 ms`, measured: ours.p99, must: quickest / 2, aim: 10, atMost: true }]
      : []),
  ];
}

/** Of the whole append of one event at 32 clients. */
function costGoal({ append, cost }: Measured): Goal {
  const cell = append.find(({ events, clients }) => events === 1 && clients === 32);
  const microseconds = 1e6 / find(cell?.rows ?? [], OURS).rate;
  const what = 'hashes and root, of an append';
  return { what, measured: cost.added / microseconds, must: 0.25, aim: 0.12, atMost: true };
}

function find(rows: readonly Row[], name: string): Row {
  const found = rows.find((row) => row.name === name);
  if (found === undefined) throw new Error(`${name} was not measured.`);
  return found;
}

function ratioOf(rows: readonly Row[], index: number): number {
  return rows[index]?.ratio ?? Number.NaN;
}

export function verdict(goal: Goal): 'MISSED' | 'met' | 'aim met' {
  const better = (limit: number) =>
    goal.atMost === true ? goal.measured <= limit : goal.measured >= limit;
  return !better(goal.must) ? 'MISSED' : better(goal.aim) ? 'aim met' : 'met';
}

export function goalLine(goal: Goal): string {
  const number = (n: number) => (n >= 100 ? String(Math.round(n)) : n.toFixed(2)).padStart(8);
  const columns = [goal.measured, goal.must, goal.aim].map(number).join(' ');
  return `${goal.what.padEnd(36)} ${columns}  ${verdict(goal)}`;
}
