// Hail: larger stones are never slower or weaker, classes step with size, and outside is refused.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { Calculator } from '../calculator.js';
import { TO_BE_CONFIRMED } from '../check.js';
import { inches, mph } from '../units.js';
import { hailCalculators } from './calculators.js';
import { classCovering, dents, drivenVelocity, impactEnergy, terminalVelocity } from './hail.js';
import { IMPACT_CLASSES } from './hail.table.js';

/** The last bits of a double. */
const BITS = 1e-9;
const [hail] = hailCalculators as [Calculator];

function resultOf(diameter_in: unknown): {
  value: Record<string, unknown>;
  notes: readonly string[];
} {
  const made = hail.calculate({ diameter_in });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return { value: made.value, notes: made.notes };
}

describe('hail', () => {
  test('a larger stone is never slower, never weaker, and never covered by a lower class', () => {
    const size = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(size, size, (a, b) => {
        const [small, large] = a <= b ? [inches(a), inches(b)] : [inches(b), inches(a)];
        const slow = terminalVelocity(small) ?? mph(NaN);
        const fast = terminalVelocity(large) ?? mph(NaN);
        expect(fast).toBeGreaterThanOrEqual(slow - BITS);
        expect(impactEnergy(large, fast)).toBeGreaterThanOrEqual(impactEnergy(small, slow) - BITS);
        expect(classCovering(large) ?? 5).toBeGreaterThanOrEqual(classCovering(small) ?? 5);
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });
  test('a stone the size of a class ball has its energy and is covered by that class', () => {
    for (const rank of [1, 2, 3, 4] as const) {
      const { ball_in, energy_ftlbf } = IMPACT_CLASSES[rank];
      const { value } = resultOf(ball_in);
      expect(value['ul2218_class_covering']).toBe(rank);
      expect(Math.abs((value['energy_ftlbf'] as number) - energy_ftlbf)).toBeLessThan(0.05);
    }
    expect(resultOf(2.01).value['ul2218_class_covering']).toBe(null);
  });
  test('outside 1/2 to 3 in there is no number; over 2 in the velocity is to be confirmed', () => {
    for (const diameter of [0.49, 3.01, -1, '1', null]) {
      expect(hail.calculate({ diameter_in: diameter }).ok).toBe(false);
    }
    expect(resultOf(2).notes).toEqual([]);
    expect(resultOf(2.5).notes.some((n) => n.includes(TO_BE_CONFIRMED))).toBe(true);
  });
  test('dents are told only as far as they were tested; wind adds speed', () => {
    expect(dents(0.65, 40)).toBe('not tested');
    expect(dents(1.2, 50)).toBe('not tested');
    expect(dents(0.6, 45)).toBe(true);
    expect(drivenVelocity(mph(60), mph(80))).toBeCloseTo(100, 12);
  });
});
