// What the folds of papers share: the job as it stood at an entry, names for ids.

import type { PastEvent } from '../contract/events.js';
import { evolve } from '../evolve.js';
import { initial, type Job } from '../job.js';
import type { Names } from './decision-record.js';

/** The job after the entry at this index, that entry included. */
export const jobUpTo = (events: readonly PastEvent[], index: number): Job =>
  events.slice(0, index + 1).reduce<Job>(evolve, initial(''));

export const naming =
  (names: Names) =>
  (id: string): string =>
    names[id] ?? id;
