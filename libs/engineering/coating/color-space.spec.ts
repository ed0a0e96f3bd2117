// There and back again: every conversion undoes its inverse, under every white.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import {
  cielabToLch,
  cielabToXyz,
  cielabWhite,
  hunterScale,
  hunterToXyz,
  lchToCielab,
  xyzToCielab,
  xyzToHunter,
  type Viewing,
} from './color-space.js';

const RUNS = { seed: 20261125, numRuns: 3000 };
const viewing: fc.Arbitrary<Viewing> = fc.record({
  illuminant: fc.constantFrom('A', 'C', 'D50', 'D65', 'F2'),
  observer: fc.constantFrom('2-degree', '10-degree'),
});
const xyz = fc.record({
  X: fc.double({ min: 0.01, max: 110, noNaN: true }),
  Y: fc.double({ min: 0.01, max: 100, noNaN: true }),
  Z: fc.double({ min: 0.01, max: 120, noNaN: true }),
});

function close(actual: object, expected: object): void {
  for (const [key, want] of Object.entries(expected)) {
    expect((actual as Record<string, number>)[key]).toBeCloseTo(want as number, 8);
  }
}

describe('conversions', () => {
  test('XYZ → CIELAB → XYZ', () => {
    fc.assert(
      fc.property(viewing, xyz, (under, color) => {
        const white = cielabWhite(under);
        close(cielabToXyz(xyzToCielab(color, white), white), color);
      }),
      RUNS,
    );
  });

  test('XYZ → Hunter → XYZ', () => {
    fc.assert(
      fc.property(viewing, xyz, (under, color) => {
        const scale = hunterScale(under);
        close(hunterToXyz(xyzToHunter(color, scale), scale), color);
      }),
      RUNS,
    );
  });

  test('CIELAB → LCh → CIELAB, hue in 0 to 360', () => {
    const lab = fc.record({
      L: fc.double({ min: 0, max: 100, noNaN: true }),
      a: fc.double({ min: -120, max: 120, noNaN: true }),
      b: fc.double({ min: -120, max: 120, noNaN: true }),
    });
    fc.assert(
      fc.property(lab, (color) => {
        const lch = cielabToLch(color);
        expect(lch.h_deg).toBeGreaterThanOrEqual(0);
        expect(lch.h_deg).toBeLessThanOrEqual(360);
        close(lchToCielab(lch), color);
      }),
      RUNS,
    );
  });

  test('white is L 100 without color in both scales', () => {
    for (const illuminant of ['A', 'C', 'D50', 'D65', 'F2'] as const) {
      const under = { illuminant, observer: '10-degree' } as const;
      const [X, Y, Z] = cielabWhite(under);
      close(xyzToCielab({ X, Y, Z }, [X, Y, Z]), { L: 100, a: 0, b: 0 });
      const scale = hunterScale(under);
      const [Xh, Yh, Zh] = scale.white;
      close(xyzToHunter({ X: Xh, Y: Yh, Z: Zh }, scale), { L: 100, a: 0, b: 0 });
    }
  });

  test('the short form of C at 2 degrees is the one the trade prints', () => {
    const { X, Y, Z } = { X: 20.654008, Y: 12.197225, Z: 5.136952 };
    close(xyzToHunter({ X, Y, Z }, hunterScale({ illuminant: 'C', observer: '2-degree' })), {
      L: 10 * Math.sqrt(Y),
      a: (17.5 * (1.02 * X - Y)) / Math.sqrt(Y),
      b: (7 * (Y - 0.847 * Z)) / Math.sqrt(Y),
    });
  });
});
