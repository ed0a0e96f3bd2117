// Charts from CSV: read whole, or refused whole with the row and column of every fault.

import { describe, expect, test } from '@jest/globals';
import { CHART_COLUMNS, readCharts } from './chart-csv.js';

const HEADING = CHART_COLUMNS.join(',');
const line = (over: Readonly<Record<string, string>> = {}): string => {
  const values: Record<string, string> = {
    chart: 'c1',
    profile: 'rib',
    width_in: '36',
    metal: 'steel',
    grade: 'SS 80',
    gauge: '26',
    thickness_in: '0.0179',
    spans: '3+',
    basis: 'ASD',
    deflection_limit: 'L/180',
    attachment_included: 'no',
    interpolation: 'no',
    span_in: '24',
    inward_psf: '100',
    outward_psf: '90',
    deflection_psf: '',
    document: 'Chart book',
    edition: '1',
    date: '2026-01-01',
    ...over,
  };
  return CHART_COLUMNS.map((column) => values[column]).join(',');
};
const file = (...lines: readonly string[]) => [HEADING, ...lines].join('\r\n');
const faults = (csv: string) => {
  const read = readCharts(csv);
  return read.ok ? [] : read.faults.map(({ row, column }) => `${row} ${column}`);
};

test('a file is read into charts, one row a span', () => {
  const read = readCharts(
    file(line(), line({ span_in: '30', inward_psf: '64', outward_psf: '58' })),
  );
  expect(read).toMatchObject({
    ok: true,
    charts: [
      {
        id: 'c1',
        thickness: { v: '0.0179', u: 'in' },
        rows: [{ span: { v: '24' } }, { span: { v: '30' } }],
      },
    ],
  });
});

test('a byte order mark and empty lines do no harm', () => {
  expect(faults(`\ufeff${file(line())}\r\n\r\n`)).toEqual([]);
});

describe('refused, with row and column', () => {
  test.each([
    ['an empty file', '', ['1 chart']],
    ['only the heading', HEADING, ['2 ']],
    [
      'capacity that rises with span',
      file(line(), line({ span_in: '30', inward_psf: '101' })),
      ['3 inward_psf'],
    ],
    ['spans that do not rise', file(line(), line()), ['3 span_in']],
    [
      'capacity that falls with thickness',
      file(line(), line({ chart: 'c2', thickness_in: '0.0239', outward_psf: '80' })),
      ['3 outward_psf'],
    ],
    ['two charts of one sheet', file(line(), line({ chart: 'c2' })), ['3 thickness_in']],
    ['a number that is none', file(line({ inward_psf: '1e3' })), ['2 inward_psf']],
    ['an empty cell', file(line({ outward_psf: '' })), ['2 outward_psf']],
    ['a word that is not known', file(line({ metal: 'tin' })), ['2 metal']],
    ['yes or no that is neither', file(line({ interpolation: 'maybe' })), ['2 interpolation']],
    [
      'a chart that says two things of itself',
      file(line(), line({ span_in: '30', grade: 'SS 50 Class 1' })),
      ['3 grade'],
    ],
    ['a line with a cell too many', `${file(line())},x`, ['2 ']],
    ['a column too many', file(line()).replace(HEADING, `${HEADING},note`), ['1 note']],
    ['several faults at once', file(line({ metal: 'tin', date: 'soon' })), ['2 metal', '2 date']],
  ] as const)('%s', (_, csv, expected) => {
    expect(faults(csv)).toEqual(expect.arrayContaining([...expected]));
  });

  test('across grades a thicker sheet may bear less: nothing is said', () => {
    const thicker = line({
      chart: 'c2',
      thickness_in: '0.0239',
      grade: 'SS 33',
      outward_psf: '80',
    });
    expect(faults(file(line(), thicker))).toEqual([]);
  });
});
