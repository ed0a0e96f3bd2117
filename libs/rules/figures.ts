// Numbers as findings show them: rounded once, and never so far that a failing value looks as if
// it passed.

import { display } from '#engineering';
import { figure, type Figure, type Measured } from './rule.js';

const MOST_DECIMALS = 12;

/** The value at the fewest decimals, from `decimals` up, that compare with the limit as it does. */
export function against(
  name: string,
  value: number,
  limit: number,
  unit: string,
  decimals: number,
): Figure {
  for (let places = decimals; places <= MOST_DECIMALS; places += 1) {
    const shown = display(value, places);
    if (Math.sign(Number(shown) - limit) === Math.sign(value - limit)) {
      return figure(name, shown, unit);
    }
  }
  return figure(name, String(value), unit);
}

/** A number as it was recorded. */
export const recorded = (name: string, value: number, unit: string): Figure =>
  figure(name, String(value), unit);

/** The limit a value was held against, and what is left to it. */
export const measured = (
  limit: Figure,
  distance: number,
  unit: string,
  decimals: number,
): Measured => ({ limit, margin: marginOf(distance, unit, decimals) });

/** Of two days, 2026-02-14: how many lie from the first to the second. */
export const daysBetween = (first: string, second: string): number =>
  Math.round((Date.parse(second) - Date.parse(first)) / DAY_MS);
const DAY_MS = 86_400_000;

/** A day held against the last one that is good. */
export const measuredDay = (last: Figure, day: string): Measured =>
  measured(last, daysBetween(day, last.v), 'days', 0);

/** A value held between two limits: the nearer one counts. */
export function measuredBetween(
  value: number,
  [least, most]: readonly [Figure, Figure],
  decimals: number,
): Measured {
  const [low, high] = [value - Number(least.v), Number(most.v) - value];
  return low <= high
    ? measured(least, low, least.u, decimals)
    : measured(most, high, most.u, decimals);
}

/** How far a value stays on the good side of its limit; negative where it fails. */
export const marginOf = (distance: number, unit: string, decimals: number): Figure =>
  against('margin', distance, 0, unit, decimals);

/** "0.25 in 12"; a utilization has no unit. */
export const text = (each: Figure): string => (each.u === '' ? each.v : `${each.v} ${each.u}`);

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
