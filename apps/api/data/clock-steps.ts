// That the server's clock was set back, as an entry of the company's log in a stream of its own: from
// there to where the clock had caught up, recordedAt shows the order and no longer the hour.

import { CLOCK_TOLERANCE, type ClockStep, type Ledger } from '#ledger';
import { digestOf } from './digest.js';

export const CLOCK_STREAM = 'office/clock';
export const CLOCK_STEPPED = 'clock-stepped/1';
/** Nobody did it. */
const BY = { person: 'service', role: 'service' };

export interface SteppedClock {
  /** What the clock showed, and the time of the entry before. */
  readonly clock: string;
  readonly after: string;
  readonly behindMs: number;
}

/** Gives what it wrote; nothing where a run of the service before this one, or another, told of this step. */
export async function recordClockStep(
  ledger: Ledger,
  log: string,
  step: ClockStep,
): Promise<SteppedClock | undefined> {
  const data: SteppedClock = {
    clock: instant(step.clock),
    after: instant(step.recordedAt),
    behindMs: Math.round(step.behind / 1000),
  };
  const command = { id: `clock ${data.clock} ${data.after}`, digest: digestOf(data) };
  for (;;) {
    const told = await ledger.readStream(log, CLOCK_STREAM);
    const last = told.at(-1);
    if (last && isSame(last.recordedAt, last.data as SteppedClock, data)) return undefined;
    const done = await ledger.append({
      log,
      by: BY,
      command,
      streams: [
        {
          stream: CLOCK_STREAM,
          expectedVersion: told.length,
          events: [{ type: CLOCK_STEPPED, data }],
        },
      ],
    });
    if (done.kind === 'queue-full') throw new Error('too much waits to be written');
    if (done.kind !== 'wrong-version') return data;
  }
}

/** While the clock is behind, the log's times go on by microseconds, and the clock only rises. */
const isSame = (recordedAt: string, was: SteppedClock, now: SteppedClock): boolean =>
  Math.abs(Date.parse(now.after) - Date.parse(recordedAt)) * 1000 <= CLOCK_TOLERANCE &&
  Date.parse(now.clock) - Date.parse(was.clock) >= -CLOCK_TOLERANCE / 1000;

const instant = (micros: number): string => new Date(Math.floor(micros / 1000)).toISOString();

export interface ClockStanding {
  readonly steps: number;
  readonly last: SteppedClock & { readonly pos: number };
}

/** Null where the clock was never seen to step. */
export async function clockStanding(ledger: Ledger, log: string): Promise<ClockStanding | null> {
  const told = await ledger.readStream(log, CLOCK_STREAM);
  const last = told.at(-1);
  return last === undefined
    ? null
    : { steps: told.length, last: { ...(last.data as SteppedClock), pos: last.pos } };
}
