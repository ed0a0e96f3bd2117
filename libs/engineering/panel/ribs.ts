// Flanges with ribs between their webs, found in an outline: flats of one level in a run between
// two webs, on the compression side, with whatever lies between them counted as stiffeners.

import type { Element, Stresses } from './element.js';
import { pieceOf, type Moments } from './moments.js';
import { isWeb, type Flat, type SheetShape } from './outline.js';
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

/** Ribbed flanges with their flats above a neutral axis at y0; mostly none. */
export function ribGroups(shape: SheetShape, y0: number): RibGroup[] {
  const n = shape.flats.length;
  const crosses = (i: number): boolean => isWeb(shape, shape.flats[i % n]!);
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

const isLevelWith = (flat: Flat, y: number, t: number): boolean =>
  flat.sin < LEVEL && Math.abs(flat.y1 - y) < t / 2;

function groupOf(
  shape: SheetShape,
  run: readonly number[],
  webBefore: number,
  webAfter: number,
  y0: number,
): RibGroup | undefined {
  const { t } = shape;
  const n = shape.flats.length;
  let flats: number[] = [];
  let widest = 0;
  for (const i of run) {
    const { sin, y1 } = shape.flats[i % n]!;
    if (sin >= LEVEL || y1 <= y0) continue;
    const same = run.filter((j) => isLevelWith(shape.flats[j % n]!, y1, t));
    let width = 0;
    for (const j of same) width += shape.flats[j % n]!.w;
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
  const { bo, bp, t, ribs, h, moments, members } = group;
  const width = ribbedFlange({ bo, bp, t, ribs, area: moments.area, h, f, E: s.E });
  return {
    kind: 'ribbed',
    flat: members[0]!,
    w: bo,
    f1: f,
    f2: f,
    k: width.k,
    lambda: width.lambda,
    rho: width.rho,
    b: width.b,
    b1: null,
    b2: null,
    lip: null,
    head: 0,
    tail: 0,
  };
}
