// Panels over thousands of outlines: thicker, closer and shorter never bear less; turned over is
// turned over; what lies outside the rules is refused.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { feet, inches, ksi, psf } from '../units.js';
import { beamCoefficients } from './beam.js';
import { bendingStrength, type BendingStrength } from './bending.js';
import { loadTable } from './load-table.js';
import type { OutlinePoint } from './corners.js';
import { panelStrength, type Panel } from './panel.js';
import { panelChecks, spanLimits, type LoadDirection } from './span-limits.js';
import { E_STEEL, STEEL_GRADES } from './steel.js';

interface Rib {
  readonly pitch: number;
  readonly top: number;
  readonly depth: number;
  readonly degrees: number;
  readonly R: number;
  readonly minor: number;
}

/** One pitch from pan middle to pan middle; `minor` is the height of a small rib beside it. */
function trapezoid({ pitch, top, depth, degrees, R, minor }: Rib): OutlinePoint[] {
  const run = depth / Math.tan((degrees * Math.PI) / 180);
  const half = pitch / 2;
  const small = minor > 0 ? [-half + 0.4, -half + 0.4 + minor, -half + 0.7 + minor] : [];
  const flat: [number, number][] = [[-half, 0]];
  if (small.length > 0) {
    const [a = 0, b = 0, c = 0] = small;
    flat.push([a, 0], [b, minor], [c, minor], [c + minor, 0]);
  }
  flat.push(
    [-top / 2 - run, 0],
    [-top / 2, depth],
    [top / 2, depth],
    [top / 2 + run, 0],
    [half, 0],
  );
  return flat.map(([x, y]) => ({ x: inches(x), y: inches(y), insideRadius: inches(R) }));
}

const rib = fc.record({
  pitch: fc.double({ min: 5, max: 10, noNaN: true }),
  top: fc.double({ min: 0.8, max: 2, noNaN: true }),
  depth: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
  degrees: fc.double({ min: 50, max: 88, noNaN: true }),
  R: fc.double({ min: 0.03, max: 0.1, noNaN: true }),
  minor: fc.constantFrom(0, 0, 0.12, 0.2),
});
const thickness = fc.double({ min: 0.019, max: 0.06, noNaN: true });
const yieldStress = fc.constantFrom(33, 40, 50, 60);

const panelOf = (r: Rib, t: number, Fy: number): Panel => ({
  outline: trapezoid(r),
  cover: inches(r.pitch),
  t: inches(t),
  Fy: ksi(Fy),
  E: E_STEEL,
  edition: 'S100-16',
  bearing: inches(1.5),
  fastened: true,
});

const RUNS = { seed: 20261125, numRuns: 1500 };

const allowed = (panel: Panel, spans: number, L: number, direction: LoadDirection, n = 180) => {
  const strength = panelStrength(panel);
  if (!strength.ok) return undefined;
  const limits = spanLimits(strength.value, beamCoefficients(spans), feet(L), direction, n);
  return Math.min(...limits.map((each) => each.load));
};

describe('a panel of any trapezoidal outline', () => {
  const spans = fc.integer({ min: 1, max: 5 });
  const direction = fc.constantFrom<LoadDirection>('inward', 'outward');
  const span = fc.double({ min: 1, max: 10, noNaN: true });

  test('bears no less when thicker', () => {
    fc.assert(
      fc.property(
        rib,
        thickness,
        thickness,
        yieldStress,
        spans,
        direction,
        span,
        (r, a, b, Fy, n, d, L) => {
          const thin = allowed(panelOf(r, Math.min(a, b), Fy), n, L, d);
          const thick = allowed(panelOf(r, Math.max(a, b), Fy), n, L, d);
          fc.pre(thin !== undefined && thick !== undefined);
          expect(thick).toBeGreaterThanOrEqual(thin * (1 - 1e-9));
        },
      ),
      RUNS,
    );
  });

  test('bears no less over closer supports, and no less with a looser deflection limit', () => {
    fc.assert(
      fc.property(
        rib,
        thickness,
        yieldStress,
        spans,
        direction,
        span,
        span,
        (r, t, Fy, n, d, a, b) => {
          const panel = panelOf(r, t, Fy);
          const near = allowed(panel, n, Math.min(a, b), d);
          const far = allowed(panel, n, Math.max(a, b), d);
          fc.pre(near !== undefined && far !== undefined);
          expect(near).toBeGreaterThanOrEqual(far * (1 - 1e-12));
          const loose = allowed(panel, n, Math.max(a, b), d, 60);
          expect(loose).toBeGreaterThanOrEqual(far * (1 - 1e-12));
        },
      ),
      RUNS,
    );
  });

  test('turned over bends the other way; mirrored or cut elsewhere, the same', () => {
    const one = (
      outline: readonly OutlinePoint[],
      r: Rib,
      t: number,
      way: 'positive' | 'negative',
    ) => {
      const { cover, Fy, E } = panelOf(r, t, 50);
      return bendingStrength({ outline, cover, Fy, E, t: inches(t) }, way);
    };
    fc.assert(
      fc.property(rib, thickness, (r, t) => {
        const outline = trapezoid(r);
        const plain = one(outline, r, t, 'positive');
        const over = one(
          outline.map((p) => ({ ...p, y: inches(-p.y) })),
          r,
          t,
          'negative',
        );
        const mirror = one(
          outline.map((p) => ({ ...p, x: inches(-p.x) })).reverse(),
          r,
          t,
          'positive',
        );
        const moved = outline
          .slice(1)
          .concat(outline.slice(1, 2).map((p) => ({ ...p, x: inches(p.x + r.pitch) })));
        const cut = one(
          moved.map((p) => ({ ...p })),
          r,
          t,
          'positive',
        );
        fc.pre(plain.ok);
        for (const other of [over, mirror, cut]) {
          expect(other.ok).toBe(true);
          const { gross, effective } = (other as { value: BendingStrength }).value;
          expect(gross.I).toBeCloseTo(plain.value.gross.I, 9);
          expect(effective.S).toBeCloseTo(plain.value.effective.S, 7);
        }
      }),
      { ...RUNS, numRuns: 500 },
    );
  });

  test('never counts more than its gross section, and stays within first yield', () => {
    fc.assert(
      fc.property(rib, thickness, yieldStress, (r, t, Fy) => {
        const strength = panelStrength(panelOf(r, t, Fy));
        fc.pre(strength.ok);
        for (const each of [strength.value.positive, strength.value.negative]) {
          expect(each.effective.I).toBeLessThanOrEqual(each.gross.I * (1 + 1e-9));
          expect(each.effective.A).toBeLessThanOrEqual(each.gross.A * (1 + 1e-9));
          expect(each.serviceI).toBeGreaterThanOrEqual(each.effective.I * (1 - 1e-6));
          expect(each.fc).toBeLessThanOrEqual(Fy * (1 + 1e-9));
        }
      }),
      RUNS,
    );
  });

  test('gives checks whose load at capacity is used up exactly', () => {
    const strength = panelStrength(
      panelOf({ pitch: 8, top: 1.5, depth: 1.25, degrees: 65, R: 0.09, minor: 0 }, 0.0239, 50),
    );
    if (!strength.ok) throw new Error('must calculate');
    const demand = { spans: 3, L: feet(5), inward: psf(30), outward: psf(-45), deflection: 180 };
    const checks = panelChecks(strength.value, demand);
    expect(checks.map((c) => c.limitState)).toContain('outward: bending over a support');
    for (const each of checks) {
      expect(each.utilization).toBeCloseTo(Math.abs(each.demand) / each.capacity, 12);
      expect(each.steps.length).toBeGreaterThan(7);
    }
    expect(checks.some((c) => c.limitState.startsWith('outward: web crippling'))).toBe(false);
  });
});

describe('a panel outside the rules', () => {
  const wide: Rib = { pitch: 24, top: 1.5, depth: 1.25, degrees: 65, R: 0.09, minor: 0 };
  test('whose pan is wider than 500 t is refused in the direction that compresses it', () => {
    const strength = panelStrength(panelOf(wide, 0.0179, 50));
    expect(strength.ok).toBe(false);
    if (strength.ok) return;
    expect(strength.faults).toHaveLength(1);
    expect(strength.faults[0]!.message).toMatch(/^negative bending: flat \d in compression: w\/t/);
  });

  test('refuses the load table, naming the gauge by its place', () => {
    const table = loadTable({
      outline: trapezoid(wide),
      cover: inches(24),
      gauges: [16, 26, 99],
      grade: STEEL_GRADES[0]!,
      spans: 3,
      spanLengths: [feet(5)],
      deflection: 180,
      edition: 'S100-16',
      bearing: inches(1.5),
      fastened: false,
    });
    expect(table.ok).toBe(false);
    if (table.ok) return;
    expect(table.faults.map((f) => f.pointer)).toEqual(['/gauges/1', '/gauges/2']);
  });

  test('with a shallow web keeps its bending and says crippling is not evaluated', () => {
    const shallow = panelStrength(panelOf({ ...wide, pitch: 8, degrees: 40 }, 0.0299, 50));
    expect(shallow.ok && typeof shallow.value.crippling).toBe('string');
  });
});
