// Catalogue parts from tables: read whole into a draft, or refused whole with sheet, row and column.

import { describe, expect, test } from '@jest/globals';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { importCatalogue } from './import.js';
import { PARTS, type Part, type Sheet } from './parts.js';
import { MOST_ROWS } from './read-lines.js';

const NEXT = { edition: 2, in_force_from: '2026-12-01', summary: 'new price list' };
type Cells = Readonly<Record<string, string>>;

const SOURCE = { document: 'Supplier book', edition: '3', date: '2026-11-01' };
const CHART: Cells = {
  chart: 'rib-26',
  profile: 'rib-36',
  width_in: '36',
  metal: 'steel',
  grade: 'SS 80',
  gauge: '26',
  thickness_in: '0.0187',
  spans: '3+',
  basis: 'ASD',
  deflection_limit: 'L/180',
  attachment_included: 'no',
  interpolation: 'no',
  span_in: '24',
  inward_psf: '120',
  outward_psf: '110',
  deflection_psf: '140',
  ...SOURCE,
};
const MADE: Cells = {
  profile: 'rib-36',
  width_in: '36',
  metal: 'steel',
  thickness_in: '0.0187',
  gauge: '26',
  gauge_table: 'msg',
  grade: 'SS 80',
  metallic_coating: 'AZ50',
  paint_system: 'SMP',
  color_groups: 'white; earth-tone',
  status: 'stock',
  lead_days: '7',
  least_order_squares: '',
  price_usd: '131.50',
  upcharge_usd: '',
};
const TEST: Cells = {
  number: 'T 12/3',
  profile: 'seam-16',
  width_in: '16',
  metal: 'steel',
  thickness_in: '0.0236',
  substrates: 'plywood osb',
  fastener: 'clip-s',
  attachment_spacing_in: '24',
  support_spacing_in: '',
  deck_thickness_in: '0.469',
  outward_psf: '-45',
  inward_psf: '',
  basis: 'ASD',
  safety_factor: '',
  standard: 'some test',
  hail_class: '4',
  expires: '2029-01-01',
  ...SOURCE,
};
const row = SAMPLE_CATALOGUE.made[0];
const PRICE: Cells = {
  profile: row?.profile ?? '',
  width_in: row?.width.v ?? '',
  metal: row?.metal ?? '',
  thickness_in: row?.thickness.v ?? '',
  grade: row?.grade ?? '',
  metallic_coating: row?.metallic_coating ?? '',
  paint_system: row?.paint_system ?? '',
  color_groups: row?.color_groups.join(' ') ?? '',
  price_usd: '999.25',
  upcharge_usd: '',
  lead_days: '11',
};

const sheet = (part: Part, ...lines: readonly Cells[]): Sheet => ({
  part,
  rows: [
    PARTS[part] as readonly string[],
    ...lines.map((line) => PARTS[part].map((column) => line[column] ?? '')),
  ].map((cells, i) => ({ row: i + 1, cells })),
});
const read = (...sheets: readonly Sheet[]) => importCatalogue(sheets, SAMPLE_CATALOGUE, NEXT);
const faults = (...sheets: readonly Sheet[]): readonly string[] => {
  const result = read(...sheets);
  return result.ok
    ? []
    : result.faults.map((each) => `${each.sheet} ${each.row} ${each.column}`.trim());
};
const taken = (...sheets: readonly Sheet[]) => {
  const result = read(...sheets);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result;
};

describe('taken into a draft of the next edition', () => {
  test('a sheet replaces the rows of the profiles it names, and no others', () => {
    const { draft, changes } = taken(sheet('made', MADE), sheet('assemblies', TEST));
    expect(draft).toMatchObject(NEXT);
    expect(draft.made.filter(({ profile }) => profile === 'rib-36')).toHaveLength(1);
    expect(draft.made.filter(({ profile }) => profile !== 'rib-36')).toEqual(
      SAMPLE_CATALOGUE.made.filter(({ profile }) => profile !== 'rib-36'),
    );
    expect(draft.assemblies.find(({ profile }) => profile === 'seam-16')).toMatchObject({
      id: 't-12-3',
      hail_class: 4,
      substrates: ['plywood', 'osb'],
    });
    expect(changes.map(({ part, profile, after }) => [part, profile, after])).toEqual([
      ['made', 'rib-36', 1],
      ['assemblies', 'seam-16', 1],
    ]);
  });

  test('prices change price and lead time of what is made, and leave the rest', () => {
    const { draft } = taken(sheet('prices', PRICE));
    const before = SAMPLE_CATALOGUE.made[0];
    expect(draft.made[0]).toMatchObject({
      ...before,
      price: { v: '999.25', u: 'usd/square' },
      lead_days: 11,
    });
    expect(draft.made.slice(1)).toEqual(SAMPLE_CATALOGUE.made.slice(1));
  });

  test('across grades a thicker sheet that bears less is noted', () => {
    const thicker = {
      ...CHART,
      chart: 'rib-24',
      thickness_in: '0.0236',
      grade: 'SS 33',
      outward_psf: '80',
    };
    expect(taken(sheet('charts', CHART, thicker)).notes).toEqual([
      expect.stringContaining('rib-24'),
    ]);
  });

  test('the catalogue it starts from is not touched', () => {
    const before = JSON.stringify(SAMPLE_CATALOGUE);
    taken(sheet('prices', PRICE), sheet('assemblies', TEST), sheet('charts', CHART));
    expect(JSON.stringify(SAMPLE_CATALOGUE)).toBe(before);
  });
});

describe('refused with sheet, row and column', () => {
  test.each([
    [
      'a profile that is not there',
      [sheet('made', { ...MADE, profile: 'none-such' })],
      ['made 2 profile'],
    ],
    [
      'a width the profile has not',
      [sheet('charts', { ...CHART, width_in: '30' })],
      ['charts 2 width_in'],
    ],
    [
      'a fastener that is not there',
      [sheet('assemblies', { ...TEST, fastener: 'nail' })],
      ['assemblies 2 fastener'],
    ],
    [
      'an ultimate test without its safety factor',
      [sheet('assemblies', { ...TEST, basis: 'ultimate' })],
      ['assemblies 2 safety_factor'],
    ],
    [
      'a color group twice',
      [sheet('made', MADE, { ...MADE, color_groups: 'white' })],
      ['made 3 color_groups'],
    ],
    ['a test number twice', [sheet('assemblies', TEST, TEST)], ['assemblies 3 number']],
    [
      'a price for what is not made',
      [sheet('prices', { ...PRICE, thickness_in: '0.9' })],
      ['prices 2 profile'],
    ],
    ['one price given twice', [sheet('prices', PRICE, PRICE)], ['prices 3 profile']],
    [
      'a price below nothing',
      [sheet('prices', { ...PRICE, price_usd: '-3' })],
      ['prices 2 price_usd'],
    ],
    [
      'a lead time of no days',
      [sheet('made', { ...MADE, lead_days: '1.5' })],
      ['made 2 lead_days'],
    ],
    ['a measure of nothing', [sheet('charts', { ...CHART, span_in: '0' })], ['charts 2 span_in']],
    [
      'a number in another dress',
      [sheet('made', { ...MADE, price_usd: '1e3' })],
      ['made 2 price_usd'],
    ],
    [
      'a date that is none',
      [sheet('assemblies', { ...TEST, expires: '2029-02-30' })],
      ['assemblies 2 expires'],
    ],
    [
      'a color group nobody knows',
      [sheet('made', { ...MADE, color_groups: 'white mauve' })],
      ['made 2 color_groups'],
    ],
    [
      'capacity rising with span',
      [sheet('charts', CHART, { ...CHART, span_in: '30', inward_psf: '121' })],
      ['charts 3 inward_psf'],
    ],
    [
      'capacity falling with thickness in one grade',
      [
        sheet('charts', CHART, {
          ...CHART,
          chart: 'rib-24',
          thickness_in: '0.0236',
          outward_psf: '80',
        }),
      ],
      ['charts 3 outward_psf'],
    ],
    ['a sheet twice', [sheet('made', MADE), sheet('made', MADE)], ['made 1']],
    ['no rows', [sheet('made')], ['made 2']],
    [
      'faults of several sheets at once',
      [sheet('made', { ...MADE, metal: 'tin' }), sheet('prices', { ...PRICE, price_usd: 'free' })],
      ['made 2 metal', 'prices 2 price_usd'],
    ],
  ] as const)('%s', (_, sheets, expected) => {
    expect(faults(...sheets)).toEqual(expect.arrayContaining([...expected]));
  });

  test('too many rows', () => {
    const many = Array.from({ length: MOST_ROWS + 1 }, () => MADE);
    expect(faults(sheet('made', ...many))).toEqual([`made ${MOST_ROWS + 2}`]);
  });

  test('a chart with more spans than any has', () => {
    const spans = Array.from({ length: 501 }, (_, i) => ({ ...CHART, span_in: String(i + 1) }));
    expect(faults(sheet('charts', ...spans))).toEqual(['charts 502 span_in']);
  });
});
