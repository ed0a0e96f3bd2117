// A list as an XLSX workbook: one sheet, heads frozen, and the same bytes every time.

import ExcelJS from 'exceljs';
import { checkList, type ListColumn, type ListTable } from './list-table.js';

/** `at` is the list's own moment, RFC 3339: the date of the file. Throws as `writeCsv` does. */
export async function writeXlsx(table: ListTable, at: string): Promise<Uint8Array> {
  checkList(table);
  const book = new ExcelJS.Workbook();
  book.created = new Date(at);
  book.modified = book.created;
  book.creator = 'Gauge Ledger';
  book.lastModifiedBy = 'Gauge Ledger';
  const sheet = book.addWorksheet(sheetName(table.name), {
    views: [{ state: 'frozen', ySplit: 1 }],
  });
  sheet.columns = table.columns.map((column, i) => ({
    header: column.name,
    width: widthOf(table, i),
    style: { numFmt: formatOf(table, i) },
  }));
  sheet.getRow(1).font = { bold: true };
  for (const row of table.rows) {
    sheet.addRow(
      row.map((cell, i) =>
        cell === null ? null : valueOf(cell, table.columns[i]?.kind ?? 'text'),
      ),
    );
  }
  return withFixedTimes(Buffer.from(await book.xlsx.writeBuffer()));
}

/** Text is written as text and never as a formula; days are kept as their own words. */
const valueOf = (cell: string, kind: ListColumn['kind']): string | number =>
  kind === 'number' ? Number(cell) : cell;

const sheetName = (name: string): string =>
  name.replaceAll(/[*?:\\/[\]]/g, ' ').slice(0, 31) || 'List';

function formatOf({ columns, rows }: ListTable, i: number): string {
  if (columns[i]?.kind !== 'number') return '@';
  const decimals = Math.max(0, ...rows.map((row) => row[i]?.split('.')[1]?.length ?? 0));
  return decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`;
}

const widthOf = ({ columns, rows }: ListTable, i: number): number =>
  Math.min(
    60,
    Math.max(columns[i]?.name.length ?? 0, ...rows.map((row) => row[i]?.length ?? 0)) + 2,
  );

/** MS-DOS date and time of 1 January 1980, 00:00: where ZIP time begins. */
const EPOCH_DATE = 0x21;

/** Sets the time of every entry of a ZIP archive, in its directory and beside its bytes, to the epoch. */
function withFixedTimes(zip: Buffer): Uint8Array {
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  let at = zip.readUInt32LE(end + 16);
  for (let i = 0; i < zip.readUInt16LE(end + 10); i++) {
    setTime(zip, at + 12);
    setTime(zip, zip.readUInt32LE(at + 42) + 10);
    at += 46 + zip.readUInt16LE(at + 28) + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return new Uint8Array(zip);
}

function setTime(zip: Buffer, at: number): void {
  zip.writeUInt16LE(0, at);
  zip.writeUInt16LE(EPOCH_DATE, at + 2);
}
