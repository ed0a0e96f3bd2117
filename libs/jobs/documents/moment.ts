// What the folds of papers share: the job as it stood at an entry, names for ids.

import type { Fastener } from '../contract/catalogue.js';
import type { PastEvent } from '../contract/events.js';
import { evolve } from '../evolve.js';
import { initial, type Job } from '../job.js';

/** Person and site ids as they may be shown; an id that is not known stays an id. */
export type Names = Readonly<Record<string, string>>;

/** The job after the entry at this index, that entry included. */
export const jobUpTo = (events: readonly PastEvent[], index: number): Job =>
  events.slice(0, index + 1).reduce<Job>(evolve, initial(''));

export const naming =
  (names: Names) =>
  (id: string): string =>
    names[id] ?? id;

/** A fastener is named by the edition that was decided under, so that a later one renames nothing. */
export const fastenerKey = (edition: number, id: string): string => `fastener/${edition}/${id}`;

/** The fasteners of these editions of a catalogue, for the names that papers are folded with. */
export const fastenerNames = (
  editions: readonly { readonly edition: number; readonly fasteners: readonly Fastener[] }[],
): Names =>
  Object.fromEntries(
    editions.flatMap(({ edition, fasteners }) =>
      fasteners.map(({ id, name }) => [fastenerKey(edition, id), name]),
    ),
  );
