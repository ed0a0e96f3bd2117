// The rows of a workbook's sheets, as text: numbers and dates as they stand, no formulas.

import ExcelJS from 'exceljs';
import { MOST_ROWS, PART_NAMES, PARTS, type Part, type Sheet, type SheetFault } from '#jobs';
import type { RowsRead } from './csv-rows.js';
import { zipFault } from './zip-limits.js';

/** What a sheet may hold besides cells: none of it is read, and some of it is costly to read. */
const NOT_READ = [
  'mergeCells',
  'dataValidations',
  'conditionalFormatting',
  'hyperlinks',
  'drawing',
  'legacyDrawing',
  'picture',
  'tableParts',
  'extLst',
  'autoFilter',
  'sheetProtection',
  'rowBreaks',
  'colBreaks',
];
const MOST_COLUMNS = 40;

export async function xlsxRows(bytes: Buffer): Promise<RowsRead> {
  const fault = zipFault(bytes);
  if (fault !== undefined) return refuse({ sheet: '', row: 0, column: '', message: fault });
  const book = new ExcelJS.Workbook();
  try {
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer, { ignoreNodes: NOT_READ });
  } catch {
    return refuse({
      sheet: '',
      row: 0,
      column: '',
      message: 'This is not a workbook that can be read.',
    });
  }
  const unknown = book.worksheets.filter(({ name }) => !isPart(name));
  if (unknown.length > 0 || book.worksheets.length === 0) {
    const names = PART_NAMES.join(', ');
    const what = unknown.map(({ name }) => ({
      sheet: name,
      row: 0,
      column: '',
      message: `sheets are named ${names}`,
    }));
    return {
      ok: false,
      faults:
        what.length > 0 ? what : [{ sheet: '', row: 0, column: '', message: 'there is no sheet' }],
    };
  }
  const read = book.worksheets.map((sheet) => rowsOf(sheet, sheet.name as Part));
  const faults = read.flatMap((each) => each.faults);
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, sheets: read.map(({ sheet }) => sheet) };
}

const refuse = (...faults: readonly SheetFault[]): RowsRead => ({ ok: false, faults });
const isPart = (name: string): name is Part => (PART_NAMES as readonly string[]).includes(name);

function rowsOf(
  sheet: ExcelJS.Worksheet,
  part: Part,
): { readonly sheet: Sheet; readonly faults: readonly SheetFault[] } {
  const rows: Sheet['rows'][number][] = [];
  const faults: SheetFault[] = [];
  const heading: readonly string[] = PARTS[part];
  sheet.eachRow({ includeEmpty: false }, (row, number) => {
    if (rows.length > MOST_ROWS + 1) return;
    const cells: string[] = [];
    row.eachCell({ includeEmpty: false }, (cell, column) => {
      const text = column > MOST_COLUMNS ? undefined : textOf(cell.value);
      if (column > MOST_COLUMNS)
        faults.push({
          sheet: part,
          row: number,
          column: '',
          message: `has more than ${MOST_COLUMNS} cells`,
        });
      else if (text === undefined)
        faults.push({
          sheet: part,
          row: number,
          column: rows[0]?.cells[column - 1] ?? heading[column - 1] ?? '',
          message: 'is a formula or no plain value: write the value itself',
        });
      else cells[column - 1] = text;
    });
    const filled = Array.from(cells, (cell = '') => cell);
    if (filled.some((cell) => cell !== '')) rows.push({ row: number, cells: filled });
  });
  return { sheet: { part, rows }, faults };
}

/** As a person reads the cell; undefined for a formula, an error or a link. */
function textOf(value: ExcelJS.CellValue): string | undefined {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string') return value.trim();
  if (typeof value === 'number') return plainNumber(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value instanceof Date)
    return Number.isNaN(value.getTime()) ? undefined : value.toISOString().slice(0, 10);
  if ('richText' in value)
    return value.richText
      .map(({ text }) => text)
      .join('')
      .trim();
  return undefined;
}

/** Without the noise of binary fractions: at most 15 figures and six decimals, as sheets show them. */
const plainNumber = (value: number): string =>
  String(Number(Number(value.toPrecision(15)).toFixed(6)));
