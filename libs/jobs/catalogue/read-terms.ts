// Colors with their finish terms, one row a combination; a term without fade or chalk leaves those
// cells empty, and half of one is a fault.

import { CoatingTerm } from '../contract/catalogue.js';
import type { Line, SheetFault } from './parts.js';
import { amount, given, oneByOne, whole, type Placed, type RowsRead } from './read-rows.js';

export const termRows = (lines: readonly Line[]): RowsRead<CoatingTerm> =>
  oneByOne('terms', lines, CoatingTerm, ({ cells }) => ({
    metal: cells['metal'],
    metallic_coating: cells['metallic_coating'],
    paint_system: cells['paint_system'],
    color_group: cells['color_group'],
    finish_years: whole(cells['finish_years']),
    ...together(cells, ['fade_limit', 'fade_scale', 'fade_years'], (limit, scale, years) => ({
      fade: { limit, scale, years: whole(years) },
    })),
    ...together(cells, ['chalk_least', 'chalk_years'], (least, years) => ({
      chalk: { least, years: whole(years) },
    })),
    ...given(cells['water_distance_ft'], (v) => ({ water_distance: amount(v, 'ft') })),
    document: cells['document'],
  }));

/** Where one of the cells is filled, all of them are read. */
function together(
  cells: Line['cells'],
  columns: readonly string[],
  what: (...read: readonly string[]) => object,
): object {
  const read = columns.map((column) => cells[column] ?? '');
  return read.some((cell) => cell !== '') ? what(...read) : {};
}

const keyOf = (term: CoatingTerm): string =>
  [term.metal, term.metallic_coating, term.paint_system, term.color_group].join(', ');

/** Rows take the place of the same combination; the others stay. */
export function withTerms(
  current: readonly CoatingTerm[],
  placed: readonly Placed<CoatingTerm>[],
): CoatingTerm[] {
  const named = new Set(placed.map(({ item }) => keyOf(item)));
  return [...current.filter((term) => !named.has(keyOf(term))), ...placed.map(({ item }) => item)];
}

export function termFaults(placed: readonly Placed<CoatingTerm>[]): readonly SheetFault[] {
  return placed.flatMap(({ item, rows }, i) => {
    const first = placed.findIndex((each) => keyOf(each.item) === keyOf(item));
    const message = `${keyOf(item)} stands in row ${placed[first]?.rows[0] ?? 0} already`;
    return first === i
      ? []
      : [{ sheet: 'terms', row: rows[0] ?? 0, column: 'color_group', message }];
  });
}
