// The coating calculators refuse what they cannot answer, name every fault, and show their steps.

import { describe, expect, test } from '@jest/globals';
import type { Fault } from '../check.js';
import { COATING_DESIGNATIONS } from './coating-mass.table.js';
import { coatingCalculators } from './calculators.js';

const run = (name: string, input: unknown) => {
  const one = coatingCalculators.find((each) => each.name === name);
  if (one === undefined) throw new Error(name);
  return one.calculate(input);
};
const faultsOf = (name: string, input: unknown): string[] => {
  const made = run(name, input);
  return made.ok ? [] : made.faults.map((each: Fault) => each.pointer);
};
const valueOf = (name: string, input: unknown): Record<string, unknown> => {
  const made = run(name, input);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};

const GRAY = { L: 50, a: 0, b: 0 };
const UNDER = { scale: 'Hunter', illuminant: 'D65', observer: '10-degree' };
const CLIMATE = { T_C: 10, RH_pct: 75, SO2_Pd_mg_m2d: 5, Cl_Sd_mg_m2d: 3 };

describe('refusals', () => {
  test.each([
    ['colour-difference', {}, ['/scale', '/illuminant', '/observer', '/first', '/second']],
    ['colour-difference', { ...UNDER, first: GRAY, second: { L: 50, a: 0 } }, ['/second/b']],
    ['colour-difference', { ...UNDER, first: GRAY, second: [] }, ['/second']],
    ['colour-difference', { ...UNDER, first: GRAY, second: { X: 0, Y: 0, Z: 0 } }, ['/second/Y']],
    ['colour-difference', { ...UNDER, observer: 5, first: GRAY, second: GRAY }, ['/observer']],
    ['colour-convert', { from: 'XYZ', to: 'LCh', value: GRAY, illuminant: 'C' }, ['/value']],
    [
      'colour-convert',
      { from: 'Hunter', to: 'XYZ', value: { L: 5, a: -400, b: 0 }, illuminant: 'C' },
      ['/value'],
    ],
    ['coating-mass', { designation: '60G' }, ['/designation']],
    ['coating-mass', { designation: 'G01' }, ['/designation']],
    ['corrosion', { ...CLIMATE, T_C: 30, RH_pct: 20 }, ['/T_C', '/RH_pct']],
    [
      'corrosion',
      { ...CLIMATE, SO2_Pd_mg_m2d: 0.1, Cl_Sd_mg_m2d: 800 },
      ['/SO2_Pd_mg_m2d', '/Cl_Sd_mg_m2d'],
    ],
    ['zinc-life', { exponent: 'B1' }, ['/zinc_um_per_side', '/rcorr_um_per_y']],
    [
      'zinc-life',
      {
        zinc_um_per_side: 1,
        designation: 'G90',
        rcorr_um_per_y: 1,
        category: 'C3',
        exponent: 'B1',
      },
      ['/designation', '/category'],
    ],
    ['zinc-life', { designation: 'AZ55', category: 'C3', exponent: 'linear' }, ['/designation']],
    ['zinc-life', { designation: 'G90', rcorr_um_per_y: 26, exponent: 'B1' }, ['/rcorr_um_per_y']],
  ])('%s %j', (name, input, pointers) => {
    expect(faultsOf(name, input)).toEqual(pointers);
  });
});

describe('answers', () => {
  test('every designation has a mass, a thickness and steps', () => {
    for (const designation of COATING_DESIGNATIONS) {
      const made = run('coating-mass', { designation });
      if (!made.ok) throw new Error(designation);
      const value = made.value as Record<string, number>;
      expect(value['one_side_min']).toBeLessThan(value['single_spot_min'] ?? NaN);
      expect(value['thickness_um_per_side']).toBeGreaterThan(5);
      expect(made.steps.at(-1)?.value).toBe(value['thickness_um_per_side']);
    }
  });

  test('AZ50 is lighter than G60 and as thick as G90; its density is marked', () => {
    const [az50, g60, g90] = ['AZ50', 'G60', 'G90'].map(
      (designation) => valueOf('coating-mass', { designation }) as Record<string, number>,
    ) as [Record<string, number>, Record<string, number>, Record<string, number>];
    expect(az50['total_ozft2']).toBeLessThan(g60['total_ozft2'] ?? NaN);
    expect(az50['thickness_um_per_side']).toBeGreaterThan(g90['thickness_um_per_side'] ?? NaN);
    const made = run('coating-mass', { designation: 'AZ50' });
    expect(made.ok && made.notes.join(' ')).toMatch(/edition text to be confirmed/);
  });

  test('a designation and a category stand for their thickness and upper rate', () => {
    const entered = { zinc_um_per_side: 19.2024, rcorr_um_per_y: 2.1, exponent: 'B2' };
    const named = { designation: 'G90', category: 'C3', exponent: 'B2' };
    const years = (input: object): number => valueOf('zinc-life', input)['years'] as number;
    expect(years(named)).toBeCloseTo(years(entered), 9);
  });

  test('mixed readings are brought into one scale', () => {
    const white = { X: 95.02, Y: 100, Z: 108.82 };
    const under = { scale: 'Hunter', illuminant: 'D65', observer: 2 };
    const made = valueOf('colour-difference', { ...under, first: white, second: GRAY });
    expect(made['second']).toEqual(GRAY);
    expect(made['dE']).toBeCloseTo(50, 9);
  });

  test('an illuminant without an observer means 2 degrees', () => {
    const input = { from: 'XYZ', to: 'Hunter', value: { X: 20, Y: 20, Z: 20 } };
    const value = (illuminant: string): unknown =>
      valueOf('colour-convert', { ...input, illuminant })['value'];
    expect(value('D65')).toEqual(value('D65 2-degree'));
    expect(value('D65')).not.toEqual(value('D65 10-degree'));
  });
});

describe('every pair of spaces leads there and back', () => {
  const SPACES = ['XYZ', 'CIELAB', 'Hunter', 'LCh'];
  const pairs = SPACES.flatMap((from) => SPACES.map((to) => [from, to] as const));
  const convert = (from: string, to: string, value: unknown) =>
    valueOf('colour-convert', { from, to, value, illuminant: 'D65 10-degree' })['value'];
  test.each(pairs)('%s to %s', (from, to) => {
    const start = convert('XYZ', from, { X: 20.65, Y: 12.2, Z: 5.14 }) as Record<string, number>;
    const back = convert(to, from, convert(from, to, start)) as Record<string, number>;
    expect(Object.keys(back)).toEqual(Object.keys(start));
    for (const [key, value] of Object.entries(start)) expect(back[key]).toBeCloseTo(value, 9);
  });
});
