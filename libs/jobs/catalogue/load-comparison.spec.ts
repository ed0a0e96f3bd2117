// The calculation beside the chart: its difference, which is smaller, what governs; and where there is
// nothing to compare, why.

import { expect, test } from '@jest/globals';
import { calculatorNamed } from '#engineering';
import { LoadComparison } from '../contract/load-comparison.js';
import type { Catalogue, LoadChart } from '../contract/catalogue.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { compareLoads } from './load-comparison.js';

const OUTLINE = [
  { x_in: 0, y_in: 0 },
  { x_in: 3.5, y_in: 0, r_inside_in: 0.0625 },
  { x_in: 4, y_in: 0.75, r_inside_in: 0.0625 },
  { x_in: 5, y_in: 0.75, r_inside_in: 0.0625 },
  { x_in: 5.5, y_in: 0, r_inside_in: 0.0625 },
  { x_in: 9, y_in: 0 },
];
const psf = (v: string) => ({ v, u: 'psf' as const });
const CHART: LoadChart = {
  ...SAMPLE_CATALOGUE.charts.find(({ profile }) => profile === 'rib-36')!,
  id: 'own',
  grade: 'SS 80',
  thickness: { v: '0.0239', u: 'in' },
  spans: '3+',
  basis: 'ASD',
  deflection_limit: 'L/180',
  rows: [
    { span: { v: '48', u: 'in' }, inward: psf('40'), outward: psf('-80'), deflection: psf('30') },
    { span: { v: '60', u: 'in' }, inward: psf('20'), outward: psf('-30') },
  ],
};
const withCharts = (...charts: readonly LoadChart[]): Catalogue => ({
  ...SAMPLE_CATALOGUE,
  profiles: SAMPLE_CATALOGUE.profiles.map((each) => ({ ...each, outline: OUTLINE })),
  made: SAMPLE_CATALOGUE.made.filter(({ profile }) => profile === 'rib-36').slice(0, 1),
  charts: [...charts],
});

/** The calculator load-table for the same sheet, supports and limit. */
function tableRow(span_ft: number) {
  const made = calculatorNamed('load-table')!.calculate({
    outline: OUTLINE,
    repeat_in: 9,
    gauges: [24],
    grade: 'SS 80',
    spans: 3,
    span_ft: [span_ft],
    deflection: 180,
    bearing_in: 2,
    fastened: true,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return (made.value['rows'] as Record<string, number>[])[0]!;
}

test('the calculated loads are the load table, strength and deflection apart', () => {
  const sheet = compareLoads(withCharts(CHART), 'rib-36')?.sheets.find(
    ({ chart }) => chart === 'own',
  );
  const [short, long] = sheet!.rows;
  const four = tableRow(4);
  expect(short?.inward.calculated?.v).toBe(four['inward_strength_psf']?.toFixed(1));
  expect(short?.deflection.calculated?.v).toBe(four['inward_deflection_psf']?.toFixed(1));
  expect(short?.outward.calculated?.v).toBe(four['outward_strength_psf']?.toFixed(1));
  // Without a column for deflection the inward load is held against the lesser of both.
  expect(long?.inward.calculated?.v).toBe(tableRow(5)['inward_psf']?.toFixed(1));
  expect(long?.deflection.difference).toBeNull();
});

test('the difference is of the chart, signs of uplift aside, and says which is smaller', () => {
  const [row] = compareLoads(withCharts(CHART), 'rib-36')!.sheets.find(
    ({ chart }) => chart === 'own',
  )!.rows;
  const up = tableRow(4)['outward_strength_psf']!;
  expect(row?.outward.difference).toEqual({ v: ((100 * (up - 80)) / 80).toFixed(1), u: '%' });
  expect(row?.outward.smaller).toBe(up > 80 ? 'chart' : 'calculated');
  expect(row?.outward.limit_state).toBe('bending and shear over a support');
  const exact = { ...CHART, rows: [{ ...CHART.rows[0]!, outward: psf(up.toFixed(1)) }] };
  const same = compareLoads(withCharts(exact), 'rib-36')!.sheets.find(
    ({ chart }) => chart === 'own',
  );
  expect(same?.rows[0]?.outward).toMatchObject({ smaller: 'neither', difference: { v: '0.0' } });
});

test.each([
  ['concealed fasteners', { fastening: 'concealed' as const }, {}, /known by test only/],
  ['no outline', { outline: undefined }, {}, /no outline/],
  ['another metal', {}, { metal: 'aluminum' as const }, /not aluminum/],
  ['another basis', {}, { basis: 'LRFD' as const }, /LRFD basis/],
])('no number beside the chart for %s', (_what, profile, chart, why) => {
  const catalogue = withCharts({ ...CHART, ...chart });
  const changed = {
    ...catalogue,
    profiles: catalogue.profiles.map((each) => ({ ...each, ...profile })),
  } as Catalogue;
  const [sheet] = compareLoads(changed, 'rib-36')!.sheets.filter(({ chart }) => chart === 'own');
  expect(sheet?.not_calculated.join()).toMatch(why);
  expect(JSON.stringify(sheet?.rows)).not.toMatch(/"calculated":\{/);
  expect(sheet?.rows[0]?.inward.chart).toEqual(psf('40'));
});

test('a sheet without a chart is calculated alone, at the spans of the others, and never compared', () => {
  const found = compareLoads(withCharts(CHART), 'rib-36')!;
  const alone = found.sheets.filter(({ chart }) => chart === null);
  expect(alone.map(({ spans }) => spans)).toEqual(['1', '2', '3+']);
  expect(alone[0]?.rows.map(({ span }) => span.v)).toEqual(['48', '60']);
  expect(alone.flatMap(({ rows }) => rows).every(({ inward }) => inward.calculated !== null)).toBe(
    true,
  );
  expect(alone.flatMap(({ rows }) => rows).every(({ inward }) => inward.difference === null)).toBe(
    true,
  );
  expect(found.cautions.join(' ')).toMatch(/never a capacity against uplift of standing seam/);
  expect(found.cautions.join(' ')).toMatch(/only calculated always needs an engineer to sign/);
  expect(LoadComparison.safeParse(found).error?.issues ?? []).toEqual([]);
});

test('an edition without the profile has no comparison', () => {
  expect(compareLoads(SAMPLE_CATALOGUE, 'no-such')).toBeUndefined();
});
