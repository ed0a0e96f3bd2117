// Profiles and fasteners from their lines. A profile's outline is written as points "x y" or
// "x y r" in inches, parted by semicolons; r is the inside radius of the bend.

import { Fastener, Profile } from '../contract/catalogue.js';
import type { Line, SheetFault } from './parts.js';
import {
  amount,
  given,
  list,
  oneByOne,
  sourceOf,
  yes,
  type Placed,
  type RowsRead,
} from './read-rows.js';

export const profileRows = (lines: readonly Line[]): RowsRead<Profile> =>
  oneByOne('profiles', lines, Profile, ({ cells }) => ({
    id: cells['profile'],
    name: cells['name'],
    family: cells['family'],
    fastening: cells['fastening'],
    seam: cells['seam'],
    structural: yes(cells['structural']),
    least_slope: amount(cells['least_slope_per_12'], 'per-12'),
    ...given(cells['warranty_least_slope_per_12'], (v) => ({
      warranty_least_slope: amount(v, 'per-12'),
    })),
    widths: list(cells['widths_in']).map((v) => amount(v, 'in')),
    rib_height: amount(cells['rib_height_in'], 'in'),
    ...given(cells['rib_pitch_in'], (v) => ({ rib_pitch: amount(v, 'in') })),
    flat_width: amount(cells['flat_width_in'], 'in'),
    striated: yes(cells['striated']),
    longest_piece: amount(cells['longest_piece_ft'], 'ft'),
    ...given(cells['developed_width_in'], (v) => ({ developed_width: amount(v, 'in') })),
    ...given(cells['outline'], (text) => ({ outline: text.split(';').map(pointOf) })),
  }));

/** What is no number stays a text, which the contract refuses at this cell. */
function pointOf(text: string): unknown {
  const [x_in, y_in, r_inside_in, ...more] = text.trim().split(/\s+/).map(numeric);
  return more.length > 0
    ? text
    : { x_in, y_in, ...(r_inside_in === undefined ? {} : { r_inside_in }) };
}
const numeric = (text: string): unknown =>
  /^-?\d{1,4}(\.\d{1,6})?$/.test(text) ? Number(text) : text;

export const fastenerRows = (lines: readonly Line[]): RowsRead<Fastener> =>
  oneByOne('fasteners', lines, Fastener, ({ cells }) => ({
    id: cells['fastener'],
    name: cells['name'],
    kind: cells['kind'],
    ...given(cells['clip_movement'], (clip_movement) => ({ clip_movement })),
    metal: cells['metal'],
    ...given(cells['diameter_in'], (v) => ({ diameter: amount(v, 'in') })),
    ...given(cells['washer_diameter_in'], (v) => ({ washer_diameter: amount(v, 'in') })),
    ...given(cells['thread_bite_in'], (v) => ({ thread_bite: amount(v, 'in') })),
  }));

const Test = Fastener.shape.tested.unwrap().element;
export type FastenerTest = NonNullable<Fastener['tested']>[number];
export interface TestOf {
  readonly fastener: string;
  readonly test: FastenerTest;
}

export function fastenerTestRows(lines: readonly Line[]): RowsRead<TestOf> {
  const { items, faults } = oneByOne('fastener-tests', lines, Test, ({ cells }) => ({
    into: cells['into'],
    ...given(cells['least_thickness_in'], (v) => ({ least_thickness: amount(v, 'in') })),
    allowable: amount(cells['allowable_lb'], 'lb'),
    source: sourceOf(cells),
  }));
  const named = new Map(lines.map(({ row, cells }) => [row, cells['fastener'] ?? '']));
  return {
    faults,
    items: items.map(({ item, rows }) => ({
      rows,
      item: { fastener: named.get(rows[0] ?? 0) ?? '', test: item },
    })),
  };
}

/** A row of an id that is there takes its place; tests take the place of all tests of the fasteners they name. */
export function withProducts(
  current: { readonly profiles: readonly Profile[]; readonly fasteners: readonly Fastener[] },
  profiles: readonly Placed<Profile>[],
  fasteners: readonly Placed<Fastener>[],
  tests: readonly Placed<TestOf>[],
): { readonly profiles: Profile[]; readonly fasteners: Fastener[] } {
  const tested = new Set(tests.map(({ item }) => item.fastener));
  const before = new Map(current.fasteners.map((each) => [each.id, each]));
  const named = replacedById(
    current.fasteners,
    fasteners.map(({ item }) => {
      const kept = before.get(item.id)?.tested;
      return kept ? { ...item, tested: kept } : item;
    }),
  );
  return {
    profiles: replacedById(
      current.profiles,
      profiles.map(({ item }) => item),
    ),
    fasteners: named.map((each) =>
      tested.has(each.id)
        ? {
            ...each,
            tested: tests
              .filter(({ item }) => item.fastener === each.id)
              .map(({ item }) => item.test),
          }
        : each,
    ),
  };
}

function replacedById<T extends { readonly id: string }>(
  current: readonly T[],
  incoming: readonly T[],
): T[] {
  const known = new Set(current.map(({ id }) => id));
  return [
    ...current.map((each) => incoming.find(({ id }) => id === each.id) ?? each),
    ...incoming.filter(({ id }) => !known.has(id)),
  ];
}

/** Two rows of one id, and tests of a fastener that is neither there nor in the file. */
export function productFaults(
  profiles: readonly Placed<Profile>[],
  fasteners: readonly Placed<Fastener>[],
  tests: readonly Line[],
  known: ReadonlySet<string>,
): readonly SheetFault[] {
  const unknown = tests.filter(({ cells }) => !known.has(cells['fastener'] ?? ''));
  return [
    ...twice('profiles', 'profile', profiles),
    ...twice('fasteners', 'fastener', fasteners),
    ...unknown.map(({ row, cells }) => ({
      sheet: 'fastener-tests',
      row,
      column: 'fastener',
      message: `there is no fastener ${cells['fastener'] ?? ''}`,
    })),
  ];
}

function twice(
  sheet: string,
  column: string,
  placed: readonly Placed<{ readonly id: string }>[],
): readonly SheetFault[] {
  return placed.flatMap(({ item, rows }, i) => {
    const first = placed.findIndex((each) => each.item.id === item.id);
    const message = `${item.id} stands in row ${placed[first]?.rows[0] ?? 0} already`;
    return first === i ? [] : [{ sheet, row: rows[0] ?? 0, column, message }];
  });
}

/** A width that is taken away and still made, charted or tested. */
export function widthFaults(
  profiles: readonly Placed<Profile>[],
  rows: readonly { readonly profile: string; readonly width: { readonly v: string } }[],
): readonly SheetFault[] {
  return profiles.flatMap(({ item, rows: at }) => {
    const used = rows.filter(({ profile }) => profile === item.id).map(({ width }) => width.v);
    const left = [...new Set(used)].filter((v) => !item.widths.some((each) => each.v === v));
    return left.map((v) => ({
      sheet: 'profiles',
      row: at[0] ?? 0,
      column: 'widths_in',
      message: `${v} in is still made, charted or tested: keep it, or bring those rows too`,
    }));
  });
}
