// Profiles and fasteners from tables, and the difference between two editions.

import { describe, expect, test } from '@jest/globals';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { catalogueDifference } from './difference.js';
import { importCatalogue } from './import.js';
import { PARTS, type Part, type Sheet } from './parts.js';

type Cells = Readonly<Record<string, string>>;
const NEXT = { edition: 2, in_force_from: '2026-12-01', summary: 'a new profile' };
const SOURCE = { document: 'Supplier book', edition: '3', date: '2026-11-01' };
const PROFILE: Cells = {
  profile: 'rib-30',
  name: 'Ribbed 30 (invented)',
  family: 'ribbed',
  fastening: 'exposed',
  seam: 'screw-down',
  structural: 'yes',
  least_slope_per_12: '1',
  widths_in: '30 36',
  rib_height_in: '0.75',
  flat_width_in: '7',
  striated: 'no',
  longest_piece_ft: '40',
  outline: '0 0; 1 0.75 0.125; 2 0.75 0.125; 3 0',
};
const SCREW: Cells = {
  fastener: 'screw-16',
  name: 'Screw #16 (invented)',
  kind: 'screw',
  metal: 'stainless',
  diameter_in: '0.25',
};
const TESTED: Cells = {
  fastener: 'screw-16',
  into: 'purlins',
  least_thickness_in: '0.0598',
  allowable_lb: '310',
  ...SOURCE,
};
const MADE: Cells = {
  profile: 'rib-30',
  width_in: '30',
  metal: 'steel',
  thickness_in: '0.0239',
  gauge: '24',
  gauge_table: 'msg',
  grade: 'SS 50',
  metallic_coating: 'AZ50',
  paint_system: 'PVDF',
  color_groups: 'white',
  status: 'stock',
  lead_days: '5',
  price_usd: '201.00',
};

const sheet = (part: Part, ...lines: readonly Cells[]): Sheet => ({
  part,
  rows: [
    PARTS[part] as readonly string[],
    ...lines.map((line) => PARTS[part].map((column) => line[column] ?? '')),
  ].map((cells, i) => ({ row: i + 1, cells })),
});
const read = (...sheets: readonly Sheet[]) => importCatalogue(sheets, SAMPLE_CATALOGUE, NEXT);
const taken = (...sheets: readonly Sheet[]) => {
  const result = read(...sheets);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.draft;
};
const faults = (...sheets: readonly Sheet[]): readonly string[] => {
  const result = read(...sheets);
  return result.ok ? [] : result.faults.map((each) => `${each.sheet} ${each.row} ${each.column}`);
};

describe('taken into a draft', () => {
  test('a profile with its outline, what is made of it, and a fastener with its test, in one file', () => {
    const draft = taken(
      sheet('profiles', PROFILE),
      sheet('made', MADE),
      sheet('fasteners', SCREW),
      sheet('fastener-tests', TESTED),
    );
    expect(draft.profiles.at(-1)).toMatchObject({
      id: 'rib-30',
      structural: true,
      widths: [
        { v: '30', u: 'in' },
        { v: '36', u: 'in' },
      ],
      outline: [
        { x_in: 0, y_in: 0 },
        { x_in: 1, y_in: 0.75, r_inside_in: 0.125 },
        { x_in: 2, y_in: 0.75, r_inside_in: 0.125 },
        { x_in: 3, y_in: 0 },
      ],
    });
    expect(draft.fasteners.at(-1)).toMatchObject({
      id: 'screw-16',
      tested: [{ into: 'purlins', allowable: { v: '310', u: 'lb' }, source: SOURCE }],
    });
    expect(draft.profiles.slice(0, -1)).toEqual(SAMPLE_CATALOGUE.profiles);
  });

  test('a fastener brought without tests keeps those it has', () => {
    const tested = taken(sheet('fasteners', SCREW), sheet('fastener-tests', TESTED));
    const again = importCatalogue([sheet('fasteners', SCREW)], tested, { ...NEXT, edition: 3 });
    expect(again.ok && again.draft.fasteners.at(-1)?.tested).toHaveLength(1);
  });
});

describe('refused, with sheet, row and column', () => {
  test.each([
    [
      'a word that is none',
      [sheet('profiles', { ...PROFILE, family: 'wavy' })],
      ['profiles 2 family'],
    ],
    [
      'an outline with a letter, and a slope in words',
      [sheet('profiles', { ...PROFILE, outline: '0 0; a 1', least_slope_per_12: 'low' })],
      ['profiles 2 least_slope_per_12', 'profiles 2 outline'],
    ],
    ['a profile that stands twice', [sheet('profiles', PROFILE, PROFILE)], ['profiles 3 profile']],
    [
      'a width taken away that is still made',
      [sheet('profiles', { ...PROFILE, profile: 'rib-36', widths_in: '30' })],
      ['profiles 2 widths_in'],
    ],
    [
      'a test of a fastener that is not there',
      [sheet('fastener-tests', TESTED)],
      ['fastener-tests 2 fastener'],
    ],
    [
      'a load of nothing, a clip that neither is fixed nor floats',
      [
        sheet('fasteners', { ...SCREW, kind: 'clip', clip_movement: 'loose' }),
        sheet('fastener-tests', { ...TESTED, fastener: 'screw-99', allowable_lb: 'many' }),
      ],
      ['fasteners 2 clip_movement', 'fastener-tests 2 allowable_lb', 'fastener-tests 2 fastener'],
    ],
  ] as const)('%s', (_, sheets, expected) => {
    expect(faults(...sheets)).toEqual(expect.arrayContaining([...expected]));
  });
});

describe('colors with their terms', () => {
  const TERM: Cells = {
    metal: 'steel',
    metallic_coating: 'AZ50',
    paint_system: 'PVDF',
    color_group: 'print',
    finish_years: '30',
    fade_limit: '5',
    fade_scale: 'Hunter',
    fade_years: '30',
    document: 'Finish terms (invented)',
  };

  test('a row joins, and takes the place of the same combination', () => {
    const first = taken(sheet('terms', TERM));
    expect(first.terms).toHaveLength(SAMPLE_CATALOGUE.terms.length + 1);
    expect(first.terms.at(-1)).toMatchObject({ fade: { limit: '5', scale: 'Hunter', years: 30 } });
    const again = importCatalogue([sheet('terms', { ...TERM, finish_years: '40' })], first, {
      ...NEXT,
      edition: 3,
    });
    expect(again.ok && again.draft.terms.at(-1)?.finish_years).toBe(40);
    expect(again.ok && again.draft.terms).toHaveLength(first.terms.length);
  });

  test('half a fade term, a term that stands twice', () => {
    expect(faults(sheet('terms', { ...TERM, fade_scale: '' }))).toEqual(['terms 2 fade_scale']);
    expect(faults(sheet('terms', TERM, TERM))).toEqual(['terms 3 color_group']);
  });
});

test('a cell is spoken of in the words of the table', () => {
  const wrong = read(sheet('profiles', { ...PROFILE, seam: 'glued', structural: 'perhaps' }));
  expect(wrong.ok ? [] : wrong.faults.map(({ message }) => message)).toEqual([
    'must be one of: snap-lock, mechanical, screw-down',
    'must be yes or no',
  ]);
});

describe('the difference to the edition before', () => {
  test('nothing differs from itself; a row that joins and a cell that changes are named', () => {
    expect(catalogueDifference(SAMPLE_CATALOGUE, SAMPLE_CATALOGUE)).toEqual([]);
    const [first] = SAMPLE_CATALOGUE.profiles;
    const after = {
      ...taken(sheet('fasteners', SCREW)),
      profiles: [
        { ...first!, least_slope: { v: '2', u: 'per-12' as const } },
        ...SAMPLE_CATALOGUE.profiles.slice(1),
      ],
    };
    expect(catalogueDifference(SAMPLE_CATALOGUE, after)).toEqual([
      {
        part: 'profiles',
        row: 'rib-36',
        column: 'least slope',
        was: '1 per-12',
        becomes: '2 per-12',
      },
      {
        part: 'fasteners',
        row: 'screw-16',
        column: '',
        was: null,
        becomes:
          'id screw-16, name Screw #16 (invented), kind screw, metal stainless, diameter 0.25 in',
      },
    ]);
  });

  test('one load of one span is one difference', () => {
    const [chart, ...charts] = SAMPLE_CATALOGUE.charts;
    const [row, ...rows] = chart!.rows;
    const changed = {
      ...chart!,
      rows: [{ ...row!, inward: { v: '1', u: 'psf' as const } }, ...rows],
    };
    const found = catalogueDifference(SAMPLE_CATALOGUE, {
      ...SAMPLE_CATALOGUE,
      charts: [changed, ...charts],
    });
    expect(found).toEqual([
      {
        part: 'charts',
        row: `${chart!.id}, span ${row!.span.v} in`,
        column: 'inward',
        was: `${row!.inward.v} psf`,
        becomes: '1 psf',
      },
    ]);
  });
});
