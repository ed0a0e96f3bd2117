// Tables as text: one row a line, cells apart by "|", the names of the columns first.

export type Row<C extends string> = Readonly<Record<C, string>>;

/** @throws Error where a line has another number of cells than there are columns */
export function textTable<const C extends string>(
  columns: readonly C[],
  text: string,
): readonly Row<C>[] {
  return text
    .trim()
    .split('\n')
    .map((line) => {
      const cells = line.split('|').map((cell) => cell.trim());
      if (cells.length !== columns.length) {
        throw new Error(`"${line.trim()}" has ${cells.length} cells for ${columns.length} columns`);
      }
      return Object.fromEntries(columns.map((column, i) => [column, cells[i]])) as Row<C>;
    });
}

export const words = (cell: string): readonly string[] =>
  cell.split(' ').filter((each) => each !== '');
