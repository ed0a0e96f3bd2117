// A job as of a moment. Entries that came to count later are left out, and some of them lie between
// others: what is true by then is folded without them, and the version is that of the last one.

import type { PastEvent } from './contract/events.js';
import { evolve } from './evolve.js';
import { initial, type Job } from './job.js';

/** The next entry that was known and true by then. */
export const evolveKnown = (job: Job, event: PastEvent): Job =>
  evolve(job, { ...event, version: job.version + 1 });

export function jobAsOf(id: string, events: readonly PastEvent[]): Job {
  const job = events.reduce<Job>(evolveKnown, initial(id));
  return { ...job, version: events.at(-1)?.version ?? 0 };
}
