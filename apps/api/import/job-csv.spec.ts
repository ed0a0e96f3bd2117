// A file of jobs: every bad row is named by row and column, and good rows become commands.

import { describe, expect, test } from '@jest/globals';
import { MOST_ROWS, readJobCsv } from './job-csv.js';

let count = 0;
const newId = () => `00000000-0000-7000-8000-${String(++count).padStart(12, '0')}`;
const read = (...lines: readonly string[]) => readJobCsv(lines.join('\r\n'), newId);
const HEAD = 'number,name,customer,site,due,jurisdiction,surfaces';

test('a good row opens a job with its surfaces', () => {
  const { jobs, faults } = read(
    HEAD,
    '2026-0001,"Barn, red",A. Customer,Hill site,2026-05-01,KS,South: roof; North wall: wall',
  );
  expect(faults).toEqual([]);
  expect(jobs[0]).toMatchObject({
    row: 2,
    customer: { details: { name: 'A. Customer' } },
    site: { details: { name: 'Hill site' } },
    command: {
      number: '2026-0001',
      name: 'Barn, red',
      due: '2026-05-01',
      buildings: [{ id: 'b1', name: 'Main building' }],
      surfaces: [
        { id: 's1', name: 'South', kind: 'roof' },
        { id: 's2', name: 'North wall', kind: 'wall' },
      ],
    },
  });
});

describe('faults', () => {
  test('every bad row is named, with its column, all at once', () => {
    const { faults } = read(
      HEAD,
      ',Barn,A,Hill,,,',
      '2026-0002,Barn,,Hill,soon,Kansas,',
      '2026-0003,Barn,A,Hill,,,South: lawn',
      '2026-0003,Barn,A,Hill,,,',
      '2026-0003,Shed,B,Dale,,,',
    );
    expect(faults.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '2 number',
      '3 customer',
      '3 due',
      '3 jurisdiction',
      '4 surfaces',
      '6 number',
    ]);
    expect(faults.at(-1)?.message).toBe('2026-0003 stands in row 5 already');
  });

  test.each([
    ['a column that is missing', ['number,name,site', '1,2,3'], ['1 customer']],
    ['a column that is not known', [`${HEAD},colour`, 'a'], ['1 colour']],
    ['a head alone', [HEAD], ['1 ']],
    ['a quote that never ends', [HEAD, '"a'], ['0 ']],
    ['nothing', [''], ['1 number', '1 name', '1 customer', '1 site', '1 ']],
  ] as const)('%s', (_, lines, expected) => {
    const { jobs, faults } = read(...lines);
    expect(faults.map(({ row, column }) => `${row} ${column}`)).toEqual(expected);
    expect(jobs).toEqual([]);
  });

  test('a row with more cells than the head has columns', () => {
    expect(read(HEAD, '2026-0001,Barn,A,Hill,,,,extra').faults).toEqual([
      { row: 2, column: '', message: 'has 8 cells under 7 columns' },
    ]);
  });

  test(`more than ${MOST_ROWS} jobs`, () => {
    const rows = Array.from(
      { length: MOST_ROWS + 1 },
      (_, i) => `2026-${String(i).padStart(4, '0')},Barn,A,Hill,,,`,
    );
    expect(read(HEAD, ...rows).faults).toMatchObject([{ row: MOST_ROWS + 2 }]);
  });
});
