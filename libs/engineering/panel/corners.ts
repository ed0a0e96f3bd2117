// Corners of an outline as entered, checked: faults named, points without a bend dropped, and the
// two ends joined where the outline repeats.

import { refused, result, type Fault, type Outcome } from '../check.js';
import type { Inches } from '../units.js';

/** A corner of the mid-line; without an inside radius the bend is square (inside radius 0). */
export interface OutlinePoint {
  readonly x: Inches;
  readonly y: Inches;
  readonly insideRadius?: Inches;
}

export interface Corner {
  readonly x: number;
  readonly y: number;
  /** Inside radius of its bend. */
  readonly R: number;
}

/**
 * From edge to edge; where continuous, from the last corner of the outline before to the first of
 * the one after, so that every corner but the first and the last has its two neighbors.
 */
export interface Path {
  readonly corners: readonly Corner[];
  readonly continuous: boolean;
  /** From one outline to the next, with its sign; 0 where not continuous. */
  readonly shift: number;
}

export function readCorners(points: readonly OutlinePoint[], repeat?: Inches): Outcome<Path> {
  const faults = pointFaults(points);
  if (faults.length > 0) return refused(...faults);
  const [first, last] = [points[0]!, points.at(-1)!];
  const across = last.x - first.x;
  const continuous =
    repeat !== undefined &&
    Math.abs(Math.abs(across) - repeat) < 1e-4 &&
    Math.abs(last.y - first.y) < 1e-4;
  const shift = continuous ? across : 0;
  const raw = points.map((p) => ({ x: p.x, y: p.y, R: p.insideRadius ?? 0 }));
  const bent = withoutStraightPoints(continuous ? joined(raw.slice(0, -1), shift) : raw);
  if (bent.length < 3) {
    return refused({ pointer: '/outline', message: 'needs at least one bend' });
  }
  const corners = continuous ? joined(bent.slice(1, -1), shift) : bent;
  return result({ corners, continuous, shift });
}

function pointFaults(points: readonly OutlinePoint[]): Fault[] {
  if (points.length < 3) return [{ pointer: '/outline', message: 'needs at least three points' }];
  const faults: Fault[] = [];
  for (let i = 1; i < points.length; i++) {
    if (samePlace(points[i - 1]!, points[i]!)) {
      faults.push({ pointer: `/outline/${i}`, message: 'is the same place as the point before' });
    }
  }
  if (samePlace(points[0]!, points.at(-1)!)) {
    faults.push({ pointer: '/outline', message: 'closes on itself: a sheet has two edges' });
  }
  return faults;
}

const samePlace = (a: OutlinePoint, b: OutlinePoint): boolean =>
  Math.abs(a.x - b.x) < 1e-6 && Math.abs(a.y - b.y) < 1e-6;

/** The corners with the neighbor outlines' nearest corner at either end. */
function joined(corners: readonly Corner[], shift: number): Corner[] {
  const [first, last] = [corners[0]!, corners.at(-1)!];
  return [{ ...last, x: last.x - shift }, ...corners, { ...first, x: first.x + shift }];
}

function withoutStraightPoints(corners: readonly Corner[]): Corner[] {
  const last = corners.length - 1;
  return corners.filter(
    (p, i) => i === 0 || i === last || Math.abs(turnAt(corners[i - 1]!, p, corners[i + 1]!)) > 1e-6,
  );
}

/** Signed turn at b, radians; left is positive. */
export function turnAt(a: Corner, b: Corner, c: Corner): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}
