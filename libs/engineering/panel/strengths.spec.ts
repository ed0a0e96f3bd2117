// Single strengths: spans in balance, webs, corrugations, gauges and grades, and their refusals.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { degrees, inches, ksi } from '../units.js';
import { beamCoefficients } from './beam.js';
import { corrugation } from './corrugation.js';
import { GAUGE_TABLE_NAMES, sheetThickness } from './gauge.js';
import { webShear } from './shear.js';
import { designStresses, E_STEEL, STEEL_GRADES, steelGrade } from './steel.js';
import { CRIPPLING_CASES } from './web-crippling.table.js';
import { deckCrippling } from './web-crippling.js';

const RUNS = { seed: 20261125, numRuns: 2000 };

test('equal spans are in balance and symmetric', () => {
  for (let spans = 1; spans <= 20; spans++) {
    const c = beamCoefficients(spans);
    expect(c.reactions.reduce((a, b) => a + b, 0)).toBeCloseTo(spans, 12);
    c.reactions.forEach((R, i) => expect(R).toBeCloseTo(c.reactions[spans - i]!, 12));
    expect(c.delta).toBeLessThanOrEqual(5 / 384 + 1e-12);
  }
  expect(beamCoefficients(1)).toMatchObject({ mPos: 0.125, mNeg: 0, rInt: null });
  expect(beamCoefficients(1).delta).toBeCloseTo(5 / 384, 12);
});

test('a thicker web bears no less, in shear and crippling, in both editions', () => {
  const t = fc.double({ min: 0.015, max: 0.1, noNaN: true });
  const h = fc.double({ min: 0.5, max: 3, noNaN: true });
  fc.assert(
    fc.property(t, t, h, fc.constantFrom(...CRIPPLING_CASES), (a, b, depth, which) => {
      const [thin, thick] = [inches(Math.min(a, b)), inches(Math.max(a, b))];
      for (const edition of ['S100-16', 'S100-24'] as const) {
        const Va = (each: typeof thin): number =>
          webShear(inches(depth), each, ksi(50), E_STEEL, 5.34, edition).Va;
        expect(Va(thick)).toBeGreaterThanOrEqual(Va(thin) * (1 - 1e-3));
      }
      const Pa = (each: typeof thin) =>
        deckCrippling(
          {
            Fy: ksi(50),
            t: each,
            R: inches(0.05),
            N: inches(1.5),
            h: inches(depth),
            theta: degrees(70),
          },
          which,
        );
      const [lesser, greater] = [Pa(thin), Pa(thick)];
      fc.pre(lesser.ok && greater.ok);
      expect(greater.value.Pa).toBeGreaterThanOrEqual(lesser.value.Pa);
    }),
    RUNS,
  );
});

describe('web crippling outside Table G5-5', () => {
  const web = {
    Fy: ksi(33),
    t: inches(0.03),
    R: inches(0.1),
    N: inches(1.5),
    h: inches(1.2),
    theta: degrees(70),
  };
  test.each([
    ['/h_in', { h: inches(6.1) }],
    ['/N_in', { N: inches(6.4), h: inches(3) }],
    ['/N_in', { N: inches(3.7) }],
    ['/R_in', { R: inches(0.61) }],
    ['/theta_deg', { theta: degrees(44.9) }],
    ['/theta_deg', { theta: degrees(90.1) }],
  ])('is refused at %s', (pointer, change) => {
    const made = deckCrippling({ ...web, ...change }, 'fastened-EOF');
    expect(made.ok).toBe(false);
    if (!made.ok) expect(made.faults.map((f) => f.pointer)).toEqual([pointer]);
  });
});

test('a corrugation closes on its pitch and depth, and refuses waves that cannot be made', () => {
  const size = fc.double({ min: 0.2, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 1.2, max: 5, noNaN: true }), size, size, (p, d, R) => {
      const t = 0.03;
      const wave = corrugation(inches(p), inches(d), inches(R), inches(t));
      fc.pre(wave.ok);
      const { tangentAngle, tangentLength, A } = wave.value;
      const D = (tangentAngle * Math.PI) / 180;
      const r = R + t / 2;
      expect(2 * r * Math.sin(D) + tangentLength * Math.cos(D)).toBeCloseTo(p / 2, 9);
      expect(2 * r * (1 - Math.cos(D)) + tangentLength * Math.sin(D)).toBeCloseTo(d, 9);
      expect(A).toBeGreaterThan(12 * t);
    }),
    RUNS,
  );
  const tooRound = corrugation(inches(2), inches(1), inches(2), inches(0.03));
  expect(tooRound).toMatchObject({ ok: false, faults: [{ pointer: '/inside_radius_in' }] });
  const tooDeep = corrugation(inches(1), inches(3), inches(0.4), inches(0.03));
  expect(tooDeep.ok).toBe(false);
});

test('each table falls with the gauge number, and refuses a gauge it does not have', () => {
  for (const table of GAUGE_TABLE_NAMES) {
    let last = Infinity;
    for (let gauge = 10; gauge <= 30; gauge++) {
      const sheet = sheetThickness(gauge, table);
      if (!sheet.ok) throw new Error('must have it');
      expect(sheet.value.t).toBeLessThan(last);
      last = sheet.value.t;
      const { least = 0, most = 1, t } = sheet.value;
      expect(least <= t && t <= most).toBe(true);
    }
    expect(sheetThickness(31, table).ok).toBe(false);
    expect(sheetThickness(24.5, table).ok).toBe(false);
  }
});

test('grades answer to their designation and never count for more than specified', () => {
  for (const grade of STEEL_GRADES) {
    for (const name of [
      grade.name,
      grade.name.slice(3),
      grade.name.replace('SS', 'SS Grade'),
      grade.name.replace('SS ', 'SS'),
    ]) {
      expect(steelGrade(name)).toMatchObject({ ok: true, value: grade });
    }
    const design = designStresses(grade);
    expect(design.Fy).toBeLessThanOrEqual(grade.Fy);
    expect(design.Fu).toBeLessThanOrEqual(grade.Fu);
  }
  expect(steelGrade('50').ok).toBe(false);
});
