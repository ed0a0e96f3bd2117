// A list as it goes to a spreadsheet: named columns, each of one kind.

export interface ListTable {
  readonly name: string;
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface ListColumn {
  readonly name: string;
  /** A number is decimal text and keeps its decimals; a day is "2026-02-14". */
  readonly kind: 'text' | 'number' | 'day';
}

export type Cell = string | null;

const SHAPES: Readonly<Record<ListColumn['kind'], RegExp>> = {
  text: /^[^]*$/,
  number: /^-?\d+(\.\d+)?$/,
  day: /^\d{4}-\d{2}-\d{2}$/,
};

/** Every cell that is not of its column's kind, and every row that is too long or short, in words. */
export function listFaults({ columns, rows }: ListTable): readonly string[] {
  return rows.flatMap((row, i) => {
    if (row.length !== columns.length)
      return [`row ${i + 1} has ${row.length} cells, not ${columns.length}`];
    return columns.flatMap(({ name, kind }, j) => {
      const cell = row[j] ?? null;
      return cell === null || SHAPES[kind].test(cell)
        ? []
        : [`row ${i + 1}, ${name}: "${cell}" is not a ${kind}`];
    });
  });
}

export function checkList(table: ListTable): void {
  const faults = listFaults(table);
  if (faults.length > 0) throw new Error(faults.join('; '));
}
