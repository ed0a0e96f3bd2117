// Times in milliseconds against their goal, one line each with its verdict; a missed goal ends the
// bench with exit code 1.

import { quantile } from '../ledger/measure.js';

export interface TimeGoal {
  readonly what: string;
  readonly times: readonly number[];
  /** 0.95 for the p95; 1 for the slowest of all. */
  readonly part: number;
  /** Must stay under this many milliseconds. */
  readonly under: number;
}

/** True where all goals are met. */
export function tell(goals: readonly TimeGoal[], say: (line: string) => void): boolean {
  say(`\n${''.padEnd(44)} count      p50      at  measured     goal`);
  const met = goals.map((goal) => {
    const { what, times, part, under } = goal;
    const measured = quantile(times, part);
    const ok = times.length > 0 && measured < under;
    const number = (n: number) => n.toFixed(1).padStart(8);
    const at = part === 1 ? '    max' : `    p${Math.round(part * 100)}`;
    say(
      `${what.padEnd(44)} ${String(times.length).padStart(5)} ${number(quantile(times, 0.5))} ` +
        `${at}  ${number(measured)} ${number(under)}  ${ok ? 'met' : 'MISSED'}`,
    );
    return ok;
  });
  return met.every(Boolean);
}
