// A list as CSV (RFC 4180). Text that a spreadsheet would run as a formula is marked as text; numbers,
// negative ones too, stay numbers.

import { stringify } from 'csv-stringify/sync';
import { checkList, type ListTable } from './list-table.js';

/** UTF-8 text with CRLF line ends. Throws with every cell that is not of its column's kind. */
export function writeCsv(table: ListTable): string {
  checkList(table);
  const head = table.columns.map(({ name }) => name);
  return stringify([head, ...table.rows], {
    record_delimiter: 'windows',
    cast: {
      string: (value, { index }) => ({
        value,
        escape_formulas: table.columns[index]?.kind === 'text',
      }),
    },
  });
}
