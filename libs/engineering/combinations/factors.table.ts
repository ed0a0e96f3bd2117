// Allowable stress design combinations of ASCE/SEI 7, section 2.4.1, reduced to the loads that act
// on a roof or wall panel. 7-22: 3a, 4a and 6a read, the others and earlier editions from memory.

import type { AsceEdition } from '../sources.js';

export type RoofLoad = 'Lr' | 'S';

export interface Factors {
  /** Number in 2.4.1 of each edition. */
  readonly number: Record<AsceEdition, string>;
  readonly D: number;
  /** On the roof live load or the snow load, whichever is named. */
  readonly roof: number;
  readonly with?: RoofLoad;
  readonly W: number;
  readonly wind: 'none' | 'inward' | 'outward';
}

const numbers = (to710: string, to716: string, to722: string): Record<AsceEdition, string> => ({
  '7-10': to710,
  '7-16': to716,
  '7-22': to722,
});

/** W at strength level; 0.75 x 0.6 = 0.45. */
export const ASD: readonly Factors[] = [
  { number: numbers('1', '1', '1a'), D: 1, roof: 0, W: 0, wind: 'none' },
  { number: numbers('3', '3', '3a'), D: 1, roof: 1, with: 'Lr', W: 0, wind: 'none' },
  { number: numbers('3', '3', '3a'), D: 1, roof: 1, with: 'S', W: 0, wind: 'none' },
  { number: numbers('5', '5', '5a'), D: 1, roof: 0, W: 0.6, wind: 'inward' },
  { number: numbers('6a', '6', '6a'), D: 1, roof: 0.75, with: 'Lr', W: 0.45, wind: 'inward' },
  { number: numbers('6a', '6', '6a'), D: 1, roof: 0.75, with: 'S', W: 0.45, wind: 'inward' },
  { number: numbers('7', '7', '7a'), D: 0.6, roof: 0, W: 0.6, wind: 'outward' },
];

/** Snow of 7-22 is strength level and takes 0.7 in 3a, 4a and 6a; before, service level and 1. */
export const SNOW_FACTOR: Record<AsceEdition, number> = { '7-10': 1, '7-16': 1, '7-22': 0.7 };

/** Uplift by the two design methods; the second for charts on a strength basis. */
export const UPLIFT = {
  ASD: { D: 0.6, W: 0.6, clause: '2.4.1' },
  LRFD: { D: 0.9, W: 1.0, clause: '2.3.1' },
} as const;

/** Wind of 7-05 and before is service level: it belongs only to its own combinations. */
export const SERVICE_LEVEL_WIND = { editions: '7-05 and before', uplift: '0.6D + W' } as const;
