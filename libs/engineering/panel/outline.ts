// A sheet's outline as flats and bends: from the mid-line corners a person enters to the pieces
// that section properties are summed over. y is up, toward the weather; units are inches.

import { refused, result, type Fault, type Outcome } from '../check.js';
import type { Inches } from '../units.js';
import { bend, type Bend } from './bend.js';

/** A corner of the mid-line; without an inside radius the bend is square (inside radius 0). */
export interface OutlinePoint {
  readonly x: Inches;
  readonly y: Inches;
  readonly insideRadius?: Inches;
}

/** A flat between two bends. Numbers are inches. */
export interface Flat {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly w: number;
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
  /** The outline repeats and its two ends are one flat or one bend. */
  readonly continuous: boolean;
  /** Distance to the next outline where continuous, else 0. */
  readonly repeat: number;
  readonly developed: Inches;
}

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly R: number;
}

/**
 * Flats and bends of an outline. With `repeat` equal to the distance between its ends, and both ends
 * at one height, the outline is taken as continuous: the ends join, so no edge is free. `flip` turns
 * the sheet over, for negative bending. Refused: fewer than three points, points that coincide, an
 * outline that closes on itself, a bend of more than 175 degrees, bends that do not fit their flats.
 */
export function sheetShape(
  points: readonly OutlinePoint[],
  t: Inches,
  repeat?: Inches,
  flip = false,
): Outcome<SheetShape> {
  const sign = flip ? -1 : 1;
  const raw = points.map((p) => ({ x: p.x, y: sign * p.y, R: p.insideRadius ?? 0 }));
  const faults = pointFaults(raw);
  if (faults.length > 0) return refused(...faults);
  const continuous = repeat !== undefined && joins(raw, repeat);
  const shift = continuous ? repeat : 0;
  const corners = withoutStraightPoints(continuous ? raw.slice(0, -1) : raw, continuous, shift);
  if (corners.length < (continuous ? 2 : 3)) {
    return refused({ pointer: '/outline', message: 'needs at least one bend' });
  }
  return build(corners, t, continuous, shift);
}

function pointFaults(points: readonly Corner[]): Fault[] {
  const [first, last] = [points[0], points.at(-1)];
  if (points.length < 3 || first === undefined || last === undefined) {
    return [{ pointer: '/outline', message: 'needs at least three points' }];
  }
  const faults: Fault[] = [];
  for (let i = 1; i < points.length; i++) {
    if (distance(points[i - 1]!, points[i]!) < 1e-6) {
      faults.push({ pointer: `/outline/${i}`, message: 'is the same place as the point before' });
    }
  }
  if (distance(first, last) < 1e-6) {
    faults.push({ pointer: '/outline', message: 'closes on itself: a sheet has two edges' });
  }
  return faults;
}

const distance = (a: Corner, b: Corner): number => Math.hypot(b.x - a.x, b.y - a.y);

function joins(points: readonly Corner[], repeat: number): boolean {
  const [first, last] = [points[0]!, points.at(-1)!];
  return Math.abs(last.x - first.x - repeat) < 1e-4 && Math.abs(last.y - first.y) < 1e-4;
}

/** The point `i` of a list that, when continuous, goes on one repeat to the right. */
function at(points: readonly Corner[], i: number, continuous: boolean, shift: number): Corner {
  const n = points.length;
  if (!continuous || (i >= 0 && i < n)) return points[i]!;
  const turns = Math.floor(i / n);
  const p = points[i - turns * n]!;
  return { x: p.x + turns * shift, y: p.y, R: p.R };
}

function withoutStraightPoints(points: Corner[], continuous: boolean, shift: number): Corner[] {
  return points.filter((p, i) => {
    if (!continuous && (i === 0 || i === points.length - 1)) return true;
    const before = at(points, i - 1, continuous, shift);
    const after = at(points, i + 1, continuous, shift);
    return Math.abs(turnAt(before, p, after)) > 1e-6;
  });
}

function turnAt(a: Corner, b: Corner, c: Corner): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

function build(
  corners: readonly Corner[],
  t: number,
  continuous: boolean,
  shift: number,
): Outcome<SheetShape> {
  const faults: Fault[] = [];
  const n = corners.length;
  const bends: Bend[] = [];
  const trims: number[] = [];
  let [top, bottom] = [-Infinity, Infinity];
  const reach = (high: number, low: number): void => {
    if (high > top) top = high;
    if (low < bottom) bottom = low;
  };
  const firstBend = continuous ? 0 : 1;
  const lastBend = continuous ? n - 1 : n - 2;
  for (let i = firstBend; i <= lastBend; i++) {
    const [a, b, c] = [i - 1, i, i + 1].map((k) => at(corners, k, continuous, shift)) as Three;
    const turn = turnAt(a, b, c);
    if (Math.abs(turn) > (175 * Math.PI) / 180) {
      faults.push({
        pointer: '/outline',
        message: `folds back on itself at (${b.x}, ${b.y}): give a hem as two bends`,
      });
    }
    bends.push(bend(a, b, turn, t, reach));
    trims.push((b.R + t / 2) * Math.tan(Math.abs(turn) / 2));
  }
  const flats: Flat[] = [];
  for (let i = 0; i < (continuous ? n : n - 1); i++) {
    const bendStart = i - firstBend;
    const bendEnd = continuous ? (i + 1) % n : i < n - 2 ? i : -1;
    const ends = [at(corners, i, continuous, shift), at(corners, i + 1, continuous, shift)] as Two;
    const flat = flatBetween(ends, trims[bendStart] ?? 0, trims[bendEnd] ?? 0, t);
    if (flat.w < -1e-9) {
      const [p, q] = ends;
      faults.push({
        pointer: '/outline',
        message: `the bends do not fit between (${p.x}, ${p.y}) and (${q.x}, ${q.y})`,
      });
    }
    const rise = (t / 2) * flat.cos;
    reach(Math.max(flat.y1, flat.y2) + rise, Math.min(flat.y1, flat.y2) - rise);
    flats.push({ ...flat, freeStart: bendStart < 0, freeEnd: bendEnd < 0, bendStart, bendEnd });
  }
  if (faults.length > 0) return refused(...faults);
  let developed = 0;
  for (const f of flats) developed += f.w;
  for (const b of bends) developed += b.length;
  return result({
    t,
    flats,
    bends,
    top,
    bottom,
    continuous,
    repeat: shift,
    developed: developed as Inches,
  });
}

type Two = [Corner, Corner];
type Three = [Corner, Corner, Corner];

function flatBetween([p, q]: Two, trimStart: number, trimEnd: number, t: number) {
  const length = distance(p, q);
  const [ux, uy] = [(q.x - p.x) / length, (q.y - p.y) / length];
  return {
    x1: p.x + trimStart * ux,
    y1: p.y + trimStart * uy,
    x2: q.x - trimEnd * ux,
    y2: q.y - trimEnd * uy,
    w: length - trimStart - trimEnd,
    sin: Math.abs(uy),
    cos: Math.abs(ux),
    overall: length + t,
  };
}
