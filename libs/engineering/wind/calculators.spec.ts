// The wind calculators: strict input, every fault named, output by its literal keys.

import { describe, expect, test } from '@jest/globals';
import { windCalculators } from './calculators.js';

const [wind, velocity] = windCalculators as [
  (typeof windCalculators)[number],
  (typeof windCalculators)[number],
];

const GOOD = {
  edition: '7-22',
  V_mph: 115,
  exposure: 'C',
  h_ft: 25,
  Kzt: 1,
  elevation_ft: 0,
  enclosure: 'enclosed',
  roof: { shape: 'hip', theta_deg: 26.6, width_ft: 32, length_ft: 60, overhang: true },
  areas_ft2: [20, 50],
};

function faultsOf(input: unknown): string[] {
  const outcome = wind.calculate(input);
  if (outcome.ok) throw new Error('was not refused');
  return outcome.faults.map((each) => each.pointer);
}

describe('wind calculator', () => {
  test('gives the literal keys, each zone at each area', () => {
    const outcome = wind.calculate(GOOD);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
    expect(Object.keys(outcome.value)).toEqual(Object.keys(wind.output));
    const zones = outcome.value['zones'] as Record<string, unknown>[];
    expect(zones).toHaveLength(2 * (3 + 3 + 2));
    expect(Object.keys(zones[0]!)).toEqual([
      'zone',
      'part',
      'area_ft2',
      'GCp_pos',
      'GCp_neg',
      'inward_psf',
      'outward_psf',
      'minimum_governs',
    ]);
    expect(outcome.steps.every((each) => each.cite.source === 'asce-7-22')).toBe(true);
  });

  test('a defaulted factor is a recorded assumption', () => {
    const { Kzt: _, elevation_ft: __, ...rest } = GOOD;
    const outcome = wind.calculate(rest);
    expect(outcome.ok && outcome.notes.filter((note) => note.includes('assumed'))).toHaveLength(2);
  });

  test('names the 16 psf minimum where it governs', () => {
    const outcome = wind.calculate({ ...GOOD, V_mph: 90 });
    expect(outcome.ok && outcome.notes.some((note) => note.startsWith('The 16 psf minimum'))).toBe(
      true,
    );
  });

  test('refuses unknown, missing and wrong values all at once', () => {
    const { V_mph: _, ...rest } = GOOD;
    expect(faultsOf({ ...rest, exposure: 'A', wind: 1, areas_ft2: [0] })).toEqual([
      '/wind',
      '/V_mph',
      '/exposure',
      '/areas_ft2/0',
    ]);
  });

  test('refuses what no figure covers', () => {
    const roof = (change: object): unknown => ({ ...GOOD, roof: { ...GOOD.roof, ...change } });
    expect(faultsOf({ ...GOOD, h_ft: 60.1 })).toEqual(['/h_ft']);
    expect(faultsOf(roof({ theta_deg: 46 }))).toEqual(['/roof/theta_deg']);
    expect(faultsOf(roof({ shape: 'monoslope', theta_deg: 31 }))).toEqual(['/roof/theta_deg']);
    expect(faultsOf(roof({ shape: 'flat', theta_deg: 8 }))).toEqual(['/roof/theta_deg']);
    expect(faultsOf(roof({ width_ft: 61 }))).toEqual(['/roof/length_ft']);
    expect(faultsOf({ ...GOOD, edition: '7-10', enclosure: 'partially-open' })).toEqual([
      '/enclosure',
    ]);
    expect(faultsOf({ ...GOOD, edition: '7-05' })).toEqual(['/edition']);
    expect(faultsOf({ ...GOOD, areas_ft2: [] })).toEqual(['/areas_ft2']);
    expect(faultsOf({ ...GOOD, V_mph: '115' })).toEqual(['/V_mph']);
  });
});

describe('velocity pressure calculator', () => {
  test('gives q_h with its factors', () => {
    const outcome = velocity.calculate({
      edition: '7-16',
      V_mph: 150,
      exposure: 'C',
      h_ft: 15,
      Kzt: 1,
      elevation_ft: 0,
    });
    if (!outcome.ok) throw new Error('refused');
    expect(Object.keys(outcome.value)).toEqual(['Kz', 'Ke', 'Kd', 'qh_psf']);
    expect(outcome.value['qh_psf']).toBeCloseTo(41.55, 1);
  });

  test('refuses more than 60 ft', () => {
    const outcome = velocity.calculate({ edition: '7-16', V_mph: 150, exposure: 'C', h_ft: 61 });
    expect(outcome.ok).toBe(false);
  });
});
