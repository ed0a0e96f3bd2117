// Load charts from a CSV file, one line a span; every fault with its row and column.

import { parse } from 'csv-parse/sync';
import { LoadChart } from '#jobs/contract';
import { chartFaults } from './chart-faults.js';

export const CHART_COLUMNS = [
  'chart',
  'profile',
  'width_in',
  'metal',
  'grade',
  'gauge',
  'thickness_in',
  'spans',
  'basis',
  'deflection_limit',
  'attachment_included',
  'interpolation',
  'span_in',
  'inward_psf',
  'outward_psf',
  'deflection_psf',
  'document',
  'edition',
  'date',
] as const;
type Column = (typeof CHART_COLUMNS)[number];
type Line = Readonly<Record<Column, string>>;

const MAY_BE_EMPTY: readonly Column[] = ['gauge', 'deflection_psf'];
const MOST_LINES = 20_000;

export interface CsvFault {
  /** As a person counts them: the heading is row 1. */
  readonly row: number;
  readonly column: string;
  readonly message: string;
}
export type ChartsRead =
  | { readonly ok: true; readonly charts: readonly LoadChart[] }
  | { readonly ok: false; readonly faults: readonly CsvFault[] };

export function readCharts(csv: string): ChartsRead {
  let lines: string[][];
  try {
    lines = parse(csv, { bom: true, trim: true, skip_empty_lines: true, relax_column_count: true });
  } catch (error) {
    const row = (error as { lines?: number }).lines ?? 1;
    return refuse([{ row, column: '', message: (error as Error).message }]);
  }
  const [heading = [], ...rest] = lines;
  const headingFaults = faultsOfHeading(heading);
  if (headingFaults.length > 0) return refuse(headingFaults);
  if (rest.length === 0) return refuse([{ row: 2, column: '', message: 'there are no rows' }]);
  if (rest.length > MOST_LINES) {
    return refuse([{ row: MOST_LINES + 2, column: '', message: `at most ${MOST_LINES} rows` }]);
  }
  const faults = rest.flatMap((cells, index) => faultsOfLine(cells, heading, index + 2));
  if (faults.length > 0) return refuse(faults);
  return charts(rest.map((cells) => lineOf(heading, cells)));
}

const refuse = (faults: readonly CsvFault[]): ChartsRead => ({ ok: false, faults });

function faultsOfHeading(heading: readonly string[]): readonly CsvFault[] {
  const fault = (column: string, message: string) => ({ row: 1, column, message });
  const columns: readonly string[] = CHART_COLUMNS;
  return [
    ...columns
      .filter((each) => !heading.includes(each))
      .map((each) => fault(each, 'this column is missing')),
    ...heading
      .filter((each) => !columns.includes(each))
      .map((each) => fault(each, 'this column is not known')),
    ...heading
      .filter((each, i) => heading.indexOf(each) !== i)
      .map((each) => fault(each, 'stands twice')),
  ];
}

function faultsOfLine(cells: readonly string[], heading: readonly string[], row: number) {
  if (cells.length !== heading.length) {
    return [
      { row, column: '', message: `has ${cells.length} cells, the heading ${heading.length}` },
    ];
  }
  const line = lineOf(heading, cells);
  return CHART_COLUMNS.filter(
    (column) => line[column] === '' && !MAY_BE_EMPTY.includes(column),
  ).map((column) => ({ row, column: column as string, message: 'is empty' }));
}

const lineOf = (heading: readonly string[], cells: readonly string[]): Line =>
  Object.fromEntries(heading.map((column, i) => [column, cells[i] ?? ''])) as unknown as Line;

/** The first line of a chart says what it is; the others must say the same. */
function charts(lines: readonly Line[]): ChartsRead {
  const byChart = new Map<string, { line: Line; row: number }[]>();
  lines.forEach((line, index) => {
    byChart.set(line.chart, [...(byChart.get(line.chart) ?? []), { line, row: index + 2 }]);
  });
  const read = [...byChart.values()].map((of) => ({
    of,
    result: LoadChart.safeParse(chartOf(of.map(({ line }) => line))),
  }));
  const faults = read.flatMap(({ of, result }) => [
    ...differing(of),
    ...(result.error?.issues ?? []).map(({ path, message }) => ({
      row: of[path[0] === 'rows' ? Number(path[1]) : 0]?.row ?? 0,
      column: columnOf(path),
      message,
    })),
  ]);
  if (faults.length > 0) return refuse(faults);
  const all = read.flatMap(({ result }) => (result.data ? [result.data] : []));
  const wrong = chartFaults(all).map(({ chart, row, column, message }) => ({
    row: byChart.get(chart)?.[row]?.row ?? 0,
    column,
    message,
  }));
  return wrong.length > 0 ? refuse(wrong) : { ok: true, charts: all };
}

const BY_ROW: readonly Column[] = ['span_in', 'inward_psf', 'outward_psf', 'deflection_psf'];

function differing(
  of: readonly { readonly line: Line; readonly row: number }[],
): readonly CsvFault[] {
  const first = of[0]?.line;
  return of.flatMap(({ line, row }) =>
    CHART_COLUMNS.filter(
      (column) => !BY_ROW.includes(column) && line[column] !== first?.[column],
    ).map((column) => ({
      row,
      column,
      message: `differs from the chart's first row ("${first?.[column] ?? ''}")`,
    })),
  );
}

const yes = (text: string): unknown => (text === 'yes' ? true : text === 'no' ? false : text);
const amount = (v: string, u: string) => ({ v, u });

function chartOf(lines: readonly Line[]): unknown {
  const [first] = lines;
  return (
    first && {
      id: first.chart,
      profile: first.profile,
      width: amount(first.width_in, 'in'),
      metal: first.metal,
      grade: first.grade,
      ...(first.gauge ? { gauge: first.gauge } : {}),
      thickness: amount(first.thickness_in, 'in'),
      spans: first.spans,
      basis: first.basis,
      deflection_limit: first.deflection_limit,
      attachment_included: yes(first.attachment_included),
      interpolation: yes(first.interpolation),
      rows: lines.map((line) => ({
        span: amount(line.span_in, 'in'),
        inward: amount(line.inward_psf, 'psf'),
        outward: amount(line.outward_psf, 'psf'),
        ...(line.deflection_psf ? { deflection: amount(line.deflection_psf, 'psf') } : {}),
      })),
      source: { document: first.document, edition: first.edition, date: first.date },
    }
  );
}

/** The column that a place in the chart was read from. */
function columnOf(path: readonly PropertyKey[]): string {
  const name = String(path[0] === 'rows' ? path[2] : path[0] === 'source' ? path[1] : path[0]);
  if (name === 'id') return 'chart';
  return CHART_COLUMNS.find((column) => column === name || column.startsWith(`${name}_`)) ?? name;
}
