// Strips of one coverage width, and the runs of panel in each: connected parts that one panel, cut
// to shape, can cover. Feet.

import type { Polygon, Point } from '../wind/plane-geometry.js';
import type { Start } from './request.js';
import { areaOfTrapezoid, trapezoids, type Straight, type Trapezoid } from './trapezoids.js';

export interface Run<S extends Straight = Straight> {
  /** Index of the strip from the left, from 0. */
  readonly strip: number;
  /** From the left; neighbors touch along an upright line. */
  readonly parts: readonly Trapezoid<S>[];
  readonly area_ft2: number;
}

export interface Strips<S extends Straight = Straight> {
  /** Boundaries of the strips, from left to right; one more than strips. */
  readonly lines: readonly number[];
  readonly runs: readonly Run<S>[];
}

/** Lays strips of `cover` over a plane and finds the runs in each. */
export function stripsOf<S extends Straight>(
  sides: readonly S[],
  cover: number,
  start: Start,
): Strips<S> {
  const lines = linesOf(sides, cover, start);
  const byStrip: Trapezoid<S>[][] = lines.slice(1).map(() => []);
  for (const part of trapezoids(sides, lines)) {
    const strip = Math.floor(((part.x0 + part.x1) / 2 - lines[0]!) / cover);
    byStrip[Math.min(strip, byStrip.length - 1)]!.push(part);
  }
  return { lines, runs: byStrip.flatMap(runsIn) };
}

/** How little of a last strip is no strip: a hair over a full coverage is not one more panel. */
const SLIVER = 1e-6;

/** From the left, from the right, or with equal parts of a strip at both ends. */
function linesOf(sides: readonly Straight[], cover: number, start: Start): readonly number[] {
  const xs = sides.map(({ from }) => from[0]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const count = Math.max(1, Math.ceil((right - left) / cover - SLIVER));
  const over = count * cover - (right - left);
  const first = { left, right: left - over, centered: left - over / 2 }[start];
  return Array.from({ length: count + 1 }, (_, i) => first + i * cover);
}

const TOUCH_FT = 1e-6;

/** Whether two parts have more than a point in common; `p` is left of `q`. */
const touch = (p: Trapezoid, q: Trapezoid): boolean =>
  p.x1 === q.x0 && Math.min(p.above1, q.above0) - Math.max(p.below1, q.below0) > TOUCH_FT;

function runsIn<S extends Straight>(
  parts: readonly Trapezoid<S>[],
  strip: number,
): readonly Run<S>[] {
  let groups: (readonly Trapezoid<S>[])[] = [];
  for (const part of parts) {
    const joined = groups.filter((group) => group.some((each) => touch(each, part)));
    const others = groups.filter((group) => !joined.includes(group));
    groups = [...others, [...joined.flat(), part]];
  }
  return groups
    .map((group) => group.toSorted((p, q) => p.x0 - q.x0 || p.below0 - q.below0))
    .map((group) => ({
      strip,
      parts: group,
      area_ft2: group.reduce((sum, part) => sum + areaOfTrapezoid(part), 0),
    }))
    .filter(({ area_ft2 }) => area_ft2 > 1e-9)
    .sort((p, q) => p.parts[0]!.below0 - q.parts[0]!.below0);
}

/** Lengths of the laps of neighboring strips, from one corner or edge to the next. */
export function sideLaps(runs: readonly Run[]): readonly number[] {
  const starting = new Map<number, { strip: number; part: Trapezoid }[]>();
  for (const { strip, parts } of runs) {
    for (const part of parts) {
      const known = starting.get(part.x0);
      if (known) known.push({ strip, part });
      else starting.set(part.x0, [{ strip, part }]);
    }
  }
  return runs
    .flatMap(({ strip, parts }) =>
      parts.flatMap((part) =>
        (starting.get(part.x1) ?? [])
          .filter((right) => right.strip === strip + 1)
          .map(
            (right) =>
              Math.min(part.above1, right.part.above0) - Math.max(part.below1, right.part.below0),
          ),
      ),
    )
    .filter((length) => length > TOUCH_FT);
}

/**
 * The outline of a run for drawing, counter-clockwise: one polygon, or several that touch where the
 * run goes round an opening.
 */
export function polygonsOf({ parts }: Run): readonly Polygon[] {
  const after = parts.map((part) => parts.filter((each) => touch(part, each)));
  const before = parts.map((part) => parts.filter((each) => touch(each, part)));
  const follows = (i: number): number => {
    const only = after[i]!.length === 1 ? parts.indexOf(after[i]![0]!) : -1;
    return only >= 0 && before[only]!.length === 1 ? only : -1;
  };
  const polygons: Polygon[] = [];
  const done = new Set<number>();
  parts.forEach((_, first) => {
    if (done.has(first)) return;
    const chain: Trapezoid[] = [];
    for (let i = first; i >= 0; i = follows(i)) {
      done.add(i);
      chain.push(parts[i]!);
    }
    polygons.push(chainOutline(chain));
  });
  return polygons;
}

function chainOutline(chain: readonly Trapezoid[]): Polygon {
  const low = chain.flatMap((t): Point[] => [
    [t.x0, t.below0],
    [t.x1, t.below1],
  ]);
  const high = chain.flatMap((t): Point[] => [
    [t.x0, t.above0],
    [t.x1, t.above1],
  ]);
  return withoutStraightCorners([...low, ...high.reverse()]);
}

function withoutStraightCorners(points: readonly Point[]): Polygon {
  const distinct = points.filter((p, i) => {
    const q = points[(i + 1) % points.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-9;
  });
  return distinct.filter((q, i) => {
    const p = distinct[(i + distinct.length - 1) % distinct.length]!;
    const r = distinct[(i + 1) % distinct.length]!;
    return Math.abs((q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0])) > 1e-9;
  });
}
