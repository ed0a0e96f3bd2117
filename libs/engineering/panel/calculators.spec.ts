// Panel calculators as they are called: literal keys, refusals that name every fault, notes.

import { describe, expect, test } from '@jest/globals';
import type { Calculator } from '../calculator.js';
import { DEFLECTION_UNCONFIRMED } from '../combinations/deflection-limits.table.js';
import type { Outcome } from '../check.js';
import { panelCalculators } from './calculators.js';

const named = (name: string): Calculator => panelCalculators.find((c) => c.name === name)!;
const run = (name: string, input: unknown): Outcome<Record<string, unknown>> =>
  named(name).calculate(input);
function value(name: string, input: unknown): Record<string, unknown> {
  const made = run(name, input);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}
function pointers(name: string, input: unknown): string[] {
  const made = run(name, input);
  return made.ok ? [] : made.faults.map((f) => f.pointer);
}

const hat = [
  { x_in: 0, y_in: 0 },
  { x_in: 2, y_in: 0, r_inside_in: 0.1 },
  { x_in: 2.6, y_in: 1.25, r_inside_in: 0.1 },
  { x_in: 4, y_in: 1.25, r_inside_in: 0.1 },
  { x_in: 4.6, y_in: 0, r_inside_in: 0.1 },
  { x_in: 6.6, y_in: 0 },
];
const table = {
  outline: hat,
  repeat_in: 6.6,
  gauges: [22, 26],
  grade: 'SS 50 Class 1',
  spans: 3,
  span_ft: [3, 4, 5],
  deflection: 180,
};

test('the list is complete', () => {
  expect(panelCalculators.map((c) => c.name)).toEqual([
    'gauge',
    'corrugation',
    'section',
    'effective-width',
    'shear',
    'web-crippling',
    'beam',
    'load-table',
    'grade',
  ]);
});

describe('results', () => {
  test('gauge gives the range only where the table has one', () => {
    expect(value('gauge', { gauge: 26, table: 'galvanized' })).toEqual({
      t_in: 0.0217,
      weight_psf: 41.82 * 0.0217,
      t_min_in: 0.0187,
      t_max_in: 0.0247,
    });
    expect(Object.keys(value('gauge', { gauge: 29, table: 'msg' }))).toEqual([
      't_in',
      'weight_psf',
    ]);
  });

  test('section gives per foot what it gives per outline, scaled by the cover', () => {
    const input = { outline: hat, t_in: 0.0239, Fy_ksi: 50, bending: 'positive' };
    const perFoot = value('section', { ...input, repeat_in: 6.6 });
    const wider = value('section', { ...input, repeat_in: 8 });
    const outline = value('section', input);
    const A = (v: Record<string, unknown>) => (v['gross'] as { A_in2: number }).A_in2;
    expect(A(perFoot)).toBeCloseTo((A(outline) * 12) / 6.6, 12);
    expect(A(wider)).toBeCloseTo((A(outline) * 12) / 8, 12);
    expect((perFoot['elements'] as unknown[]).length).toBe(4);
    expect((outline['elements'] as unknown[]).length).toBe(5);
    expect([perFoot['per'], outline['per']]).toEqual(['ft', 'outline']);
  });

  test('a load table takes its deflection limit from the building code where it is asked to', () => {
    const { deflection: _, ...rest } = table;
    const entered = run('load-table', { ...rest, deflection: 60 });
    const coded = run('load-table', { ...rest, building_code: 'ibc-2021' });
    if (!entered.ok || !coded.ok) throw new Error('must calculate');
    expect(coded.value).toEqual(entered.value);
    expect(coded.notes).toContain(DEFLECTION_UNCONFIRMED);
    expect(pointers('load-table', rest)).toEqual(['/deflection']);
    expect(pointers('load-table', { ...table, building_code: 'ibc-2021' })).toEqual([
      '/deflection',
    ]);
  });

  test('load table has a row a gauge and span, and says what governs and was assumed', () => {
    const made = run('load-table', table);
    if (!made.ok) throw new Error(JSON.stringify(made.faults));
    const rows = made.value['rows'] as Record<string, number>[];
    expect(rows.map((r) => [r['gauge'], r['span_ft']])).toEqual([
      [22, 3],
      [22, 4],
      [22, 5],
      [26, 3],
      [26, 4],
      [26, 5],
    ]);
    for (const r of rows) {
      expect(r['inward_psf']).toBe(
        Math.min(r['inward_strength_psf']!, r['inward_deflection_psf']!),
      );
    }
    expect(made.notes.join()).toMatch(/edition text to be confirmed.*bearing 1.5 in, not fastened/);
    expect(made.steps.length).toBeGreaterThan(10);
  });

  test('beam gives values with its loads, and only then', () => {
    const c = value('beam', { spans: 1, w_plf: 40, span_ft: 5, EI_kipin2: 3000 });
    expect(c).toMatchObject({ M_pos_kipin: 1.5, R_end_lb: 100, R_int_wL: null, R_int_lb: null });
    expect(c['delta_in']).toBeCloseTo((5 * 40 * 5 ** 4 * 1728) / (384 * 3000 * 1000), 12);
    expect(value('beam', { spans: 2 })).not.toHaveProperty('delta_in');
  });

  test('shear and crippling of second-hand texts say so', () => {
    const input = { h_in: 1.2, t_in: 0.03, Fy_ksi: 50, E_ksi: 29500, kv: 5.34, edition: 'S100-24' };
    expect(run('shear', input)).toMatchObject({
      notes: [expect.stringContaining('edition text to be confirmed')],
    });
  });
});

describe('refusals', () => {
  test.each([
    ['gauge', { gauge: 24, table: 'sheet', color: 'red' }, ['/color', '/table']],
    ['gauge', { gauge: 24 }, ['/table']],
    ['gauge', { gauge: 40, table: 'msg' }, ['/gauge']],
    ['grade', { standard: 'A653', grade: 'SS 50' }, ['/grade']],
    ['grade', { standard: 'A36', grade: 'SS 33' }, ['/standard']],
    ['effective-width', { w_in: 13, t_in: 0.02, f_ksi: 30, k: 4, E_ksi: 29500 }, ['/w_in']],
    ['effective-width', { w_in: -1, t_in: '0.02', f_ksi: 30, k: 4 }, ['/w_in', '/t_in', '/E_ksi']],
    [
      'shear',
      { h_in: 6, t_in: 0.02, Fy_ksi: 50, E_ksi: 29500, kv: 5.34, edition: 'S100-16' },
      ['/h_in'],
    ],
    [
      'web-crippling',
      {
        case: 'fastened-ETF',
        Fy_ksi: 33,
        t_in: 0.03,
        R_in: 0.31,
        N_in: 1.5,
        h_in: 1.2,
        theta_deg: 30,
      },
      ['/R_in', '/theta_deg'],
    ],
    ['beam', { spans: 2.5 }, ['/spans']],
    ['beam', { spans: 2, EI_kipin2: 100 }, ['/w_plf', '/span_ft']],
    [
      'corrugation',
      { pitch_in: 2, depth_in: 1, inside_radius_in: 2, t_base_in: 0.03 },
      ['/inside_radius_in'],
    ],
    [
      'section',
      { outline: hat.slice(0, 2), t_in: 0.02, Fy_ksi: 50, bending: 'up' },
      ['/outline', '/bending'],
    ],
    ['load-table', { ...table, gauges: [22, 35] }, ['/gauges/1']],
    ['load-table', { ...table, grade: 'mild' }, ['/grade']],
    ['load-table', { ...table, repeat_in: undefined }, ['/repeat_in']],
  ])('%s %#', (name, input, expected) => {
    expect(pointers(name, input)).toEqual(expected);
  });
});
