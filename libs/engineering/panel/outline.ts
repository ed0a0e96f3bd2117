// A sheet's outline as flats and bends: from the mid-line corners a person enters to the pieces
// that section properties are summed over. y is up, toward the weather; units are inches.

import { refused, result, type Fault, type Outcome } from '../check.js';
import type { Inches } from '../units.js';
import { bend, type Bend } from './bend.js';
import { readCorners, turnAt, type Corner, type OutlinePoint, type Path } from './corners.js';

/** A flat between two bends. Numbers are inches. */
export interface Flat {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly w: number;
  /** Heights of the mid-line corners it runs between. */
  readonly from: number;
  readonly to: number;
  /** Of its angle to the horizontal, both positive. */
  readonly sin: number;
  readonly cos: number;
  /** Out-to-out width: between the mid-line corners plus t. */
  readonly overall: number;
  readonly freeStart: boolean;
  readonly freeEnd: boolean;
  /** Indexes of its bends; -1 at a free edge. */
  readonly bendStart: number;
  readonly bendEnd: number;
}

export interface SheetShape {
  readonly t: number;
  readonly flats: readonly Flat[];
  readonly bends: readonly Bend[];
  readonly top: number;
  readonly bottom: number;
  /** Halfway between the highest and the lowest corner. */
  readonly middle: number;
  /** The outline repeats and its two ends are one flat or one bend. */
  readonly continuous: boolean;
  /** Distance to the next outline where continuous, else 0. */
  readonly repeat: number;
  readonly developed: Inches;
}

/**
 * Whether a flat is a web: it crosses the middle of the sheet's depth. Thickness does not change
 * the answer, so ribs lower than half the depth stay ribs.
 */
export function isWeb(shape: SheetShape, flat: Flat): boolean {
  return (flat.from - shape.middle) * (flat.to - shape.middle) < 0;
}

/**
 * Flats and bends of an outline. With `repeat` equal to the distance between its ends, and both
 * ends at one height, the outline is taken as continuous: the ends join, so no edge is free.
 * Refused: fewer than three points, points that coincide, an outline that closes on itself, a bend
 * of more than 175 degrees, bends that do not fit their flats.
 */
export function sheetShape(
  points: readonly OutlinePoint[],
  t: Inches,
  repeat?: Inches,
): Outcome<SheetShape> {
  const path = readCorners(points, repeat);
  return path.ok ? build(path.value, t) : path;
}

/** The same sheet turned over, for negative bending. */
export function turnedOver(shape: SheetShape): SheetShape {
  return {
    ...shape,
    flats: shape.flats.map((f) => ({ ...f, y1: -f.y1, y2: -f.y2, from: -f.from, to: -f.to })),
    bends: shape.bends.map((b) => ({ ...b, first: -b.first })),
    top: -shape.bottom,
    bottom: -shape.top,
    middle: -shape.middle,
  };
}

function build({ corners, continuous, shift }: Path, t: number): Outcome<SheetShape> {
  const faults: Fault[] = [];
  const last = corners.length - 1;
  const extent = { top: -Infinity, bottom: Infinity };
  const bends: Bend[] = [];
  const trims: number[] = [0];
  for (let i = 1; i < last; i++) {
    const b = corners[i]!;
    const turn = turnAt(corners[i - 1]!, b, corners[i + 1]!);
    if (Math.abs(turn) > (175 * Math.PI) / 180) {
      const message = `folds back on itself at (${b.x}, ${b.y}): give a hem as two bends`;
      faults.push({ pointer: '/outline', message });
    }
    bends.push(bend(corners[i - 1]!, b, turn, t, extent));
    trims.push((b.R + t / 2) * Math.tan(Math.abs(turn) / 2));
  }
  trims.push(continuous ? trims[1]! : 0);
  const flats: Flat[] = [];
  let developed = 0;
  for (let i = continuous ? 1 : 0; i < last; i++) {
    const [p, q] = [corners[i]!, corners[i + 1]!];
    const bendEnd = i + 1 < last ? i : continuous ? 0 : -1;
    const flat = flatBetween(p, q, trims[i]!, trims[i + 1]!, t, i - 1, bendEnd);
    if (flat.w < -1e-9) {
      const message = `the bends do not fit between (${p.x}, ${p.y}) and (${q.x}, ${q.y})`;
      faults.push({ pointer: '/outline', message });
    }
    const rise = (t / 2) * flat.cos;
    extent.top = Math.max(extent.top, flat.y1 + rise, flat.y2 + rise);
    extent.bottom = Math.min(extent.bottom, flat.y1 - rise, flat.y2 - rise);
    flats.push(flat);
    developed += flat.w;
  }
  if (faults.length > 0) return refused(...faults);
  let [high, low] = [-Infinity, Infinity];
  for (const c of corners) {
    high = Math.max(high, c.y);
    low = Math.min(low, c.y);
  }
  for (const b of bends) developed += b.length;
  return result({
    t,
    flats,
    bends,
    top: extent.top,
    bottom: extent.bottom,
    middle: (high + low) / 2,
    continuous,
    repeat: shift,
    developed: developed as Inches,
  });
}

function flatBetween(
  p: Corner,
  q: Corner,
  trimStart: number,
  trimEnd: number,
  t: number,
  bendStart: number,
  bendEnd: number,
): Flat {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [ux, uy] = [dx / length, dy / length];
  return {
    x1: p.x + trimStart * ux,
    y1: p.y + trimStart * uy,
    x2: q.x - trimEnd * ux,
    y2: q.y - trimEnd * uy,
    w: length - trimStart - trimEnd,
    from: p.y,
    to: q.y,
    sin: Math.abs(uy),
    cos: Math.abs(ux),
    overall: length + t,
    freeStart: bendStart < 0,
    freeEnd: bendEnd < 0,
    bendStart,
    bendEnd,
  };
}
