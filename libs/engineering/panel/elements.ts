// One flat of a bent sheet as a plate element: which rule of Appendix 1 it falls under at a given
// neutral axis, and which parts of it are effective.

import type { Flat, SheetShape } from './outline.js';
import { stiffenedGradient, unstiffened, type PlateRules, type PlateWidth } from './plate.js';
import type { RibGroup } from './ribs.js';
import { lippedFlange, type LippedWidth } from './stiffener.js';

export type ElementKind =
  'tension' | 'stiffened' | 'web' | 'unstiffened' | 'lip' | 'lipped' | 'ribbed';

export interface Element {
  readonly kind: ElementKind;
  /** Index of the (first) flat. */
  readonly flat: number;
  readonly w: number;
  /** Stress at the more and the less compressed end, ksi. */
  readonly f1: number;
  readonly f2: number;
  readonly k: number | null;
  readonly lambda: number | null;
  readonly rho: number;
  readonly b: number;
  readonly b1?: number;
  readonly b2?: number;
  readonly D?: number;
  readonly theta?: number;
  readonly needsLip?: boolean;
  /** Effective parts, as distances from the flat's start. */
  readonly pieces: readonly (readonly [number, number])[];
}

/** The state of stress: neutral axis, ksi per inch above it, and the rules. */
export interface Stresses {
  readonly y0: number;
  readonly perInch: number;
  readonly E: number;
  readonly rules: PlateRules;
  readonly lesserB2: boolean;
}

/** A flat lying closer to horizontal than to upright. */
const LYING = Math.SQRT1_2;

export function flatElement(
  shape: SheetShape,
  i: number,
  s: Stresses,
  ribs: readonly RibGroup[],
): Element {
  const flat = shape.flats[i]!;
  const { start, end } = endStresses(flat, shape.t, s);
  const [f1, f2] = [Math.max(start, end), Math.min(start, end)];
  const whole = [[0, flat.w]] as const;
  const plain = { flat: i, w: flat.w, f1, f2 };
  if (f1 <= 0 || flat.w < 1e-9) {
    return { ...plain, kind: 'tension', k: null, lambda: null, rho: 1, b: flat.w, pieces: whole };
  }
  if (flat.freeStart || flat.freeEnd) return freeElement(shape, i, start, end, s);
  const lip = lippedBy(shape, i, s);
  if (lip !== undefined) {
    const { D, theta, width, lipAtStart } = lip;
    const { S, Is, Ia, RI, ...rest } = width;
    const beside = (width.b / 2) * RI;
    const pieces = lipAtStart
      ? bothEnds(flat.w, beside, width.b - beside)
      : bothEnds(flat.w, width.b - beside, beside);
    return { ...plain, ...rest, kind: 'lipped', D, theta, needsLip: Ia > 0, pieces };
  }
  const narrow = f2 < 0 && isNarrow(shape, i, start > end, ribs);
  const { psi, full, ...width } = stiffenedGradient(
    flat.w,
    shape.t,
    f1,
    f2,
    s.E,
    narrow,
    s.lesserB2,
  );
  const compressed = f2 >= 0 ? flat.w : (flat.w * f1) / (f1 - f2);
  const rest = flat.w - compressed + width.b2;
  const pieces = full
    ? whole
    : start >= end
      ? bothEnds(flat.w, width.b1, rest)
      : bothEnds(flat.w, rest, width.b1);
  return { ...plain, ...width, kind: f2 < 0 ? 'web' : 'stiffened', pieces };
}

/** Stress at the flat's two ends, taken at its outer fiber: the extreme fiber for a flange. */
function endStresses(flat: Flat, t: number, s: Stresses): { start: number; end: number } {
  const rise = (t / 2) * flat.cos - s.y0;
  return { start: (flat.y1 + rise) * s.perInch, end: (flat.y2 + rise) * s.perInch };
}

const bothEnds = (w: number, first: number, last: number) =>
  [
    [0, first],
    [w - last, w],
  ] as const;

/** A flat with a free edge: an unstiffened element, or the lip of its neighbor. */
function freeElement(
  shape: SheetShape,
  i: number,
  start: number,
  end: number,
  s: Stresses,
): Element {
  const flat = shape.flats[i]!;
  const { w } = flat;
  const [supported, free] = flat.freeEnd ? [start, end] : [end, start];
  const plate = unstiffened(w, shape.t, supported, free, s.E, s.rules);
  const common = { flat: i, w, f1: Math.max(start, end), f2: Math.min(start, end) };
  const flange = lippedBy(shape, flat.freeEnd ? i - 1 : i + 1, s);
  const b = flange === undefined ? plate.b : plate.b * flange.width.RI;
  const compressed = supported > 0 && free < 0 ? (w * supported) / (supported - free) : w;
  const near = b - (w - compressed);
  const pieces: [number, number][] =
    compressed < w
      ? [
          [0, near],
          [compressed, w],
        ]
      : [[0, b]];
  return {
    ...common,
    ...(plate satisfies PlateWidth),
    kind: flange === undefined ? 'unstiffened' : 'lip',
    b,
    pieces: flat.freeEnd ? pieces : pieces.map(([from, to]) => [w - to, w - from] as const),
  };
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
  const lip = shape.flats[lipAtStart ? 0 : i + 1]!;
  const ends = endStresses(lip, shape.t, s);
  if (Math.min(ends.start, ends.end) < 0) return undefined;
  const bend = shape.bends[lipAtStart ? flat.bendStart : flat.bendEnd]!;
  const D = lip.w + (bend.insideRadius + shape.t) * Math.tan(bend.turn / 2);
  const own = endStresses(flat, shape.t, s);
  const f = Math.max(own.start, own.end);
  if (f <= 0) return undefined;
  const theta = bend.turn;
  const x = { w: flat.w, t: shape.t, d: lip.w, D, theta, f, E: s.E };
  return { width: lippedFlange(x, s.rules), D, theta, lipAtStart };
}

/** h_o/b_o over 4 for a web, where b_o is its compression flange (1.1.2, from memory). */
function isNarrow(
  shape: SheetShape,
  i: number,
  compressedStart: boolean,
  ribs: readonly RibGroup[],
): boolean {
  const n = shape.flats.length;
  const j = shape.continuous
    ? (i + (compressedStart ? n - 1 : 1)) % n
    : i + (compressedStart ? -1 : 1);
  const flange = shape.flats[j];
  if (flange === undefined || flange.cos < LYING) return false;
  const group = ribs.find((g) => g.members.includes(j));
  return shape.flats[i]!.overall > 4 * (group?.bo ?? flange.overall);
}
