// From a sheet to its lines: every column there, each once, none unknown; every needed cell filled;
// measures and prices above zero.

import { mayBeEmpty, PARTS, type Line, type Part, type Sheet, type SheetFault } from './parts.js';

export const MOST_ROWS = 20_000;

export interface LinesRead {
  readonly lines: readonly Line[];
  readonly faults: readonly SheetFault[];
}

export function readLines({ part, rows }: Sheet): LinesRead {
  const [heading, ...rest] = rows;
  const at = (row: number, column: string, message: string): SheetFault => ({
    sheet: part,
    row,
    column,
    message,
  });
  const headingFaults = faultsOfHeading(part, heading?.cells ?? []).map(([column, message]) =>
    at(heading?.row ?? 1, column, message),
  );
  if (headingFaults.length > 0 || !heading) return { lines: [], faults: headingFaults };
  if (rest.length === 0)
    return { lines: [], faults: [at(heading.row + 1, '', 'there are no rows')] };
  if (rest.length > MOST_ROWS) {
    return { lines: [], faults: [at(rest[MOST_ROWS]?.row ?? 0, '', `at most ${MOST_ROWS} rows`)] };
  }
  const faults = rest.flatMap(({ row, cells }) =>
    cells.length > heading.cells.length
      ? [at(row, '', `has ${cells.length} cells, the heading ${heading.cells.length}`)]
      : faultsOfCells(part, lineOf(heading.cells, row, cells)).map(([column, message]) =>
          at(row, column, message),
        ),
  );
  return { lines: rest.map(({ row, cells }) => lineOf(heading.cells, row, cells)), faults };
}

type Fault = readonly [column: string, message: string];

function faultsOfHeading(part: Part, heading: readonly string[]): readonly Fault[] {
  const columns: readonly string[] = PARTS[part];
  return [
    ...columns
      .filter((each) => !heading.includes(each))
      .map((each): Fault => [each, 'this column is missing']),
    ...heading
      .filter((each) => !columns.includes(each))
      .map((each): Fault => [each, 'this column is not known']),
    ...heading
      .filter((each, i) => heading.indexOf(each) !== i)
      .map((each): Fault => [each, 'stands twice']),
  ];
}

const MEASURE = /_(in|ft|lb|psf|squares)$|^price_usd$|^safety_factor$/;

function faultsOfCells(part: Part, { cells }: Line): readonly Fault[] {
  return PARTS[part].flatMap((column): readonly Fault[] => {
    const cell = cells[column] ?? '';
    if (cell === '') return mayBeEmpty(part, column) ? [] : [[column, 'is empty']];
    // Uplift is written with a minus by some and without by others: its size counts.
    const least = column === 'outward_psf' ? Math.abs(Number(cell)) : Number(cell);
    return MEASURE.test(column) && least <= 0 ? [[column, `"${cell}" must be more than 0`]] : [];
  });
}

const lineOf = (heading: readonly string[], row: number, cells: readonly string[]): Line => ({
  row,
  cells: Object.fromEntries(heading.map((column, i) => [column, cells[i] ?? ''])),
});
