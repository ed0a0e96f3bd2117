// What a calculator accepts, it answers with finite numbers: each place of an accepted input is put to
// extremes and to values of the wrong kind, and what comes back is a result or named faults.

import { describe, expect, test } from '@jest/globals';
import { calculateAll, calculators } from './calculators.js';

const OUTLINE = [
  { x_in: 0, y_in: 0 },
  { x_in: 3.5, y_in: 0, r_inside_in: 0.06 },
  { x_in: 4, y_in: 0.75, r_inside_in: 0.06 },
  { x_in: 5, y_in: 0.75, r_inside_in: 0.06 },
  { x_in: 5.5, y_in: 0, r_inside_in: 0.06 },
  { x_in: 9, y_in: 0 },
];
const SHEET = { outline: OUTLINE, repeat_in: 9 };
const SITE = { V_mph: 115, exposure: 'C', h_ft: 20, Kzt: 1, elevation_ft: 0 };
const ROOF = { shape: 'hip', theta_deg: 18.4, width_ft: 40, length_ft: 60, overhang: true };
const DRIFT = { kind: 'leeward', lu_ft: 50, h_step_ft: 6, lower_roof_ft: 30, W2: 0.5 };
const HEAD = { edition: 'S100-16', t1_in: 0.018, Fu1_ksi: 61.5, dw_in: 0.4 };
const JOINT = { ...HEAD, d_in: 0.19, t2_in: 0.06, Fu2_ksi: 65, tc_in: 0.05 };
const WOOD = { ...HEAD, D_in: 0.25, G: 0.42, thread_length_in: 1, duration_factor: 1.6 };
const HELD = { uplift_psf: -30, tributary_width_in: 12, spacing_in: 24 };
const GRAY = { X: 20, Y: 20, Z: 20 };
const D65 = { illuminant: 'D65', observer: 2 };

const ACCEPTED: Readonly<Record<string, readonly object[]>> = {
  wind: [{ ...SITE, edition: '7-16', enclosure: 'enclosed', areas_ft2: [10], roof: ROOF, Kz: 0.9 }],
  'velocity-pressure': [{ ...SITE, edition: '7-22' }],
  snow: [
    {
      ...{ edition: '7-22', pg_psf: 30, pg_basis: 'strength', risk_category: 'II', Ce: 1 },
      ...{ thermal: 'heated', R_roof: 30, surface: 'other', drift: DRIFT },
      roof: { shape: 'gable', rise_per_12: 4, W_ft: 20 },
      sliding: { upper_W_ft: 30 },
    },
  ],
  combinations: [
    {
      ...{ edition: '7-16', dead_psf: 1, roof_live_psf: 20, snow_psf: 20 },
      ...{ wind_inward_psf: 16, wind_outward_psf: -30 },
    },
  ],
  'roof-live-load': [{ Lo_psf: 20, At_ft2: 300, rise_per_12: 6 }],
  gauge: [{ gauge: 24, table: 'msg' }],
  corrugation: [{ pitch_in: 2.67, depth_in: 0.5, inside_radius_in: 0.6875, t_base_in: 0.0239 }],
  section: [{ ...SHEET, t_in: 0.0239, Fy_ksi: 50, E_ksi: 29500, bending: 'positive' }],
  'effective-width': [{ w_in: 3, t_in: 0.02, f_ksi: 50, k: 4, E_ksi: 29500 }],
  shear: [{ h_in: 1.5, t_in: 0.02, Fy_ksi: 50, E_ksi: 29500, kv: 5.34, edition: 'S100-24' }],
  'web-crippling': [
    {
      ...{ case: 'fastened-EOF', Fy_ksi: 50, t_in: 0.0239, R_in: 0.06 },
      ...{ N_in: 2, h_in: 1.2, theta_deg: 70 },
    },
  ],
  beam: [{ spans: 3, w_plf: 40, span_ft: 5, EI_kipin2: 1500 }],
  'load-table': [
    {
      ...SHEET,
      gauges: [24],
      grade: 'SS 80',
      spans: 3,
      span_ft: [2],
      deflection: 180,
      bearing_in: 2,
    },
  ],
  grade: [{ standard: 'A653', grade: 'SS 33' }],
  screw: [JOINT],
  'wood-withdrawal': [{ fastener: 'lag', D_in: 0.25, G: 0.5 }],
  attachment: [
    { ...HELD, fastener: 'clip', capacity_lb: 200 },
    { ...HELD, fastener: 'screw', steel: JOINT },
    { ...HELD, fastener: 'lag', wood: WOOD },
  ],
  thermal: [{ length_ft: 40, dT_F: 200, material: 'steel' }],
  'least-slope': [{ panel_family: 'lapped', sealed: true }],
  hail: [{ diameter_in: 1.5 }],
  'colour-difference': [
    { ...D65, scale: 'CIEDE2000', first: GRAY, second: { L: 50, a: 1, b: 1 } },
    { ...D65, scale: 'Hunter', first: GRAY, second: { X: 20, Y: 21, Z: 20 } },
  ],
  'colour-convert': [
    { from: 'XYZ', to: 'LCh', value: GRAY, illuminant: 'D65' },
    { from: 'LCh', to: 'Hunter', value: { L: 40, C: 5, h_deg: 20 }, illuminant: 'C' },
    { from: 'Hunter', to: 'XYZ', value: { L: 40, a: 2, b: 5 }, illuminant: 'A' },
  ],
  'coating-mass': [{ designation: 'G90' }],
  corrosion: [{ T_C: 10, RH_pct: 75, SO2_Pd_mg_m2d: 5, Cl_Sd_mg_m2d: 3 }],
  'zinc-life': [
    { zinc_um_per_side: 20, rcorr_um_per_y: 1, exponent: 'B1' },
    { designation: 'G90', category: 'C3', exponent: 'linear' },
  ],
};

// prettier-ignore
const EXTREMES: readonly unknown[] = [
  0, -0, -1, 5e-324, 1e-300, 1e-30, 1e-17, 1e-9, 1e-3, 0.5, 1, 2.5, 45, 90, 1e3, 1e9, 1e155, 1.7e308, -1e300,
  NaN, Infinity, null, true, '1', [], {}, [1],
];

type Path = readonly (string | number)[];

function places(value: unknown, at: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [];
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return keys.flatMap((key) => {
    const here = [...at, key];
    return [here, ...places((value as Record<string | number, unknown>)[key], here)];
  });
}

function withValue(input: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(input))
    return input.map((each, i) => (i === key ? withValue(each, rest, value) : each));
  const group = input as Record<string, unknown>;
  return { ...group, [key]: withValue(group[key], rest, value) };
}

const notFinite = (value: unknown): boolean =>
  typeof value === 'number'
    ? !Number.isFinite(value)
    : typeof value === 'object' && value !== null && Object.values(value).some(notFinite);

describe.each(calculators.map(({ name }) => name))('%s', (name) => {
  const inputs = ACCEPTED[name] ?? [];

  test('has an input here that it accepts', () => {
    expect(inputs.length).toBeGreaterThan(0);
    for (const input of inputs) expect(calculateAll(name, input).outcome).toBe('results');
  });

  test('answers extremes at every place with finite numbers or named faults', () => {
    const wrong: unknown[] = [];
    for (const input of inputs) {
      for (const at of places(input)) {
        for (const extreme of EXTREMES) {
          const made = calculateAll(name, withValue(input, at, extreme), { steps: true });
          const named =
            made.outcome === 'refused' && made.faults.every(({ message }) => message !== '');
          const finite = made.outcome === 'results' && !notFinite(made.output);
          if (!named && !finite) wrong.push([at.join('/'), extreme, made]);
        }
      }
    }
    expect(wrong).toEqual([]);
  });
});
