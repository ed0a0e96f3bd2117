// Chance that comes out the same every time: a seeded generator and what stories ask of it.

export interface Dice {
  /** 0 ≤ x < 1 */
  next(): number;
  chance(share: number): boolean;
  whole(least: number, most: number): number;
  pick<T>(list: readonly T[]): T;
}

/** The mulberry32 generator (public domain), enough for invented data and for nothing secret. */
export function dice(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    whole,
    chance: (share) => next() < share,
    pick: (list) => {
      const picked = list[whole(0, list.length - 1)];
      if (picked === undefined) throw new RangeError('there is nothing to pick from');
      return picked;
    },
  };
}

const DAY_MS = 86_400_000;
export const FIRST_DAY = '2018-01-08';
/** What lies after this day has not happened in any story. */
export const LAST_DAY = '2026-11-25';

export const dayPlus = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
export const daysFrom = (first: string, last: string): number =>
  Math.round((Date.parse(last) - Date.parse(first)) / DAY_MS);
