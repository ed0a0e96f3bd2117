// A difference is the same both ways, nothing for one color, and never negative.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { ciede2000, labDistance } from './color-difference.js';

const RUNS = { seed: 20261125, numRuns: 5000 };
const lab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -128, max: 128, noNaN: true }),
  b: fc.double({ min: -128, max: 128, noNaN: true }),
});

describe('CIEDE2000', () => {
  test('is symmetric, finite and never negative', () => {
    fc.assert(
      fc.property(lab, lab, (first, second) => {
        const { dE } = ciede2000(first, second);
        expect(Number.isFinite(dE)).toBe(true);
        expect(dE).toBeGreaterThanOrEqual(0);
        expect(ciede2000(second, first).dE).toBeCloseTo(dE, 9);
      }),
      RUNS,
    );
  });

  test('is nothing for one color', () => {
    fc.assert(
      fc.property(lab, (color) => {
        expect(ciede2000(color, color).dE).toBe(0);
      }),
      RUNS,
    );
  });

  test('of grays is the weighted lightness alone', () => {
    const { dE, SL } = ciede2000({ L: 40, a: 0, b: 0 }, { L: 47, a: 0, b: 0 });
    expect(dE).toBeCloseTo(7 / SL, 12);
  });
});

describe('distance', () => {
  test('is symmetric and keeps the triangle', () => {
    fc.assert(
      fc.property(lab, lab, lab, (a, b, c) => {
        expect(labDistance(a, b)).toBe(labDistance(b, a));
        expect(labDistance(a, c)).toBeLessThanOrEqual(labDistance(a, b) + labDistance(b, c) + 1e-9);
      }),
      RUNS,
    );
  });
});
