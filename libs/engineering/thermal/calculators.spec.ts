// Thermal movement and least slopes: what must hold, and what is refused.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { Calculator } from '../calculator.js';
import { TO_BE_CONFIRMED } from '../check.js';
import { fahrenheit, feet } from '../units.js';
import { thermalCalculators } from './calculators.js';
import { EXPANSION_PER_C, EXPANSION_PER_F } from './metals.table.js';
import { celsiusDifference, freeLength, thermalMovement } from './movement.js';

const [thermal, slope] = thermalCalculators as [Calculator, Calculator];
const SETTINGS = { seed: 20261125, numRuns: 2000 };

describe('thermal', () => {
  test('doubles with the length and with the range; copper moves more than steel', () => {
    const length = fc.double({ min: 0, max: 500, noNaN: true });
    const range = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(length, range, (L, dT) => {
        const once = thermalMovement('steel', feet(L), fahrenheit(dT));
        expect(thermalMovement('steel', feet(2 * L), fahrenheit(dT))).toBeCloseTo(2 * once, 9);
        expect(thermalMovement('steel', feet(L), fahrenheit(2 * dT))).toBeCloseTo(2 * once, 9);
        expect(thermalMovement('copper', feet(L), fahrenheit(dT))).toBeGreaterThanOrEqual(once);
      }),
      SETTINGS,
    );
  });
  test('one figure for a metal in both scales, steel within the rounding of its two', () => {
    for (const metal of ['copper', 'aluminum', 'zinc'] as const) {
      expect(EXPANSION_PER_F[metal] * 1.8).toBeCloseTo(EXPANSION_PER_C[metal], 12);
    }
    expect(EXPANSION_PER_F.steel * 1.8).toBeCloseTo(EXPANSION_PER_C.steel, 6);
  });
  test('a difference of 200 °F is 111 °C, not 93', () => {
    expect(celsiusDifference(fahrenheit(200))).toBeCloseTo(111.1, 1);
  });
  test('a run fixed at mid-slope is half as long to move', () => {
    expect(freeLength(feet(80), 'mid-slope')).toBe(40);
    expect(freeLength(feet(80), 'eave')).toBe(80);
  });
  test('refuses what is outside, all at once, and marks what is from memory', () => {
    const made = thermal.calculate({ length_ft: -1, dT_F: 500, material: 'lead', span: 1 });
    expect(made.ok ? [] : made.faults.map((f) => f.pointer)).toEqual([
      '/span',
      '/length_ft',
      '/dT_F',
      '/material',
    ]);
    const stainless = thermal.calculate({ length_ft: 10, dT_F: 100, material: 'stainless' });
    expect(stainless.ok && stainless.notes.some((n) => n.includes(TO_BE_CONFIRMED))).toBe(true);
    const both = ['aluminum', 'aluminium'].map((material) =>
      thermal.calculate({ length_ft: 10, dT_F: 100, material }),
    );
    expect(both[0]).toEqual(both[1]);
  });
});

describe('least-slope', () => {
  const least = (input: unknown): unknown => {
    const made = slope.calculate(input);
    return made.ok ? made.value['min_rise_per_12'] : made.faults.map((f) => f.pointer);
  };
  test('by family', () => {
    expect(least({ panel_family: 'lapped', sealed: false })).toBe(3);
    expect(least({ panel_family: 'lapped', sealed: true })).toBe(0.5);
    expect(least({ panel_family: 'standing-seam', sealed: false })).toBe(0.25);
    for (const family of ['corrugated', 'ribbed', 'deep-rib']) {
      expect(least({ panel_family: family, sealed: false })).toBe(3);
      expect(least({ panel_family: family, sealed: true })).toBe(0.5);
    }
    expect(least({ panel_family: 'metal-shingle' })).toBe(3);
    expect(least({ panel_family: 'metal-shingles' })).toBe(3);
  });
  test('lapped panels must say whether they are sealed', () => {
    expect(least({ panel_family: 'lapped' })).toEqual(['/sealed']);
    expect(least({ panel_family: 'tile', sealed: 'no' })).toEqual(['/panel_family', '/sealed']);
  });
});
