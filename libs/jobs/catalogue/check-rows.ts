// What is wrong with rows beside each other, and with the names they use: profiles, widths and
// fasteners that are not in the catalogue, things that stand twice, charts that cannot be.

import type { Catalogue, LoadChart, MadeRow, TestedAssembly } from '../contract/catalogue.js';
import { chartFaults } from './chart-checks.js';
import type { Part, SheetFault } from './parts.js';
import type { Placed } from './read-rows.js';

export interface Incoming {
  readonly charts: readonly Placed<LoadChart>[];
  readonly made: readonly Placed<MadeRow>[];
  readonly assemblies: readonly Placed<TestedAssembly>[];
}

export function rowFaults(
  { charts, made, assemblies }: Incoming,
  catalogue: Catalogue,
): readonly SheetFault[] {
  return [
    ...nameFaults('charts', charts, catalogue),
    ...nameFaults('made', made, catalogue),
    ...nameFaults('assemblies', assemblies, catalogue),
    ...placedChartFaults(charts),
    ...twiceMade(made),
    ...twice(assemblies),
    ...assemblies.flatMap((each) => assemblyFaults(each, catalogue)),
  ];
}

/** Faults of the charts as such, at the rows they came from. */
export function placedChartFaults(charts: Incoming['charts']): readonly SheetFault[] {
  const rowsOf = new Map(charts.map(({ item, rows }) => [item.id, rows]));
  return chartFaults(charts.map(({ item }) => item)).map(({ chart, row, column, message }) => ({
    sheet: 'charts',
    row: rowsOf.get(chart)?.[row] ?? 0,
    column,
    message,
  }));
}

function nameFaults(
  sheet: Part,
  placed: readonly Placed<{ readonly profile: string; readonly width: { readonly v: string } }>[],
  { profiles }: Catalogue,
): readonly SheetFault[] {
  return placed.flatMap(({ item, rows }): readonly SheetFault[] => {
    const row = rows[0] ?? 0;
    const profile = profiles.find(({ id }) => id === item.profile);
    if (!profile)
      return [{ sheet, row, column: 'profile', message: `there is no profile ${item.profile}` }];
    return profile.widths.some(({ v }) => v === item.width.v)
      ? []
      : [
          {
            sheet,
            row,
            column: 'width_in',
            message: `${item.profile} comes in ${profile.widths.map(({ v }) => v).join(', ')} in`,
          },
        ];
  });
}

/** One combination and color group has one row, or nobody knows which price counts. */
function twiceMade(made: readonly Placed<MadeRow>[]): readonly SheetFault[] {
  const seen = new Map<string, number>();
  return made.flatMap(({ item, rows }) =>
    item.color_groups.flatMap((group) => {
      const row = rows[0] ?? 0;
      const key = [
        item.profile,
        item.width.v,
        item.metal,
        item.thickness.v,
        item.grade,
        item.metallic_coating,
        item.paint_system,
        group,
      ].join('|');
      const before = seen.get(key);
      if (before === undefined) {
        seen.set(key, row);
        return [];
      }
      return [
        {
          sheet: 'made',
          row,
          column: 'color_groups',
          message: `${group} of this combination stands in row ${before} already`,
        },
      ];
    }),
  );
}

function twice(assemblies: readonly Placed<TestedAssembly>[]): readonly SheetFault[] {
  const seen = new Map<string, number>();
  return assemblies.flatMap(({ item, rows }) => {
    const row = rows[0] ?? 0;
    const before = seen.get(item.id);
    seen.set(item.id, before ?? row);
    return before === undefined
      ? []
      : [
          {
            sheet: 'assemblies',
            row,
            column: 'number',
            message: `${item.number} stands in row ${before} already`,
          },
        ];
  });
}

function assemblyFaults(
  { item, rows }: Placed<TestedAssembly>,
  { fasteners }: Catalogue,
): readonly SheetFault[] {
  const at = (column: string, message: string): SheetFault => ({
    sheet: 'assemblies',
    row: rows[0] ?? 0,
    column,
    message,
  });
  return [
    ...(fasteners.some(({ id }) => id === item.fastener)
      ? []
      : [at('fastener', `there is no fastener ${item.fastener}`)]),
    ...(item.basis === 'ultimate' && item.safety_factor === undefined
      ? [at('safety_factor', 'is needed where the basis is ultimate')]
      : []),
  ];
}
