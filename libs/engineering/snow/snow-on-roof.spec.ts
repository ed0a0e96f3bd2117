// What must hold of snow loads whatever the roof, over thousands of random roofs.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { COMMON_PRACTICE, type AsceEdition } from '../sources.js';
import { feet, per12, psf } from '../units.js';
import { snowOnRoof } from './snow-on-roof.js';
import { slopeOfRise } from './slope.js';
import type { Factor, SnowLoads, SnowRoof } from './snow-roof.js';

const SETTINGS = { seed: 20261125, numRuns: 2000 };
const factor = (value: number): Factor => ({ value, from: 'entered', cite: COMMON_PRACTICE });
const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
const edition = fc.constantFrom<AsceEdition>('7-10', '7-16', '7-22');

const anyRoof: fc.Arbitrary<SnowRoof> = fc
  .record({
    edition,
    pg: number(1, 200),
    riskCategory: fc.constantFrom('I' as const, 'II' as const, 'III' as const, 'IV' as const),
    Ce: fc.constantFrom(0.7, 0.8, 0.9, 1, 1.1, 1.2),
    Ct: fc.constantFrom(0.85, 1, 1.1, 1.2, 1.3),
    surface: fc.constantFrom('slippery-unobstructed' as const, 'other' as const),
    R: fc.constantFrom(5, 20, 30, 45),
    ventilated: fc.boolean(),
    shape: fc.constantFrom('gable' as const, 'hip' as const, 'monoslope' as const),
    rise: number(0, 24),
    W: number(5, 200),
    W2: number(0.1, 0.9),
    kind: fc.constantFrom('leeward' as const, 'windward' as const, 'parapet' as const),
    lu: number(5, 400),
    clear: number(0.5, 30),
    lowerRoof: number(5, 200),
    upperW: number(5, 100),
  })
  .map((r) => ({
    edition: r.edition,
    pg: psf(r.pg),
    riskCategory: r.riskCategory,
    Ce: factor(r.Ce),
    Ct: factor(r.Ct),
    surface: r.surface,
    R: r.R,
    ventilated: r.ventilated,
    shape: r.shape,
    slope: slopeOfRise(per12(r.rise)),
    W: feet(r.W),
    W2: r.W2,
    drift: { kind: r.kind, lu: feet(r.lu), clear: feet(r.clear) },
    lowerRoof: feet(r.lowerRoof),
    slidingFrom: feet(r.upperW),
  }));

function loads(roof: SnowRoof): SnowLoads {
  const made = snowOnRoof(roof);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}
const peak = (l: SnowLoads): number => l.ps_psf + (l.drift?.pd_psf ?? NaN);
const always = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void): void => {
  fc.assert(fc.property(arbitrary, holds), SETTINGS);
};
/** Not less, but for the last bits of a double. */
const notLess = (more: number, less: number): void => {
  expect(more).toBeGreaterThanOrEqual(less - 1e-9 * Math.abs(less));
};

describe('snow on any roof', () => {
  test('every load is a finite number that is not negative, with steps', () => {
    always(anyRoof, (roof) => {
      const made = snowOnRoof(roof);
      if (!made.ok) throw new Error(JSON.stringify(made.faults));
      const { drift, unbalanced, sliding, ...rest } = made.value;
      const all = {
        ...rest,
        ...unbalanced,
        ...sliding,
        ...drift,
        hc_ft: 0,
        pm_psf: rest.pm_psf ?? 0,
      };
      const fine = (value: number): boolean => Number.isFinite(value) && value >= 0;
      expect(Object.entries(all).filter(([, value]) => !fine(value))).toEqual([]);
      expect(made.steps.every((s) => Number.isFinite(s.value) && s.cite.where !== undefined)).toBe(
        true,
      );
    });
  });

  test('more ground snow never asks less', () => {
    always(fc.tuple(anyRoof, number(1, 2)), ([roof, up]) => {
      const less = loads(roof);
      const more = loads({ ...roof, pg: psf(roof.pg * up) });
      notLess(more.pf_psf, less.pf_psf);
      notLess(more.ps_psf, less.ps_psf);
      notLess(more.pm_psf ?? 0, less.pm_psf ?? 0);
      notLess(more.sliding?.plf ?? NaN, less.sliding?.plf ?? NaN);
      notLess(more.unbalanced?.surcharge_psf ?? 0, less.unbalanced?.surcharge_psf ?? 0);
    });
  });

  test('a steeper roof never holds more, and slippery never more than other', () => {
    always(fc.tuple(anyRoof, number(0, 12)), ([roof, add]) => {
      notLess(
        loads(roof).Cs,
        loads({ ...roof, slope: slopeOfRise(per12(roof.slope.rise + add)) }).Cs,
      );
      const other = loads({ ...roof, surface: 'other' });
      notLess(other.Cs, loads({ ...roof, surface: 'slippery-unobstructed' }).Cs);
    });
  });

  test('a longer fetch and a windier winter never drift less', () => {
    always(fc.tuple(anyRoof, number(1, 3)), ([roof, up]) => {
      const base = loads(roof);
      if (roof.drift === undefined) return;
      const longer = loads({ ...roof, drift: { ...roof.drift, lu: feet(roof.drift.lu * up) } });
      notLess(peak(longer), peak(base));
      const windier = loads({ ...roof, W2: Math.min(1, (roof.W2 ?? 0.5) * up) });
      notLess(peak(windier), peak(base));
    });
  });

  test('a leeward drift fits under the edge of the roof above', () => {
    always(anyRoof, (roof) => {
      if (roof.drift?.kind !== 'leeward') return;
      const { drift, gamma_pcf, ps_psf } = loads(roof);
      const clear = roof.drift.clear ?? NaN;
      if (drift === null || drift.pd_psf === 0) return;
      notLess(clear * gamma_pcf, ps_psf + drift.pd_psf);
      notLess(8 * (drift.hc_ft ?? NaN), drift.width_ft);
    });
  });

  test('the standing readings are never the smaller load', () => {
    always(anyRoof, (roof) => {
      const other = snowOnRoof(roof, {
        warmRoof722: 'slippery-when-warm',
        windwardCap722: 'capped',
        narrowLowerRoof: 'in-proportion',
      });
      if (!other.ok) throw new Error('refused');
      const standing = loads(roof);
      notLess(standing.ps_psf, other.value.ps_psf);
      notLess(standing.sliding?.plf ?? NaN, other.value.sliding?.plf ?? NaN);
      if (standing.ps_psf === other.value.ps_psf) notLess(peak(standing), peak(other.value));
    });
  });

  test('no snow gives no load of any kind', () => {
    always(anyRoof, (roof) => {
      const none = loads({ ...roof, pg: psf(0) });
      expect([none.ps_psf, none.drift?.pd_psf, none.sliding?.plf, none.rain_on_snow_psf]).toEqual([
        0, 0, 0, 0,
      ]);
      expect(none.unbalanced?.surcharge_psf ?? 0).toBe(0);
    });
  });
});
