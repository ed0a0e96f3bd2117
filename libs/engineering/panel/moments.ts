// Area and moments of pieces of a sheet about y = 0: what section properties are summed from.

import type { Flat } from './outline.js';

export interface Moments {
  area: number;
  first: number;
  second: number;
}

/** Adds the part of a flat between two distances from its start, with its thickness term. */
export function pieceOf(flat: Flat, t: number, from: number, to: number, sum: Moments): void {
  const length = to - from;
  if (length <= 0) return;
  const y = flat.y1 + ((flat.y2 - flat.y1) * (from + to)) / (2 * flat.w);
  const area = length * t;
  const own = length * length * flat.sin * flat.sin + t * t * flat.cos * flat.cos;
  sum.area += area;
  sum.first += area * y;
  sum.second += area * y * y + (area * own) / 12;
}
