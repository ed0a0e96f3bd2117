// Lists as CSV and XLSX: what is text stays text, what is a number stays a number, the same bytes.

import { describe, expect, test } from '@jest/globals';
import ExcelJS from 'exceljs';
import { parse } from 'csv-parse/sync';
import { listFaults, writeCsv, writeXlsx, type ListTable } from './index.js';

const TABLE: ListTable = {
  name: 'Cut list: south/west [1]',
  columns: [
    { name: 'Piece', kind: 'text' },
    { name: 'Uplift, psf', kind: 'number' },
    { name: 'Delivery', kind: 'day' },
  ],
  rows: [
    ['=HYPERLINK("http://x.example")', '-36.40', '2026-03-20'],
    ['plain, with a comma and "quotes"', '12', null],
    ['+1', '0.5', '2026-03-21'],
    ['@sum', null, null],
    ['line\nbreak', '-0.25', null],
  ],
};

describe('CSV', () => {
  const rows = parse(writeCsv(TABLE)) as string[][];

  test('formulas in text are marked as text, negative numbers stay numbers', () => {
    expect(rows[1]).toEqual([`'=HYPERLINK("http://x.example")`, '-36.40', '2026-03-20']);
    expect(rows[3]?.[0]).toBe(`'+1`);
    expect(rows[4]).toEqual([`'@sum`, '', '']);
  });
  test('commas, quotes and line breaks survive; lines end as RFC 4180 says', () => {
    expect(rows[2]?.[0]).toBe('plain, with a comma and "quotes"');
    expect(rows[5]?.[0]).toBe('line\nbreak');
    expect(writeCsv(TABLE).startsWith('Piece,"Uplift, psf",Delivery\r\n')).toBe(true);
  });
});

describe('XLSX', () => {
  test('numbers are numbers with their decimals, text is never a formula', async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(Buffer.from(await writeXlsx(TABLE, '2026-03-06T15:00:00Z')) as never);
    const sheet = book.worksheets[0]!;
    expect(sheet.name).toBe('Cut list  south west  1 ');
    expect(sheet.getCell('A2').type).toBe(ExcelJS.ValueType.String);
    expect(sheet.getCell('A2').value).toBe('=HYPERLINK("http://x.example")');
    expect(sheet.getCell('B2').value).toBe(-36.4);
    expect(sheet.getCell('B2').numFmt).toBe('0.00');
    expect(sheet.getCell('C3').value).toBeNull();
  });

  test('the same bytes at another hour', async () => {
    const first = await writeXlsx(TABLE, '2026-03-06T15:00:00Z');
    await new Promise((resolve) => setTimeout(resolve, 2100));
    expect(Buffer.compare(first, await writeXlsx(TABLE, '2026-03-06T15:00:00Z'))).toBe(0);
  });
});

test('a cell that is not of its column, and a short row, are named; nothing is written', async () => {
  const wrong: ListTable = { ...TABLE, rows: [['a', '1,5', 'soon'], ['b']] };
  expect(listFaults(wrong)).toEqual([
    'row 1, Uplift, psf: "1,5" is not a number',
    'row 1, Delivery: "soon" is not a day',
    'row 2 has 1 cells, not 3',
  ]);
  expect(() => writeCsv(wrong)).toThrow('row 2 has 1 cells');
  await expect(writeXlsx(wrong, '2026-03-06T15:00:00Z')).rejects.toThrow('row 2 has 1 cells');
});
