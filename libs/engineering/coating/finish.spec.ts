// Fade and chalk against a term: on which side a limit counts, and what stays an open question.

import { describe, expect, test } from '@jest/globals';
import { labDistance } from './color-difference.js';
import { cielabToXyz, cielabWhite, hunterScale, xyzToHunter, type Lab } from './color-space.js';
import { chalkAgainstTerm, fadeAgainstTerm, type ColorChange, type TermOutcome } from './finish.js';
import { FINISH_LIMITS } from './finish.table.js';

// The case fade-scale-2: Hunter 3.97, CIELAB 5.59, CIEDE2000 3.54.
const CHANGE: ColorChange = {
  retained: { space: 'XYZ', value: { X: 13, Y: 8, Z: 4 } },
  weathered: { space: 'XYZ', value: { X: 15.2, Y: 10, Z: 6 } },
  viewing: { illuminant: 'C', observer: '2-degree' },
  washed: true,
};
const outcomes = (...found: TermOutcome[]): string[] => found.map((each) => each.outcome);

describe('fade', () => {
  test('one change passes 5 units of one scale and fails 5 of another', () => {
    expect(
      outcomes(
        fadeAgainstTerm({ fade: { most: 5, scale: 'Hunter' } }, CHANGE),
        fadeAgainstTerm({ fade: { most: 5, scale: 'CIELAB' } }, CHANGE),
        fadeAgainstTerm({ fade: { most: 5, scale: 'CIEDE2000' } }, CHANGE),
      ),
    ).toEqual(['within', 'beyond', 'within']);
  });

  test('readings in one scale are judged in the scale of the term', () => {
    const lab = { L: 40, a: 10, b: 10 };
    const change: ColorChange = {
      ...CHANGE,
      retained: { space: 'CIELAB', value: lab },
      weathered: { space: 'CIELAB', value: { ...lab, L: 46 } },
    };
    const found = fadeAgainstTerm({ fade: { most: 6, scale: 'Hunter' } }, change);
    const measured = found.outcome === 'open' ? undefined : found.measured;
    const { viewing } = CHANGE;
    const hunter = (color: Lab): Lab =>
      xyzToHunter(cielabToXyz(color, cielabWhite(viewing)), hunterScale(viewing));
    expect(measured).toBeCloseTo(labDistance(hunter(lab), hunter({ ...lab, L: 46 })), 12);
    expect(measured).toBeLessThan(5.9);
  });

  test('stays open without a scale, without washing, without a limit', () => {
    expect(
      outcomes(
        fadeAgainstTerm({ fade: { most: 5 } }, CHANGE),
        fadeAgainstTerm({ fade: { most: 5, scale: 'Hunter' } }, { ...CHANGE, washed: false }),
        fadeAgainstTerm({}, CHANGE),
      ),
    ).toEqual(['open', 'open', 'open']);
  });
});

describe('chalk', () => {
  const rated = (rating: number, least = 8) =>
    chalkAgainstTerm({ chalk: { least } }, { rating, ratedBeforeWashing: true }).outcome;

  test('10 is no chalk: the rating must reach the limit', () => {
    expect([rated(10), rated(8), rated(7.9), rated(0)]).toEqual([
      'within',
      'within',
      'beyond',
      'beyond',
    ]);
  });

  test('stays open after washing, off the scale, without a limit', () => {
    const washed = { rating: 9, ratedBeforeWashing: false };
    expect(chalkAgainstTerm({ chalk: { least: 8 } }, washed).outcome).toBe('open');
    expect([rated(11), rated(-1), rated(NaN)]).toEqual(['open', 'open', 'open']);
    expect(chalkAgainstTerm({}, { rating: 9, ratedBeforeWashing: true }).outcome).toBe('open');
  });
});

test('a finish specification never lowers what the one below it asks', () => {
  const [low, mid, high] = [
    FINISH_LIMITS['AAMA 2603'],
    FINISH_LIMITS['AAMA 2604'],
    FINISH_LIMITS['AAMA 2605'],
  ];
  expect(low.humidityHours).toBeLessThan(mid.humidityHours);
  expect(mid.humidityHours).toBeLessThan(high.humidityHours);
  expect(mid.glossRetentionLeastPct).toBeLessThan(high.glossRetentionLeastPct);
  expect(mid.chalkLeast).toBeLessThanOrEqual(high.chalkLeast);
});
