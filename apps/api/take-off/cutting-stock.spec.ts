// The integer solver against the own search, and on a problem that the own search gives up on.

import { beforeAll, describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { cutStock, planHolds, searchPlan, type SolveStock } from '#engineering';
import { loadCuttingStock } from './cutting-stock.js';

let solve: SolveStock;
beforeAll(async () => {
  solve = await loadCuttingStock();
});

describe('cutting stock by integer program', () => {
  test('needs as many stocks as the exact search, and every plan holds', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 12, max: 100 }), { maxLength: 9 }), (cuts) => {
        const problem = { stock: 100, cuts };
        const plan = solve(problem);
        const own = searchPlan(problem);
        return (
          plan !== null &&
          plan.proved &&
          own.proved &&
          planHolds(problem, plan) &&
          plan.stocks.length === own.stocks.length
        );
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  test('proves what the own search gives up on', () => {
    // Twelve cuts of 6, 6 of 7, 18 of 4 and 12 of 3 in stocks of 17: 12 x 6 + 6 x 7 + 18 x 4 + 12 x 3
    // = 222; 222 / 17 = 13.06, so 14 at the least.
    const cuts = [
      ...Array<number>(12).fill(6),
      ...Array<number>(6).fill(7),
      ...Array<number>(18).fill(4),
      ...Array<number>(12).fill(3),
    ];
    const plan = solve({ stock: 17, cuts });
    expect(plan?.proved).toBe(true);
    expect(plan?.stocks).toHaveLength(14);
    const gaveUp = searchPlan({ stock: 17, cuts }, 0);
    expect(cutStock({ stock: 17, cuts }, solve).stocks).toHaveLength(14);
    expect(gaveUp.stocks.length).toBeGreaterThanOrEqual(14);
  });

  test('gives up where there are too many patterns', () => {
    const cuts = Array.from({ length: 60 }, (_, i) => 3 + i);
    expect(solve({ stock: 400, cuts })).toBeNull();
  });
});
