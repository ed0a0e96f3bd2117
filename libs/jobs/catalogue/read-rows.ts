// Lines into rows of the catalogue, each with the row of the file it came from; what the contract
// refuses is named by row and column.

import type { z } from 'zod';
import { LoadChart, MadeRow, TestedAssembly } from '../contract/catalogue.js';
import { PARTS, type Line, type Part, type SheetFault } from './parts.js';

export interface Placed<T> {
  readonly item: T;
  /** Of the file; a chart has one for each of its spans. */
  readonly rows: readonly number[];
}
export interface RowsRead<T> {
  readonly items: readonly Placed<T>[];
  readonly faults: readonly SheetFault[];
}

export const amount = (v: string | undefined, u: string) => ({ v, u });
export const list = (cell = ''): readonly string[] =>
  cell.split(/[;\s]+/).filter((each) => each !== '');
export const yes = (cell = ''): unknown => (cell === 'yes' ? true : cell === 'no' ? false : cell);
export const whole = (cell = ''): unknown => (/^\d{1,6}$/.test(cell) ? Number(cell) : cell);
export const given = (cell: string | undefined, what: (cell: string) => object): object =>
  cell ? what(cell) : {};

export const madeRows = (lines: readonly Line[]): RowsRead<MadeRow> =>
  oneByOne('made', lines, MadeRow, ({ cells }) => ({
    profile: cells['profile'],
    width: amount(cells['width_in'], 'in'),
    metal: cells['metal'],
    thickness: amount(cells['thickness_in'], 'in'),
    ...given(cells['gauge'], (gauge) => ({ gauge })),
    ...given(cells['gauge_table'], (gauge_table) => ({ gauge_table })),
    grade: cells['grade'],
    metallic_coating: cells['metallic_coating'],
    paint_system: cells['paint_system'],
    color_groups: list(cells['color_groups']),
    status: cells['status'],
    lead_days: whole(cells['lead_days']),
    ...given(cells['least_order_squares'], (v) => ({ least_order: amount(v, 'squares') })),
    price: amount(cells['price_usd'], 'usd/square'),
    ...given(cells['upcharge_usd'], (v) => ({ upcharge: amount(v, 'usd/square') })),
  }));

export const assemblyRows = (lines: readonly Line[]): RowsRead<TestedAssembly> =>
  oneByOne('assemblies', lines, TestedAssembly, ({ cells }) => ({
    id: (cells['number'] ?? '')
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-|-$/g, ''),
    number: cells['number'],
    profile: cells['profile'],
    width: amount(cells['width_in'], 'in'),
    metal: cells['metal'],
    thickness: amount(cells['thickness_in'], 'in'),
    substrates: list(cells['substrates']),
    fastener: cells['fastener'],
    attachment_spacing: amount(cells['attachment_spacing_in'], 'in'),
    ...given(cells['support_spacing_in'], (v) => ({ support_spacing: amount(v, 'in') })),
    ...given(cells['deck_thickness_in'], (v) => ({ deck_thickness: amount(v, 'in') })),
    outward: amount(cells['outward_psf'], 'psf'),
    ...given(cells['inward_psf'], (v) => ({ inward: amount(v, 'psf') })),
    basis: cells['basis'],
    ...given(cells['safety_factor'], (safety_factor) => ({ safety_factor })),
    standard: cells['standard'],
    ...given(cells['hail_class'], (v) => ({ hail_class: whole(v) })),
    ...given(cells['expires'], (expires) => ({ expires })),
    source: sourceOf(cells),
  }));

/** The first line of a chart says what it is; the others must say the same. */
export function chartRows(lines: readonly Line[]): RowsRead<LoadChart> {
  const charts = new Map<string, Line[]>();
  for (const line of lines) {
    const id = line.cells['chart'] ?? '';
    const own = charts.get(id);
    if (own) own.push(line);
    else charts.set(id, [line]);
  }
  const read = [...charts.values()].map((own) => {
    const beyond = own[MOST_SPANS];
    if (beyond) {
      const message = `a chart has at most ${MOST_SPANS} spans`;
      return {
        faults: [{ sheet: 'charts', row: beyond.row, column: 'span_in', message }],
        placed: undefined,
      };
    }
    const result = LoadChart.safeParse(chartOf(own));
    const faults = [
      ...differing(own),
      ...faultsOf(
        'charts',
        result.error,
        (path) => own[path[0] === 'rows' ? Number(path[1]) : 0]?.row ?? 0,
      ),
    ];
    return {
      faults,
      placed: result.data && { item: result.data, rows: own.map(({ row }) => row) },
    };
  });
  return {
    items: read.flatMap(({ placed }) => (placed ? [placed] : [])),
    faults: read.flatMap(({ faults }) => faults),
  };
}

const MOST_SPANS = 500;
const BY_SPAN: readonly string[] = ['span_in', 'inward_psf', 'outward_psf', 'deflection_psf'];

function differing(own: readonly Line[]): readonly SheetFault[] {
  const first = own[0]?.cells;
  return own.flatMap(({ row, cells }) =>
    PARTS.charts
      .filter((column) => !BY_SPAN.includes(column) && cells[column] !== first?.[column])
      .map((column) => ({
        sheet: 'charts',
        row,
        column,
        message: `differs from the chart's first row ("${first?.[column] ?? ''}")`,
      })),
  );
}

function chartOf(own: readonly Line[]): unknown {
  const first = own[0]?.cells ?? {};
  return {
    id: first['chart'],
    profile: first['profile'],
    width: amount(first['width_in'], 'in'),
    metal: first['metal'],
    grade: first['grade'],
    ...given(first['gauge'], (gauge) => ({ gauge })),
    thickness: amount(first['thickness_in'], 'in'),
    spans: first['spans'],
    basis: first['basis'],
    deflection_limit: first['deflection_limit'],
    attachment_included: yes(first['attachment_included']),
    interpolation: yes(first['interpolation']),
    rows: own.map(({ cells }) => ({
      span: amount(cells['span_in'], 'in'),
      inward: amount(cells['inward_psf'], 'psf'),
      outward: amount(cells['outward_psf'], 'psf'),
      ...given(cells['deflection_psf'], (v) => ({ deflection: amount(v, 'psf') })),
    })),
    source: sourceOf(first),
  };
}

export const sourceOf = (cells: Line['cells']) => ({
  document: cells['document'],
  edition: cells['edition'],
  date: cells['date'],
});

export function oneByOne<T>(
  part: Part,
  lines: readonly Line[],
  schema: z.ZodType<T>,
  make: (line: Line) => unknown,
): RowsRead<T> {
  const read = lines.map((line) => ({ row: line.row, result: schema.safeParse(make(line)) }));
  return {
    items: read.flatMap(({ row, result }) =>
      result.success ? [{ item: result.data, rows: [row] }] : [],
    ),
    faults: read.flatMap(({ row, result }) => faultsOf(part, result.error, () => row)),
  };
}

function faultsOf(
  part: Part,
  error: z.ZodError | undefined,
  rowOf: (path: readonly PropertyKey[]) => number,
): readonly SheetFault[] {
  return (error?.issues ?? []).map((issue) => ({
    sheet: part,
    row: rowOf(issue.path),
    column: columnOf(part, issue.path),
    message: wordsOf(issue),
  }));
}

/** As a person who keeps the table would say it. */
function wordsOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_value') return `must be one of: ${issue.values.join(', ')}`;
  if (issue.code !== 'invalid_type') return issue.message;
  if (issue.expected === 'boolean') return 'must be yes or no';
  return issue.expected === 'number' ? 'must be a whole number' : 'cannot be read';
}

/** The column that a place in the row was read from. */
function columnOf(part: Part, path: readonly PropertyKey[]): string {
  const [first, second, third] = path.map(String);
  const within = `${first}_${second}`;
  if (PARTS[part].some((column) => column === within)) return within;
  const name = (first === 'rows' ? third : first === 'source' ? second : first) ?? '';
  if (name === 'id') return ID_COLUMN[part] ?? 'number';
  return PARTS[part].find((column) => column === name || column.startsWith(`${name}_`)) ?? name;
}

const ID_COLUMN: Readonly<Partial<Record<Part, string>>> = {
  charts: 'chart',
  profiles: 'profile',
  fasteners: 'fastener',
};
