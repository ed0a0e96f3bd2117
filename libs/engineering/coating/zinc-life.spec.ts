// More zinc lasts longer, faster loss shorter; the life is where the loss reaches the thickness.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { micrometers } from '../units.js';
import {
  CLIMATE_RANGE,
  corrosivity,
  firstYearSteel,
  firstYearZinc,
  lossAfter,
} from './corrosion.js';
import { CATEGORIES, UPPER_RATES } from './corrosion.table.js';
import { zincExponent, zincLifeRange, zincLifeYears } from './zinc-life.js';

const RUNS = { seed: 20261125, numRuns: 3000 };
const zinc = fc.double({ min: 1, max: 100, noNaN: true });
const rate = fc.double({ min: 0.05, max: 25, noNaN: true });
const exponent = fc.constantFrom('B1' as const, 'B2' as const, 'linear' as const);

describe('zinc life', () => {
  test('ends when the loss reaches the thickness', () => {
    fc.assert(
      fc.property(zinc, rate, exponent, (z, r, e) => {
        const years = zincLifeYears(micrometers(z), r, e);
        expect(lossAfter(r, years, zincExponent(e)) / z).toBeCloseTo(1, 9);
      }),
      RUNS,
    );
  });

  test('more zinc lasts longer, faster loss shorter', () => {
    fc.assert(
      fc.property(zinc, rate, exponent, (z, r, e) => {
        const years = zincLifeYears(micrometers(z), r, e);
        expect(zincLifeYears(micrometers(z * 1.1), r, e)).toBeGreaterThan(years);
        expect(zincLifeYears(micrometers(z), r * 1.1, e)).toBeLessThan(years);
      }),
      RUNS,
    );
  });

  test('past the first year the average exponent lasts longest, a constant rate shortest', () => {
    fc.assert(
      fc.property(zinc, rate, (z, r) => {
        fc.pre(z > r);
        const [b1, b2, flat] = (['B1', 'B2', 'linear'] as const).map((e) =>
          zincLifeYears(micrometers(z), r, e),
        ) as [number, number, number];
        expect(b1).toBeGreaterThanOrEqual(b2);
        expect(b2).toBeGreaterThanOrEqual(flat);
      }),
      RUNS,
    );
  });

  test('C1 has no lower rate and so no greatest life', () => {
    expect(zincLifeRange(micrometers(20), 'C1').most).toBeUndefined();
    expect(zincLifeRange(micrometers(20), 'C3').least).toBeCloseTo(20 / 2.1, 9);
  });
});

describe('corrosivity', () => {
  test('the upper bound belongs to its band', () => {
    for (const scale of Object.keys(UPPER_RATES) as (keyof typeof UPPER_RATES)[]) {
      CATEGORIES.forEach((category, i) => {
        const upper = UPPER_RATES[scale][i] as number;
        expect(corrosivity(scale, upper)).toBe(category);
        expect(corrosivity(scale, upper * 1.0001)).toBe(CATEGORIES[i + 1] ?? 'above CX');
      });
    }
  });

  test('more salt, more sulfur or more damp never loses less', () => {
    const within = ({ least, most }: { least: number; most: number }) =>
      fc.double({ min: least, max: most, noNaN: true });
    const climate = fc.record({
      T: within(CLIMATE_RANGE.T),
      RH: within({ least: 34, most: 90 }),
      Pd: within({ least: 0.7, most: 140 }),
      Sd: within({ least: 0.4, most: 700 }),
    });
    fc.assert(
      fc.property(climate, (c) => {
        for (const loss of [firstYearZinc, firstYearSteel]) {
          const { rate: now } = loss(c);
          expect(loss({ ...c, Sd: c.Sd * 1.05 }).rate).toBeGreaterThan(now);
          expect(loss({ ...c, Pd: c.Pd * 1.05 }).rate).toBeGreaterThan(now);
          expect(loss({ ...c, RH: c.RH + 1 }).rate).toBeGreaterThan(now);
        }
      }),
      RUNS,
    );
  });
});
