// The nightly look at the time-stamps that are kept: each is still one of its own checkpoint.

import { setImmediate } from 'node:timers/promises';
import { openTimeStamp, TimeStampFault, type Ledger } from '#ledger';

const PAGE = 100;

/** What is wrong with the first that does not hold; undefined where all do. Other work goes on between two. */
export async function timeStampFault(
  ledger: Pick<Ledger, 'checkpoints' | 'timeStamps'>,
  log: string,
): Promise<string | undefined> {
  const notes = new Map((await ledger.checkpoints(log)).map(({ size, note }) => [size, note]));
  for (let from = 0; ;) {
    const stamps = await ledger.timeStamps(log, from, PAGE);
    for (const stamp of stamps) {
      const note = notes.get(stamp.size);
      if (note === undefined)
        return `There is no checkpoint of ${stamp.size} entries for its time-stamp`;
      try {
        openTimeStamp(note, stamp);
      } catch (error) {
        if (!(error instanceof TimeStampFault)) throw error;
        return `Time-stamp of ${stamp.size} entries: ${error.message}`;
      }
      await setImmediate();
    }
    const last = stamps.at(-1);
    if (!last) return undefined;
    from = last.size + 1;
  }
}
