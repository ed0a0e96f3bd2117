// Outlines as geometry, effective width at its limits, and ribs and lips as they are recognized.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { inches, ksi } from '../units.js';
import { bendingStrength } from './bending.js';
import { grossSection } from './effective-section.js';
import type { OutlinePoint } from './corners.js';
import { sheetShape } from './outline.js';
import { effectiveWidth, reduction, stiffenedGradient, unstiffened } from './plate.js';
import { E_STEEL } from './steel.js';

const RUNS = { seed: 20261125, numRuns: 2000 };
const points = (corners: readonly (readonly [number, number])[], R = 0.1): OutlinePoint[] =>
  corners.map(([x, y]) => ({ x: inches(x), y: inches(y), insideRadius: inches(R) }));

describe('the outline', () => {
  test('gives the area and inertia that thin strips give', () => {
    const R = 0.3;
    const t = 0.05;
    const shape = sheetShape(
      points(
        [
          [0, 0],
          [2, 0],
          [2, 1.5],
          [4, 1.5],
        ],
        R,
      ),
      inches(t),
    );
    if (!shape.ok) throw new Error('must build');
    const { A, I } = grossSection(shape.value);
    const r = R + t / 2;
    const strips: [number, number][] = [];
    const n = 20000;
    const flats = [
      [0, 0, 2 - r, 0],
      [2, r, 2, 1.5 - r],
      [2 + r, 1.5, 4, 1.5],
    ] as const;
    for (const [x1, y1, x2, y2] of flats) {
      const w = Math.hypot(x2 - x1, y2 - y1);
      for (let i = 0; i < n; i++) strips.push([(w / n) * t, y1 + ((y2 - y1) * (i + 0.5)) / n]);
    }
    for (let i = 0; i < n; i++) {
      const a = ((i + 0.5) / n) * (Math.PI / 2);
      const area = (r * (Math.PI / 2) * t) / n;
      strips.push([area, r - r * Math.cos(a)], [area, 1.5 - r + r * Math.cos(a)]);
    }
    const area = strips.reduce((s, [a]) => s + a, 0);
    const y0 = strips.reduce((s, [a, y]) => s + a * y, 0) / area;
    const inertia = strips.reduce((s, [a, y]) => s + a * (y - y0) ** 2, 0);
    expect(A).toBeCloseTo(area, 9);
    expect(I / inertia).toBeGreaterThan(1);
    expect(I / inertia).toBeLessThan(1.001);
  });

  test('joins its ends when it repeats, and takes no part of a straight line for a bend', () => {
    const one = points([
      [0, 0],
      [1, 0],
      [2, 0],
      [3, 1],
      [4, 1],
      [5, 0],
      [6, 0],
    ]);
    const shape = sheetShape(one, inches(0.03), inches(6));
    expect(shape.ok && shape.value.continuous).toBe(true);
    expect(shape.ok && shape.value.flats).toHaveLength(4);
    const cut = sheetShape(one, inches(0.03));
    expect(cut.ok && cut.value.flats).toHaveLength(5);
  });

  test.each([
    [
      'too few points',
      points([
        [0, 0],
        [1, 0],
      ]),
      '/outline',
    ],
    [
      'a straight line',
      points([
        [0, 0],
        [1, 0],
        [2, 0],
      ]),
      '/outline',
    ],
    [
      'a point twice',
      points([
        [0, 0],
        [1, 0],
        [1, 0],
        [2, 1],
      ]),
      '/outline/2',
    ],
    [
      'a closed line',
      points([
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ]),
      '/outline',
    ],
    [
      'a fold back',
      points([
        [0, 0],
        [1, 0],
        [0, 0.01],
      ]),
      '/outline',
    ],
    [
      'bends too large',
      points(
        [
          [0, 0],
          [1, 0],
          [1, 0.2],
          [2, 0.2],
        ],
        0.5,
      ),
      '/outline',
    ],
  ])('refuses %s', (_name, outline, pointer) => {
    const shape = sheetShape(outline, inches(0.03));
    expect(shape.ok).toBe(false);
    if (!shape.ok) expect(shape.faults[0]!.pointer).toBe(pointer);
  });
});

describe('effective width', () => {
  const ratio = fc.double({ min: 1, max: 500, noNaN: true });
  const stress = fc.double({ min: 1, max: 80, noNaN: true });
  test('never exceeds the flat, never grows as stress grows, never shrinks with thickness', () => {
    fc.assert(
      fc.property(
        ratio,
        stress,
        stress,
        fc.double({ min: 1, max: 2, noNaN: true }),
        (w, a, b, more) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const atLow = effectiveWidth(w, 1, low, E_STEEL, 4);
          expect(atLow.b).toBeLessThanOrEqual(w);
          expect(effectiveWidth(w, 1, high, E_STEEL, 4).b).toBeLessThanOrEqual(
            atLow.b * (1 + 1e-12),
          );
          expect(effectiveWidth(w, more, low, E_STEEL, 4).b).toBeGreaterThanOrEqual(
            atLow.b * (1 - 1e-12),
          );
        },
      ),
      RUNS,
    );
  });

  test('is continuous at lambda 0.673 within the rounding of its constants', () => {
    expect(reduction(0.673)).toBe(1);
    expect(reduction(0.673 + 1e-9)).toBeCloseTo(1, 3);
  });

  test('under gradient meets the uniform case and the pure bending of a web', () => {
    expect(stiffenedGradient(10, 0.1, 30, 30, E_STEEL).k).toBe(4);
    expect(stiffenedGradient(10, 0.1, 30, -30, E_STEEL).k).toBe(24);
    const near = (a: number, b: number): void => expect(a / b).toBeCloseTo(1, 2);
    const free = (supported: number, edge: number) =>
      unstiffened(1, 0.05, supported, edge, E_STEEL).k;
    near(free(30, 30), 0.43);
    near(free(30, 0), 1.7);
    near(free(30, -1e-9), 1.7);
    near(free(0, 30), 0.57);
    near(free(-1e-9, 30), 0.57);
  });
});

describe('flats by their place in the sheet', () => {
  const kinds = (outline: OutlinePoint[], way: 'positive' | 'negative', cover?: number) => {
    const sheet = { outline, t: inches(0.03), Fy: ksi(50), E: E_STEEL };
    const strength = bendingStrength(
      cover === undefined ? sheet : { ...sheet, cover: inches(cover) },
      way,
    );
    if (!strength.ok) throw new Error(JSON.stringify(strength.faults));
    return strength.value.elements.map((e) => e.kind);
  };
  const channel = points(
    [
      [1.5, 0.4],
      [1.5, 0],
      [0, 0],
      [0, 3],
      [1.5, 3],
      [1.5, 2.6],
    ],
    0.05,
  );
  test('a channel has a lip, a lipped flange and a web on the compression side', () => {
    expect(kinds(channel, 'positive')).toEqual(['tension', 'tension', 'web', 'lipped', 'lip']);
    expect(kinds(channel, 'negative')).toEqual(['lip', 'lipped', 'web', 'tension', 'tension']);
  });

  test('small ribs in a compressed pan make it one ribbed flange; a taller one bears more', () => {
    const pan = (rise: number) =>
      points(
        [
          [0, 1.2],
          [0.7, 1.2],
          [1.2, 0],
          [3, 0],
          [3.2, rise],
          [3.6, rise],
          [3.8, 0],
          [5.6, 0],
          [6.1, 1.2],
          [6.8, 1.2],
        ],
        0.04,
      );
    expect(kinds(pan(0.15), 'negative', 6.8)).toContain('ribbed');
    expect(kinds(pan(0.15), 'positive', 6.8)).not.toContain('ribbed');
    const S = (rise: number): number => {
      const sheet = {
        outline: pan(rise),
        t: inches(0.03),
        Fy: ksi(50),
        E: E_STEEL,
        cover: inches(6.8),
      };
      const strength = bendingStrength(sheet, 'negative');
      return strength.ok ? strength.value.effective.S : NaN;
    };
    expect(S(0.15)).toBeGreaterThan(S(0.09));
  });
});
