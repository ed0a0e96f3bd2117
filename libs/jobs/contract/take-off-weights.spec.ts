// Whoever adds the weights of the printed lines gets the printed total, and the order's lines weigh the
// same as the take-off's.

import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { panelsWeight, pieceWeight, trimsWeight } from './take-off-weights.js';
import type { TakeOffResult } from './take-off.js';
import { HOUSE, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { HOUSE_TAKE_OFF } from '../take-off/take-off-files.js';
import { takeOffSheet } from '../take-off/view.js';

const panel = { coverage_in: '16', weight_psf: '1.2341' } as TakeOffResult['panel'];
const piece = (length_in: number, count = 1) => ({
  mark: '1a',
  length_in: String(length_in),
  count,
});
/** In tenths of a pound, so that the sum is exact. */
const added = (column: readonly string[]): number =>
  column.reduce((sum, each) => sum + Number(each.replace('.', '')), 0);

test('three lines of 1.0 lb are 3.0 lb, though unrounded they come to 3.1', () => {
  // 7.6 in by 16 in at 1.2341 psf weigh 1.0421 lb.
  const pieces = [piece(7.6), piece(7.6), piece(7.6)];
  expect(pieces.map((each) => pieceWeight(each, panel))).toEqual(['1.0', '1.0', '1.0']);
  expect((3 * 7.6 * 16 * 1.2341) / 144).toBeGreaterThan(3.1);
  expect(panelsWeight({ pieces, panel })).toBe('3.0');
});

test('the total is the sum of the lines, whatever the pieces', () => {
  const some = fc.record({
    length: fc.integer({ min: 1, max: 6000 }),
    count: fc.integer({ min: 1, max: 400 }),
  });
  fc.assert(
    fc.property(fc.array(some, { minLength: 1, maxLength: 30 }), (lengths) => {
      const pieces = lengths.map(({ length, count }) => piece(length / 8, count));
      const column = pieces.map((each) => pieceWeight(each, panel));
      expect(added([panelsWeight({ pieces, panel })])).toBe(added(column));
    }),
    { numRuns: 200 },
  );
});

test('lines of the order weigh what the take-off says', () => {
  const { job } = playUpTo(HOUSE, 'gauge').play({
    ...HOUSE_TAKE_OFF,
    drawn: { ...HOUSE_TAKE_OFF.drawn, overhang_ft: '0.9' },
  } as typeof HOUSE_TAKE_OFF);
  const { result, lines } = takeOffSheet(job, 's1', SAMPLE_CATALOGUE)!;
  const of = (kind: string) =>
    lines.flatMap(({ what, weight }) => (what === kind && weight ? [weight.v] : []));
  expect(added(of('panel'))).toBe(added([panelsWeight(result)]));
  expect(added(of('trim'))).toBe(added([trimsWeight(result)]));
  expect(added(of('trim'))).toBeGreaterThan(0);
});
