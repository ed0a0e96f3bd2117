// Looks at the time-stamps that are kept: each is still one of its own checkpoint.

import type { Ledger } from './ledger.js';
import { TimeStampFault } from './time-signature.js';
import { openTimeStamp } from './time-stamp.js';

const PAGE = 100;

/** What is wrong with the first that does not hold; undefined where all do. About 20 ms for each. */
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
    }
    const last = stamps.at(-1);
    if (!last) return undefined;
    from = last.size + 1;
  }
}
