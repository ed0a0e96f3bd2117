// The second opinion from an outline: it is the load table's own number, and it is given for
// through-fastened steel alone.

import { expect, test } from '@jest/globals';
import { beamCoefficients, calculatorNamed, feet, governing, spanLimits } from '#engineering';
import type { Profile } from '../contract/catalogue.js';
import type { Attachment } from '../contract/commands.js';
import { contextOf } from '../given.js';
import { BARN, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { questionOf } from '../stages/gauge.js';
import { CALCULATED_SOURCE, calculatedStrength } from './calculated-panel.js';
import { evaluate } from './evaluate.js';

/** One repeat of an invented rib, 3/4 in high at 9 in. */
const OUTLINE = [
  { x_in: 0, y_in: 0 },
  { x_in: 3.5, y_in: 0, r_inside_in: 0.0625 },
  { x_in: 4, y_in: 0.75, r_inside_in: 0.0625 },
  { x_in: 5, y_in: 0.75, r_inside_in: 0.0625 },
  { x_in: 5.5, y_in: 0, r_inside_in: 0.0625 },
  { x_in: 9, y_in: 0 },
];
const PROFILE: Profile = {
  ...SAMPLE_CATALOGUE.profiles[0]!,
  fastening: 'exposed',
  outline: OUTLINE,
};
const SHEET = { metal: 'steel', thickness_in: 0.0239, grade: 'SS 80' } as const;

test('gives the loads of the calculator load-table for the same sheet', () => {
  const made = calculatorNamed('load-table')?.calculate({
    outline: OUTLINE,
    repeat_in: 9,
    gauges: [24],
    grade: 'SS 80',
    spans: 3,
    span_ft: [4],
    deflection: 180,
    bearing_in: 2,
    fastened: true,
  });
  if (!made?.ok) throw new Error(JSON.stringify(made));
  const [row] = made.value['rows'] as Record<string, number>[];
  const strength = calculatedStrength(PROFILE, 36, SHEET);
  if (!strength.ok) throw new Error(JSON.stringify(strength.faults));
  const load = (direction: 'inward' | 'outward'): number =>
    governing(spanLimits(strength.value, beamCoefficients(3), feet(4), direction, 180)).load;
  expect(load('inward')).toBe(row?.['inward_psf']);
  expect(load('outward')).toBe(row?.['outward_psf']);
});

test.each([
  ['concealed fasteners', { ...PROFILE, fastening: 'concealed' as const }, 36, SHEET, /test only/],
  ['another metal', PROFILE, 36, { ...SHEET, metal: 'aluminum' as const }, /not aluminum/],
  ['no outline', { ...PROFILE, outline: undefined }, 36, SHEET, /no outline/],
  ['a width the outline does not repeat into', PROFILE, 34, SHEET, /does not repeat into 34 in/],
  ['an unknown grade', PROFILE, 36, { ...SHEET, grade: 'A' }, /no grade known here/],
])('gives no number for %s', (_what, profile, width, sheet, why) => {
  const made = calculatedStrength(profile as Profile, width, sheet);
  expect(made.ok ? [] : made.faults.map(({ message }) => message)).toEqual([
    expect.stringMatching(why),
  ]);
});

test('in an evaluation without chart or test it counts, and always asks for sign-off', () => {
  const { job } = playUpTo(BARN, 'substrate');
  const surface = job.surfaces['s1']!;
  const { attachment } = BARN.gauge as { attachment: Attachment };
  const asked = questionOf(job, surface, attachment, contextOf());
  if (!('profile' in asked)) throw new Error('the barn is refused');
  const profile = { ...asked.profile, outline: OUTLINE };
  const catalogue = { ...asked.catalogue, charts: [], assemblies: [] };
  const made = evaluate({ ...asked, profile, catalogue }, []);
  const panels = made.options.flatMap(({ zones }) => zones.flatMap(({ panel }) => panel));
  expect(panels.length).toBeGreaterThan(0);
  expect(new Set(panels.map(({ source }) => source))).toEqual(new Set([CALCULATED_SOURCE]));
  expect(panels.every(({ calculated }) => calculated)).toBe(true);
  expect(made.sign_off_required.join(' ')).toMatch(/capacity is only calculated/);
});

test('a sheet that has a chart is never carried past its rows by calculation', () => {
  const { job } = playUpTo(BARN, 'substrate');
  const { attachment } = BARN.gauge as { attachment: Attachment };
  const asked = questionOf(job, job.surfaces['s1']!, attachment, contextOf());
  if (!('profile' in asked)) throw new Error('the barn is refused');
  const profile = { ...asked.profile, outline: OUTLINE };
  const spacings = [{ v: '200' }];
  const made = evaluate({ ...asked, profile, spacings }, []);
  const zones = made.options.flatMap((option) => option.zones);
  expect(zones.flatMap(({ panel }) => panel)).toEqual([]);
  expect(
    zones.every(({ missing }) => /200 in has no row|no load chart for 1 span/.test(missing.join())),
  ).toBe(true);
});
