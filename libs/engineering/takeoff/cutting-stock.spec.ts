// The own search against trying everything, and the check that no wrong plan passes.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import {
  cutStock,
  fewestStocks,
  firstFit,
  planHolds,
  searchPlan,
  type StockProblem,
} from './cutting-stock.js';

const RUNS = { seed: 20261125, numRuns: 2000 };
const problem = (most: number): fc.Arbitrary<StockProblem> =>
  fc.record({
    stock: fc.constant(100),
    cuts: fc.array(fc.integer({ min: 5, max: 100 }), { maxLength: most }),
  });

/** Every way to share the cuts among stocks. */
function fewestByTrying({ stock, cuts }: StockProblem, left: readonly number[] = []): number {
  const [cut, ...rest] = cuts;
  if (cut === undefined) return left.length;
  const ways = left
    .flatMap((room, i) => (room >= cut ? [left.map((r, j) => (j === i ? r - cut : r))] : []))
    .concat([[...left, stock - cut]]);
  return Math.min(...ways.map((way) => fewestByTrying({ stock, cuts: rest }, way)));
}

describe('cutting stock', () => {
  test('the search finds the fewest stocks that trying everything finds', () => {
    fc.assert(
      fc.property(problem(6), (each) => {
        const plan = searchPlan(each);
        return plan.proved && planHolds(each, plan) && plan.stocks.length === fewestByTrying(each);
      }),
      RUNS,
    );
  });

  test('plans hold and lie between the bound and first fit, given up or not', () => {
    fc.assert(
      fc.property(problem(40), fc.integer({ min: 0, max: 2000 }), (each, tries) => {
        const plan = searchPlan(each, tries);
        const first = firstFit(each);
        return (
          planHolds(each, plan) &&
          planHolds(each, first) &&
          plan.stocks.length >= fewestStocks(each) &&
          plan.stocks.length <= first.stocks.length
        );
      }),
      RUNS,
    );
  });

  test('first fit is not always the fewest', () => {
    // Of 8: 4 + 2 + 2 and 3 + 3 + 2 fill two; first fit lays 4 3 | 3 2 2 | 2.
    const each = { stock: 8, cuts: [4, 3, 3, 2, 2, 2] };
    expect(firstFit(each).stocks).toEqual([[4, 3], [3, 2, 2], [2]]);
    expect(fewestByTrying(each)).toBe(2);
    expect(searchPlan(each).stocks).toHaveLength(2);
  });

  test.each([
    ['a cut missing', [[60]]],
    ['a cut too many', [[60, 30], [30], [30]]],
    ['over the stock', [[60, 30, 30]]],
    ['another length', [[60, 30], [29]]],
    ['an empty stock', [[60, 30], [30], []]],
    ['not whole', [[60, 30], [29.999999]]],
  ])('%s does not hold', (_, stocks) => {
    const each = { stock: 100, cuts: [60, 30, 30] };
    expect(planHolds(each, { stocks: [[60, 30], [30]], proved: true })).toBe(true);
    expect(planHolds(each, { stocks, proved: true })).toBe(false);
  });

  test('a solver is asked only where the search gave up; what does not hold is not used', () => {
    let asked = 0;
    const wrong = () => {
      asked++;
      return { stocks: [[1]], proved: true };
    };
    const easy = { stock: 100, cuts: [60, 40] };
    expect(cutStock(easy, wrong)).toEqual({ stocks: [[60, 40]], proved: true });
    expect(asked).toBe(0);
    // Sixty unlike cuts: the search ends before all is tried, as its claim to have proved says.
    let seed = 7;
    const next = (): number => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
    const cuts = Array.from({ length: 60 }, () => 200 + Math.floor(next() * 180));
    const hard = { stock: 1000, cuts };
    const own = searchPlan(hard);
    expect(own.proved).toBe(false);
    expect(cutStock(hard, wrong)).toEqual(own);
    expect(asked).toBe(1);
    expect(cutStock(hard, () => null)).toEqual(own);
  });
});
