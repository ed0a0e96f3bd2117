// The share of a term's cover that is left: whole for the years of full cover, then in a straight line
// down to nothing at the end, by whole months (common practice; the document's own text governs).

import type { Warranty } from './state.js';

type Term = Pick<Warranty, 'start' | 'years' | 'full_years'>;

export interface ShareLeft {
  readonly months_left: number;
  /** Months over which cover falls. */
  readonly of_months: number;
  /** Percent with one decimal, never rounded up to more than is left. */
  readonly percent: string;
  readonly words: string;
}

/** On the day of notice; null where the document does not say that its cover falls. */
export function shareLeft({ start, years, full_years }: Term, notice: string): ShareLeft | null {
  if (full_years === undefined) return null;
  const falls = (years - full_years) * 12;
  const left = Math.max(0, years * 12 - monthsBetween(start, notice));
  const months_left = Math.min(falls, left);
  const permille = falls === 0 ? (left > 0 ? 1000 : 0) : Math.floor((months_left * 1000) / falls);
  const percent = `${Math.floor(permille / 10)}.${permille % 10}`;
  const arithmetic =
    falls === 0
      ? 'cover is full until the term ends'
      : `${months_left} of ${falls} months, in a straight line after ${full_years} full ${full_years === 1 ? 'year' : 'years'}`;
  return { months_left, of_months: falls, percent, words: `${percent} %: ${arithmetic}` };
}

/** Whole months from a day to a later one; before it none. */
function monthsBetween(from: string, to: string): number {
  const [y1 = 0, m1 = 0, d1 = 0] = from.split('-').map(Number);
  const [y2 = 0, m2 = 0, d2 = 0] = to.split('-').map(Number);
  return Math.max(0, (y2 - y1) * 12 + m2 - m1 - (d2 < d1 ? 1 : 0));
}
