// Cover left, worked by hand.

import { expect, test } from '@jest/globals';
import { shareLeft } from './share.js';

const term = { start: '2026-04-12', years: 30, full_years: 10 };

test.each([
  ['2026-04-12', '100.0 %: 240 of 240 months, in a straight line after 10 full years'],
  ['2036-04-12', '100.0 %: 240 of 240 months, in a straight line after 10 full years'],
  // One whole month into the fall: 239 of 240.
  ['2036-05-12', '99.5 %: 239 of 240 months, in a straight line after 10 full years'],
  ['2036-05-11', '100.0 %: 240 of 240 months, in a straight line after 10 full years'],
  // Eight months and twelve years: 30 × 12 − 248 = 112.
  ['2046-12-20', '46.6 %: 112 of 240 months, in a straight line after 10 full years'],
  ['2056-04-12', '0.0 %: 0 of 240 months, in a straight line after 10 full years'],
  ['2070-01-01', '0.0 %: 0 of 240 months, in a straight line after 10 full years'],
])('on %s: %s', (notice, words) => {
  expect(shareLeft(term, notice)?.words).toBe(words);
});

test('full until the end, and none where the document says nothing of it', () => {
  const whole = { ...term, full_years: 30 };
  expect(shareLeft(whole, '2050-01-01')?.words).toBe('100.0 %: cover is full until the term ends');
  expect(shareLeft(whole, '2056-04-12')?.percent).toBe('0.0');
  expect(shareLeft({ start: term.start, years: 30 }, '2050-01-01')).toBeNull();
});
