// Jobs from a CSV file: every row becomes a command that opens a job, or is named with its column and
// what is wrong with it.

import { parse } from 'csv-parse/sync';
import { commandSchema, type Command } from '#jobs/contract';

export const COLUMNS = [
  'number',
  'name',
  'customer',
  'customer_phone',
  'customer_email',
  'site',
  'address',
  'due',
  'jurisdiction',
  'building',
  'surfaces',
] as const;
type Column = (typeof COLUMNS)[number];
const NEEDED: readonly Column[] = ['number', 'name', 'customer', 'site'];
export const MOST_ROWS = 500;

export interface RowFault {
  /** As a spreadsheet counts: the head is row 1. */
  readonly row: number;
  readonly column: string;
  readonly message: string;
}

export interface ImportedJob {
  readonly row: number;
  readonly command: Extract<Command, { type: 'open-job' }>;
  readonly customer: Details;
  readonly site: Details;
}
interface Details {
  readonly id: string;
  readonly details: {
    readonly name: string;
    readonly address?: string;
    readonly phone?: string;
    readonly email?: string;
  };
}

export interface ReadCsv {
  readonly jobs: readonly ImportedJob[];
  readonly faults: readonly RowFault[];
}

type Row = Partial<Record<Column, string>>;

/** `newId` gives the ids of customers and sites. */
export function readJobCsv(text: string, newId: () => string): ReadCsv {
  let rows: readonly string[][];
  try {
    rows = parse(text, { bom: true, relax_column_count: true, skip_empty_lines: true, trim: true });
  } catch (error) {
    return {
      jobs: [],
      faults: [
        {
          row: 0,
          column: '',
          message: `this is not CSV: ${error instanceof Error ? error.message : 'it cannot be read'}`,
        },
      ],
    };
  }
  const [head = [], ...body] = rows;
  const headFaults = faultsOfHead(head, body.length);
  if (headFaults.length > 0) return { jobs: [], faults: headFaults };
  const read = body.map((cells, i) => readRow(cells, head, i + 2, newId));
  const twice = numbersTwice(read.flatMap(({ job }) => (job ? [job] : [])));
  return {
    jobs: read.flatMap(({ job }) => (job ? [job] : [])),
    faults: [...read.flatMap(({ faults }) => faults), ...twice],
  };
}

function faultsOfHead(head: readonly string[], rows: number): readonly RowFault[] {
  const unknown = head.filter((name) => !(COLUMNS as readonly string[]).includes(name));
  return [
    ...NEEDED.filter((name) => !head.includes(name)).map((column) => ({
      row: 1,
      column,
      message: 'this column is missing',
    })),
    ...unknown.map((column) => ({
      row: 1,
      column,
      message: `is not one of: ${COLUMNS.join(', ')}`,
    })),
    ...head
      .filter((name, i) => head.indexOf(name) !== i)
      .map((column) => ({ row: 1, column, message: 'stands twice' })),
    ...(rows === 0 ? [{ row: 1, column: '', message: 'no row follows the head' }] : []),
    ...(rows > MOST_ROWS
      ? [
          {
            row: MOST_ROWS + 2,
            column: '',
            message: `at most ${MOST_ROWS} jobs come in one file; this has ${rows}`,
          },
        ]
      : []),
  ];
}

function readRow(
  cells: readonly string[],
  head: readonly string[],
  row: number,
  newId: () => string,
): { job?: ImportedJob; faults: readonly RowFault[] } {
  const given: Row = Object.fromEntries(
    head.flatMap((name, i) => (cells[i] ? [[name, cells[i]]] : [])),
  );
  const missing = NEEDED.filter((column) => !given[column]).map((column) => ({
    row,
    column,
    message: 'must not be empty',
  }));
  const extra =
    cells.length > head.length
      ? [{ row, column: '', message: `has ${cells.length} cells under ${head.length} columns` }]
      : [];
  const surfaces = surfacesOf(given.surfaces ?? '');
  const customer = {
    id: newId(),
    details: {
      name: given.customer ?? '',
      ...optional('phone', given.customer_phone),
      ...optional('email', given.customer_email),
    },
  };
  const site = {
    id: newId(),
    details: { name: given.site ?? '', ...optional('address', given.address) },
  };
  const result = commandSchema('open-job').safeParse({
    type: 'open-job',
    number: given.number ?? '',
    name: given.name ?? '',
    site: { id: site.id },
    parties: { customer: { id: customer.id } },
    ...optional('due', given.due),
    ...optional('jurisdiction', given.jurisdiction),
    buildings: surfaces.length > 0 ? [{ id: 'b1', name: given.building ?? 'Main building' }] : [],
    surfaces,
  });
  const faults = [
    ...missing,
    ...extra,
    ...(result.success
      ? []
      : result.error.issues
          .map(({ path, message }) => ({ row, column: columnOf(path), message }))
          .filter(({ column }) => !missing.some((each) => each.column === column))),
  ];
  return faults.length > 0 || !result.success
    ? { faults }
    : { job: { row, command: result.data, customer, site }, faults: [] };
}

/** "South: roof; North wall: wall" */
function surfacesOf(
  text: string,
): readonly { id: string; building: string; name: string; kind: string }[] {
  return text
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .map((each, i) => {
      const cut = each.lastIndexOf(':');
      const [name, kind] = cut < 0 ? [each, ''] : [each.slice(0, cut), each.slice(cut + 1)];
      return { id: `s${i + 1}`, building: 'b1', name: name.trim(), kind: kind.trim() };
    });
}

const columnOf = ([first]: readonly PropertyKey[]): string =>
  first === 'buildings'
    ? 'building'
    : (COLUMNS as readonly string[]).includes(String(first))
      ? String(first)
      : '';

const optional = <K extends string>(key: K, value: string | undefined): { [P in K]?: string } =>
  (value === undefined ? {} : { [key]: value }) as { [P in K]?: string };

function numbersTwice(jobs: readonly ImportedJob[]): readonly RowFault[] {
  const first = new Map<string, number>();
  return jobs.flatMap(({ row, command: { number } }) => {
    const before = first.get(number);
    if (before === undefined) first.set(number, row);
    return before === undefined
      ? []
      : [{ row, column: 'number', message: `${number} stands in row ${before} already` }];
  });
}
