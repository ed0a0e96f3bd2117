// The rows of a CSV file, numbered as a person counts them.

import { parse } from 'csv-parse/sync';
import type { Sheet, SheetFault } from '#jobs';

export type RowsRead =
  | { readonly ok: true; readonly sheets: readonly Sheet[] }
  | { readonly ok: false; readonly faults: readonly SheetFault[] };

const MOST_CELL = 5_000;

export function csvRows(part: Sheet['part'], csv: string): RowsRead {
  try {
    const read = parse(csv, {
      bom: true,
      trim: true,
      relax_column_count: true,
      max_record_size: 40 * MOST_CELL,
    }) as readonly (readonly string[])[];
    const rows = read
      .map((cells, i) => ({ row: i + 1, cells }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
    return { ok: true, sheets: [{ part, rows }] };
  } catch (error) {
    const row = (error as { lines?: number }).lines ?? 1;
    return {
      ok: false,
      faults: [{ sheet: part, row, column: '', message: (error as Error).message }],
    };
  }
}
