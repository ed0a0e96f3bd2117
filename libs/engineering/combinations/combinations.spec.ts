// Combinations, roof live load and slope components: what must hold for any input, and refusals.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { ASCE_EDITIONS } from '../sources.js';
import { degrees, inches, per12, psf, squareFeet } from '../units.js';
import { combinationsCalculators } from './calculators.js';
import { panelDemand, type PanelDemand, type PanelLoads } from './combinations.js';
import { panelDeadLoad, roofLiveLoad } from './roof-live-load.js';
import { ofHorizontal, ofSlope } from './slope-components.js';

const RUNS = { seed: 20261125, numRuns: 2000 };
const load = (max: number) => fc.double({ min: 0, max, noNaN: true }).map(psf);

const anyLoads: fc.Arbitrary<PanelLoads> = fc.record({
  edition: fc.constantFrom(...ASCE_EDITIONS),
  dead: load(10),
  roofLive: load(20),
  snow: load(150),
  windInward: load(60),
  windOutward: load(200).map((p) => psf(-p)),
});

function demand(loads: PanelLoads): PanelDemand {
  const outcome = panelDemand(loads);
  if (!outcome.ok) throw new Error('refused');
  return outcome.value;
}

describe('panel demand', () => {
  test('governing values are the extremes of all, and outward is never inward', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const d = demand(loads);
        const totals = d.all.map((each) => each.total);
        return (
          d.inward === Math.max(...totals) &&
          d.outward === Math.min(0, ...totals) &&
          d.inwardBy.total === d.inward &&
          d.all.length === 7
        );
      }),
      RUNS,
    );
  });

  test('more of any inward load never asks less inward; more uplift never less outward', () => {
    const keys = ['dead', 'roofLive', 'snow', 'windInward'] as const;
    fc.assert(
      fc.property(anyLoads, fc.constantFrom(...keys), load(50), (loads, key, more) => {
        const inward = demand({ ...loads, [key]: psf(loads[key] + more) }).inward;
        const outward = demand({ ...loads, windOutward: psf(loads.windOutward - more) }).outward;
        return inward >= demand(loads).inward && outward <= demand(loads).outward;
      }),
      RUNS,
    );
  });

  test('roof live load and snow are never summed', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const none = { ...loads, windInward: psf(0), windOutward: psf(0) };
        const one = Math.max(
          demand({ ...none, snow: psf(0) }).inward,
          demand({ ...none, roofLive: psf(0) }).inward,
        );
        return demand(none).inward === one;
      }),
      RUNS,
    );
  });

  test('formulas are printed with the factors that were used', () => {
    const of = (edition: PanelLoads['edition']): string[] =>
      demand({
        edition,
        dead: psf(2),
        roofLive: psf(20),
        snow: psf(36),
        windInward: psf(10),
        windOutward: psf(-35),
      }).all.map((each) => `${each.number}: ${each.formula}`);
    expect(of('7-22')).toEqual([
      '1a: D',
      '3a: D + Lr',
      '3a: D + 0.7 S',
      '5a: D + 0.6 W (inward)',
      '6a: D + 0.75 (0.6 W) (inward) + 0.75 (Lr)',
      '6a: D + 0.75 (0.6 W) (inward) + 0.75 (0.7 S)',
      '7a: 0.6 D + 0.6 W (outward)',
    ]);
    expect(of('7-10')[2]).toBe('3: D + S');
  });

  test('no net uplift is 0 and said', () => {
    const outcome = panelDemand({
      edition: '7-16',
      dead: psf(40),
      roofLive: psf(0),
      snow: psf(0),
      windInward: psf(16),
      windOutward: psf(-16),
    });
    expect(outcome.ok && outcome.value.outward).toBe(0);
    expect(outcome.ok && outcome.notes.some((note) => note.startsWith('No net uplift'))).toBe(true);
  });
});

describe('roof live load', () => {
  test('falls with area and slope, and stays from 12 to 20 psf', () => {
    const any = fc.record({
      area: fc.double({ min: 1, max: 2000, noNaN: true }),
      rise: fc.double({ min: 0, max: 24, noNaN: true }),
      k: fc.double({ min: 1, max: 3, noNaN: true }),
    });
    const at = (area: number, rise: number): number => {
      const outcome = roofLiveLoad(psf(20), squareFeet(area), per12(rise));
      return outcome.ok ? outcome.value.Lr : NaN;
    };
    fc.assert(
      fc.property(any, ({ area, rise, k }) => {
        const Lr = at(area, rise);
        return Lr >= 12 && Lr <= 20 && at(area * k, rise) <= Lr && at(area, rise * k) <= Lr;
      }),
      RUNS,
    );
  });
});

describe('slope components', () => {
  test('turn a load without losing it, and a horizontal load falls less on the slope', () => {
    fc.assert(
      fc.property(load(100), fc.double({ min: 0, max: 60, noNaN: true }), (p, t) => {
        const own = ofSlope(p, degrees(t));
        const snow = ofHorizontal(p, degrees(t));
        return (
          Math.abs(Math.hypot(own.normal, own.along) - p) < 1e-9 &&
          snow.normal <= own.normal + 1e-12 &&
          snow.along <= own.along + 1e-12
        );
      }),
      RUNS,
    );
  });
  test('panel weight grows with the developed width', () => {
    expect(panelDeadLoad(psf(1), inches(21), inches(16))).toBe(1.3125);
    expect(() => panelDeadLoad(psf(1), inches(15), inches(16))).toThrow('developed width');
  });
});

describe('calculators', () => {
  const [combinations, live] = combinationsCalculators as [
    (typeof combinationsCalculators)[number],
    (typeof combinationsCalculators)[number],
  ];
  const GOOD = {
    edition: '7-16',
    dead_psf: 2,
    roof_live_psf: 20,
    snow_psf: 25.2,
    wind_inward_psf: 10,
    wind_outward_psf: -35,
  };
  test('give their keys, the governing combination with its clause', () => {
    const outcome = combinations.calculate(GOOD);
    if (!outcome.ok) throw new Error('refused');
    expect(Object.keys(outcome.value)).toEqual(Object.keys(combinations.output));
    expect(outcome.value['inward_psf']).toBeCloseTo(27.2, 9);
    expect(outcome.value['outward_governs']).toMatchObject({
      combination: '7',
      clause: 'ASCE/SEI 7-16, 2.4.1 combination 7',
    });
  });
  test('refuse a wrong sign, an unknown key and a missing one at once', () => {
    const { dead_psf: _, ...rest } = GOOD;
    const outcome = combinations.calculate({ ...rest, wind_outward_psf: 35, rain_psf: 1 });
    expect(!outcome.ok && outcome.faults.map((each) => each.pointer)).toEqual([
      '/rain_psf',
      '/dead_psf',
      '/wind_outward_psf',
    ]);
  });
  test('roof live load refuses more than the reductions cover', () => {
    const outcome = live.calculate({ Lo_psf: 100, At_ft2: 0, rise_per_12: -1 });
    expect(!outcome.ok && outcome.faults.map((each) => each.pointer)).toEqual([
      '/Lo_psf',
      '/At_ft2',
      '/rise_per_12',
    ]);
  });
});
