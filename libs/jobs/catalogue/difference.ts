// What differs between two catalogue editions, row by row and column by column, in words that stand
// in the tables.

import type { Catalogue, LoadChart } from '../contract/catalogue.js';

export interface CatalogueDifference {
  readonly part: string;
  readonly row: string;
  /** Empty where a row joins or leaves. */
  readonly column: string;
  readonly was: string | null;
  readonly becomes: string | null;
}

type Row = Readonly<Record<string, string>>;
type Rows = ReadonlyMap<string, Row>;

export function catalogueDifference(
  before: Catalogue,
  after: Catalogue,
): readonly CatalogueDifference[] {
  const [was, becomes] = [partsOf(before), partsOf(after)];
  return Object.keys(was).flatMap((part) =>
    rowsDiffer(part, was[part] ?? new Map(), becomes[part] ?? new Map()),
  );
}

function partsOf(catalogue: Catalogue): Readonly<Record<string, Rows>> {
  const { profiles, made, charts, assemblies, fasteners, terms } = catalogue;
  return {
    profiles: keyed(profiles, ({ id }) => id),
    made: keyed(made, (row) =>
      [
        row.profile,
        `${row.width.v} in`,
        row.metal,
        `${row.thickness.v} in`,
        row.grade,
        row.metallic_coating,
        row.paint_system,
        row.color_groups.join(' '),
      ].join(', '),
    ),
    charts: keyed(charts.flatMap(spansOf), ({ chart, span }) => `${chart}, span ${span.v} in`),
    assemblies: keyed(assemblies, ({ number }) => number),
    fasteners: keyed(fasteners, ({ id }) => id),
    terms: keyed(terms, (each) =>
      [each.metal, each.metallic_coating, each.paint_system, each.color_group].join(', '),
    ),
  };
}

const spansOf = ({ id, rows, ...chart }: LoadChart) =>
  rows.map((row) => ({ chart: id, ...chart, ...row }));

const keyed = <T extends object>(rows: readonly T[], keyOf: (row: T) => string): Rows =>
  new Map(rows.map((row) => [keyOf(row), columnsOf(row)]));

const columnsOf = (row: object): Row =>
  Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name.replaceAll('_', ' '), textOf(value)]),
  );

function textOf(value: unknown): string {
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (typeof value !== 'object' || value === null) return String(value);
  if (Array.isArray(value)) return value.map(textOf).join('; ');
  return Object.values(value).map(textOf).join(' ');
}

function rowsDiffer(part: string, was: Rows, becomes: Rows): readonly CatalogueDifference[] {
  const keys = [...new Set([...was.keys(), ...becomes.keys()])];
  return keys.flatMap((row): readonly CatalogueDifference[] => {
    const [from, to] = [was.get(row), becomes.get(row)];
    if (!from) return [{ part, row, column: '', was: null, becomes: wholeOf(to ?? {}) }];
    if (!to) return [{ part, row, column: '', was: wholeOf(from), becomes: null }];
    const columns = [...new Set([...Object.keys(from), ...Object.keys(to)])];
    return columns.flatMap((column) =>
      from[column] === to[column]
        ? []
        : [{ part, row, column, was: from[column] ?? null, becomes: to[column] ?? null }],
    );
  });
}

const wholeOf = (row: Row): string =>
  Object.entries(row)
    .map(([column, text]) => `${column} ${text}`)
    .join(', ');
