// One flat of a bent sheet as a plate element: which rule of Appendix 1 it falls under at a given
// neutral axis, and which parts of it are effective.

import type { Element, ElementKind, Stresses } from './element.js';
import type { Flat, SheetShape } from './outline.js';
import { stiffenedGradient, unstiffened } from './plate.js';
import type { RibGroup } from './ribs.js';
import { lippedFlange, type LippedWidth } from './stiffener.js';

/** A flat lying closer to horizontal than to upright. */
const LYING = Math.SQRT1_2;

/** The element of flat i; `groups` names the ribbed flange of each flat, if any. */
export function flatElement(
  shape: SheetShape,
  i: number,
  s: Stresses,
  groups: readonly (RibGroup | undefined)[],
): Element {
  const flat = shape.flats[i]!;
  const w = flat.w;
  const start = stressAt(flat.y1, flat, shape.t, s);
  const end = stressAt(flat.y2, flat, shape.t, s);
  const f1 = Math.max(start, end);
  const f2 = Math.min(start, end);
  if (f1 <= 0 || w < 1e-9) {
    return plain('tension', i, w, f1, f2, null, null, 1, w, w, 0);
  }
  if (flat.freeStart || flat.freeEnd) return freeElement(shape, i, start, end, s);
  const lipped = lippedBy(shape, i, s);
  if (lipped !== undefined) return lippedElement(i, w, f1, f2, lipped);
  const narrow = f2 < 0 && isNarrow(shape, i, start > end, groups);
  const g = stiffenedGradient(w, shape.t, f1, f2, s.E, narrow, s.lesserB2);
  const compressed = f2 >= 0 ? w : (w * f1) / (f1 - f2);
  const far = w - compressed + g.b2;
  const fromStart = start >= end;
  return {
    kind: f2 < 0 ? 'web' : 'stiffened',
    flat: i,
    w,
    f1,
    f2,
    k: g.k,
    lambda: g.lambda,
    rho: g.rho,
    b: g.b,
    b1: g.b1,
    b2: g.b2,
    lip: null,
    head: g.full ? w : fromStart ? g.b1 : far,
    tail: g.full ? 0 : fromStart ? far : g.b1,
  };
}

/** Stress at an end of a flat, taken at its outer fiber: the extreme fiber for a flange. */
const stressAt = (y: number, flat: Flat, t: number, s: Stresses): number =>
  (y + (t / 2) * flat.cos - s.y0) * s.perInch;

function plain(
  kind: ElementKind,
  flat: number,
  w: number,
  f1: number,
  f2: number,
  k: number | null,
  lambda: number | null,
  rho: number,
  b: number,
  head: number,
  tail: number,
): Element {
  return { kind, flat, w, f1, f2, k, lambda, rho, b, b1: null, b2: null, lip: null, head, tail };
}

function lippedElement(i: number, w: number, f1: number, f2: number, by: Lipped): Element {
  const { width, D, theta, lipAtStart } = by;
  const beside = (width.b / 2) * width.RI;
  return {
    kind: 'lipped',
    flat: i,
    w,
    f1,
    f2,
    k: width.k,
    lambda: width.lambda,
    rho: width.rho,
    b: width.b,
    b1: beside,
    b2: width.b - beside,
    lip: width.Ia > 0 ? { D, theta } : null,
    head: lipAtStart ? beside : width.b - beside,
    tail: lipAtStart ? width.b - beside : beside,
  };
}

/** A flat with a free edge: an unstiffened element, or the lip of its neighbor. */
function freeElement(
  shape: SheetShape,
  i: number,
  start: number,
  end: number,
  s: Stresses,
): Element {
  const flat = shape.flats[i]!;
  const w = flat.w;
  const supported = flat.freeEnd ? start : end;
  const free = flat.freeEnd ? end : start;
  const { k, lambda, rho, b: width } = unstiffened(w, shape.t, supported, free, s.E, s.rules);
  const flange = lippedBy(shape, flat.freeEnd ? i - 1 : i + 1, s);
  const b = flange === undefined ? width : width * flange.width.RI;
  const tension = supported > 0 && free < 0 ? (w * -free) / (supported - free) : 0;
  const near = b - tension;
  const kind = flange === undefined ? 'unstiffened' : 'lip';
  const head = flat.freeEnd ? near : tension;
  const tail = flat.freeEnd ? tension : near;
  return plain(
    kind,
    i,
    w,
    Math.max(start, end),
    Math.min(start, end),
    k,
    lambda,
    rho,
    b,
    head,
    tail,
  );
}

interface Lipped {
  readonly width: LippedWidth;
  readonly D: number;
  readonly theta: number;
  readonly lipAtStart: boolean;
}

/** The flange rule of flat i where a lip wholly in compression holds one of its edges. */
function lippedBy(shape: SheetShape, i: number, s: Stresses): Lipped | undefined {
  const flat = shape.flats[i];
  if (flat === undefined || flat.freeStart || flat.freeEnd || flat.cos < LYING) return undefined;
  if (shape.continuous) return undefined;
  const lipAtStart = i === 1;
  if (!lipAtStart && i !== shape.flats.length - 2) return undefined;
  const { t } = shape;
  const lip = shape.flats[lipAtStart ? 0 : i + 1]!;
  if (Math.min(stressAt(lip.y1, lip, t, s), stressAt(lip.y2, lip, t, s)) < 0) return undefined;
  const f = Math.max(stressAt(flat.y1, flat, t, s), stressAt(flat.y2, flat, t, s));
  if (f <= 0) return undefined;
  const bend = shape.bends[lipAtStart ? flat.bendStart : flat.bendEnd]!;
  const theta = bend.turn;
  const D = lip.w + (bend.insideRadius + t) * Math.tan(theta / 2);
  const width = lippedFlange({ w: flat.w, t, d: lip.w, D, theta, f, E: s.E }, s.rules);
  return { width, D, theta, lipAtStart };
}

/** h_o/b_o over 4 for a web, where b_o is its compression flange (1.1.2, from memory). */
function isNarrow(
  shape: SheetShape,
  i: number,
  compressedStart: boolean,
  groups: readonly (RibGroup | undefined)[],
): boolean {
  const n = shape.flats.length;
  const next = i + (compressedStart ? -1 : 1);
  const j = shape.continuous ? (next + n) % n : next;
  const flange = shape.flats[j];
  if (flange === undefined || flange.cos < LYING) return false;
  return shape.flats[i]!.overall > 4 * (groups[j]?.bo ?? flange.overall);
}
