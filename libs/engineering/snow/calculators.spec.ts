// The calculator `snow` at its edges: what it refuses, what it assumes aloud, limits met exactly.

import { describe, expect, test } from '@jest/globals';
import type { Calculator } from '../calculator.js';
import { TO_BE_CONFIRMED } from '../check.js';
import { snowCalculators } from './calculators.js';

const [snow] = snowCalculators as [Calculator];

const gable = {
  edition: '7-16',
  pg_psf: 30,
  pg_basis: 'service-50yr',
  risk_category: 'II',
  Ce: 1,
  Ct: 1.1,
  surface: 'other',
  roof: { shape: 'gable', rise_per_12: 6, W_ft: 30 },
};
const gable722 = { ...gable, edition: '7-22', pg_basis: 'strength', drift: { W2: 0.55 } };

function faultsOf(input: unknown): string[] {
  const made = snow.calculate(input);
  return made.ok ? [] : made.faults.map((f) => f.pointer);
}
function resultOf(input: unknown): { value: Record<string, unknown>; notes: readonly string[] } {
  const made = snow.calculate(input);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return { value: made.value, notes: made.notes };
}
const value = (input: unknown, key: string): unknown => resultOf(input).value[key];
const slope = (roof: Record<string, unknown>) => ({ ...gable, roof: { ...gable.roof, ...roof } });

describe('refusals, all named at once', () => {
  test.each([
    ['a service value in 7-22', { ...gable722, pg_basis: 'service-50yr' }, ['/pg_basis']],
    ['a strength value in 7-16', { ...gable, pg_basis: 'strength' }, ['/pg_basis']],
    ['7-22 unbalanced without W2', { ...gable722, drift: undefined }, ['/drift/W2']],
    ['W2 in 7-16', { ...gable, drift: { W2: 0.5 } }, ['/drift/W2']],
    ['W2 in percent', { ...gable722, drift: { W2: 55 } }, ['/drift/W2']],
    ['neither C_e nor its table', { ...gable, Ce: undefined }, ['/Ce']],
    ['neither C_t nor its table', { ...gable, Ct: undefined }, ['/Ct']],
    ['C_t between the rows of 7-16', { ...gable, Ct: 1.15 }, ['/Ct']],
    ['heated 7-22 without R', { ...gable722, Ct: undefined, thermal: 'heated' }, ['/R_roof']],
    ['cold roof without R', { ...gable, Ct: undefined, thermal: 'cold-ventilated' }, ['/R_roof']],
    ['two slopes', slope({ theta_deg: 26.6 }), ['/roof']],
    ['no slope', slope({ rise_per_12: undefined }), ['/roof/rise_per_12']],
    ['a drift of no kind', { ...gable, drift: { lu_ft: 40 } }, ['/drift/kind']],
    ['a drift without fetch', { ...gable, drift: { kind: 'leeward' } }, ['/drift/lu_ft']],
    ['a negative ground snow', { ...gable, pg_psf: -1 }, ['/pg_psf']],
    ['an older edition', { ...gable, edition: '7-05' }, ['/edition']],
    ['an unknown key', { ...gable, lu_ft: 3 }, ['/lu_ft']],
    [
      'several',
      { ...gable, pg_basis: 'strength', Ce: undefined, Ct: undefined, drift: { W2: 0.4 } },
      ['/pg_basis', '/drift/W2', '/Ce', '/Ct'],
    ],
    ['no object', 7, ['']],
  ])('%s', (_, input, pointers) => {
    expect(faultsOf(JSON.parse(JSON.stringify(input)))).toEqual(pointers);
  });
});

describe('limits met exactly', () => {
  test('unbalanced from 1/2:12 to 7:12, by rise or by rounded degrees', () => {
    const asked = [0.5, 7].map((rise) => value(slope({ rise_per_12: rise }), 'unbalanced'));
    const not = [0.49, 7.01].map((rise) => value(slope({ rise_per_12: rise }), 'unbalanced'));
    const degrees = [2.38, 2.386, 30.256, 30.26].map((theta_deg) =>
      value(slope({ rise_per_12: undefined, theta_deg }), 'unbalanced'),
    );
    expect([...asked, ...degrees].every((each) => each !== null)).toBe(true);
    expect(not).toEqual([null, null]);
    expect(value({ ...gable, roof: { ...gable.roof, shape: 'monoslope' } }, 'unbalanced')).toBe(
      null,
    );
  });
  test('the least load stops at 15 degrees', () => {
    const at = (theta_deg: number) => value(slope({ rise_per_12: undefined, theta_deg }), 'pm_psf');
    expect([at(14.99), at(15)]).toEqual([20, null]);
  });
  test('rain on snow: pg 20 counts, 20.1 does not; a slope of W/50 does not', () => {
    const flat = (pg_psf: number, theta_deg: number) =>
      value(
        { ...gable, pg_psf, roof: { shape: 'monoslope', theta_deg, W_ft: 100 } },
        'rain_on_snow_psf',
      );
    expect([flat(20, 1), flat(20.1, 1), flat(20, 2), flat(20, 1.99)]).toEqual([5, 0, 0, 5]);
  });
  test('drift: h_c / h_b of 0.2 counts', () => {
    const base = { ...gable, roof: { shape: 'flat', W_ft: 30 } };
    const hb = (value(base, 'ps_psf') as number) / (value(base, 'gamma_pcf') as number);
    const at = (h_step_ft: number) =>
      (
        value({ ...base, drift: { kind: 'leeward', lu_ft: 50, h_step_ft } }, 'drift') as {
          pd_psf: number;
        }
      ).pd_psf;
    expect(at(hb * 1.19)).toBe(0);
    expect(at(hb * 1.2000001)).toBeGreaterThan(0);
  });
});

describe('what it says aloud', () => {
  test('7-22 warm slippery roof: the larger of two readings, to be confirmed', () => {
    const { value: out, notes } = resultOf({
      ...gable722,
      Ct: 1,
      surface: 'slippery-unobstructed',
      roof: { shape: 'gable', rise_per_12: 4, W_ft: 30 },
    });
    expect(out['Cs']).toBe(1);
    expect(notes.some((n) => n.includes('0.793') && n.includes(TO_BE_CONFIRMED))).toBe(true);
  });
  test('7-22 windward drift taller than the step: not capped, to be confirmed', () => {
    const { value: out, notes } = resultOf({
      ...gable722,
      drift: { W2: 0.55, kind: 'parapet', lu_ft: 120, parapet_ft: 3 },
    });
    const drift = out['drift'] as Record<string, number>;
    expect(drift['height_ft']).toBeCloseTo(0.75 * (drift['hd_ft'] ?? NaN), 12);
    expect(drift['width_ft']).toBeCloseTo(8 * (drift['height_ft'] ?? NaN), 12);
    expect(notes.some((n) => n.includes(TO_BE_CONFIRMED))).toBe(true);
  });
  test('7-16 slippery warm roof without R is taken as other, and says so', () => {
    const input = { ...gable, Ct: 1, surface: 'slippery-unobstructed' };
    expect(value({ ...input, R_roof: 30 }, 'Cs')).toBeLessThan(1);
    expect(value({ ...input, R_roof: 20, ventilated: true }, 'Cs')).toBeLessThan(1);
    expect(value({ ...input, R_roof: 20 }, 'Cs')).toBe(1);
    expect(resultOf(input).notes).toHaveLength(1);
  });
  test('sliding: 0.4 p_f W over 15 ft; a narrower lower roof carries the whole of it', () => {
    const sliding = { upper_W_ft: 40 };
    const pf = value(gable, 'pf_psf') as number;
    expect(value({ ...gable, sliding }, 'sliding')).toEqual({ plf: 0.4 * pf * 40, width_ft: 15 });
    const narrow = resultOf({ ...gable, sliding, drift: { lower_roof_ft: 10 } });
    expect(narrow.value['sliding']).toEqual({ plf: 0.4 * pf * 40, width_ft: 10 });
    expect(narrow.notes.some((n) => n.includes(TO_BE_CONFIRMED))).toBe(true);
  });
});
