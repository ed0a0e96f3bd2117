// Flanges with ribs between their webs, found in an outline: flats of one level in a run that is all
// in compression between two webs, with whatever lies between them counted as stiffeners.

import type { Element, Stresses } from './elements.js';
import { pieceOf, type Moments } from './moments.js';
import type { Flat, SheetShape } from './outline.js';
import { ribbedFlange } from './stiffener.js';

export interface RibGroup {
  /** Flats of the flange and its ribs, in order. */
  readonly members: readonly number[];
  readonly bo: number;
  readonly bp: number;
  readonly h: number;
  readonly t: number;
  readonly level: number;
  readonly moments: Moments;
  readonly ribs: readonly { readonly area: number; readonly I: number; readonly c: number }[];
}

/** Ribbed flanges above a neutral axis at y0; mostly none. */
export function ribGroups(shape: SheetShape, y0: number): RibGroup[] {
  const n = shape.flats.length;
  const crosses = (i: number): boolean => {
    const f = shape.flats[i % n]!;
    return (f.y1 - y0) * (f.y2 - y0) < 0;
  };
  let begin = 0;
  while (begin < n && !crosses(begin)) begin++;
  if (begin === n) return [];
  const groups: RibGroup[] = [];
  let run: number[] = [];
  let web = begin;
  const last = shape.continuous ? begin + n : n - 1;
  for (let i = begin + 1; i <= last; i++) {
    if (!crosses(i)) {
      run.push(i);
      continue;
    }
    const group = run.length >= 3 ? groupOf(shape, run, web, i, y0) : undefined;
    if (group !== undefined) groups.push(group);
    run = [];
    web = i;
  }
  return groups;
}

/** The flats as they stand: past the outline's end they go on one repeat to the right. */
function flatAt(shape: SheetShape, i: number): Flat {
  const n = shape.flats.length;
  const flat = shape.flats[i % n]!;
  if (i < n) return flat;
  return { ...flat, x1: flat.x1 + shape.repeat, x2: flat.x2 + shape.repeat };
}

const LEVEL = 0.05;

function groupOf(
  shape: SheetShape,
  run: readonly number[],
  webBefore: number,
  webAfter: number,
  y0: number,
): RibGroup | undefined {
  const { t } = shape;
  const lying = run.filter((i) => flatAt(shape, i).sin < LEVEL && flatAt(shape, i).y1 > y0);
  let flats: number[] = [];
  let widest = 0;
  for (const i of lying) {
    const level = flatAt(shape, i).y1;
    const same = lying.filter((j) => Math.abs(flatAt(shape, j).y1 - level) < t / 2);
    const width = same.reduce((sum, j) => sum + flatAt(shape, j).w, 0);
    if (width > widest) [flats, widest] = [same, width];
  }
  const [from, to] = [flats[0], flats.at(-1)];
  if (from === undefined || to === undefined || from === to) return undefined;
  const start = flatAt(shape, from);
  const level = start.y1;
  const moments = momentsBetween(shape, from - 1, to + 1, false);
  const ribs = flats.slice(1).map((next, k) => {
    const before = flats[k]!;
    const m = momentsBetween(shape, before, next, true);
    const c = (flatAt(shape, before).x2 + flatAt(shape, next).x1) / 2 - start.x1;
    return {
      area: m.area,
      I: m.second - 2 * level * m.first + level * level * m.area,
      c: Math.abs(c),
    };
  });
  const n = shape.flats.length;
  return {
    members: Array.from({ length: to - from + 1 }, (_, k) => (from + k) % n),
    bo: Math.abs(flatAt(shape, to).x2 - start.x1),
    bp: Math.max(...flats.map((i) => flatAt(shape, i).w)),
    h: Math.min(flatAt(shape, webBefore).w, flatAt(shape, webAfter).w),
    t,
    level,
    moments,
    ribs,
  };
}

/** Everything between flats `before` and `next`; their own bends too where `withEdgeBends`. */
function momentsBetween(
  shape: SheetShape,
  before: number,
  next: number,
  withEdgeBends: boolean,
): Moments {
  const sum = { area: 0, first: 0, second: 0 };
  for (let i = before + 1; i < next; i++) {
    const flat = flatAt(shape, i);
    pieceOf(flat, shape.t, 0, flat.w, sum);
    if (withEdgeBends || i > before + 1) addBend(shape, flat.bendStart, sum);
  }
  if (withEdgeBends) addBend(shape, flatAt(shape, next).bendStart, sum);
  return sum;
}

function addBend(shape: SheetShape, index: number, sum: Moments): void {
  const b = shape.bends[index];
  if (b === undefined) return;
  sum.area += b.area;
  sum.first += b.first;
  sum.second += b.second;
}

/** The ribbed flange as one element at a state of stress (1.4). */
export function ribElement(group: RibGroup, s: Stresses): Element {
  const f = (group.level + group.t / 2 - s.y0) * s.perInch;
  const width = ribbedFlange({ ...group, area: group.moments.area, f, E: s.E });
  return {
    ...width,
    kind: 'ribbed',
    flat: group.members[0]!,
    w: group.bo,
    f1: f,
    f2: f,
    pieces: [],
  };
}
