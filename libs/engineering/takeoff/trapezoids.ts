// Cuts a plane with its openings into upright trapezoids: between any two neighboring corners or
// cutting lines every side is straight. What strips, courses and zones are made of. Feet.

import type { Point } from '../wind/plane-geometry.js';

/** A straight side of the outline or of an opening; it may run either way. */
export interface Straight {
  readonly from: Point;
  readonly to: Point;
}

/** Between x0 and x1: from the side below to the side above. Left may be a point, right too. */
export interface Trapezoid<S extends Straight = Straight> {
  readonly x0: number;
  readonly x1: number;
  readonly below0: number;
  readonly below1: number;
  readonly above0: number;
  readonly above1: number;
  readonly below: S;
  readonly above: S;
}

/** Corners nearer than this in x stand on one line. */
const SAME_FT = 1e-6;

/**
 * The trapezoids of sides that cross nowhere, by x and then by y; also cut at `cuts`. What is
 * inside follows the even-odd rule, so openings need no name. The areas add up to the plane's.
 */
export function trapezoids<S extends Straight>(
  sides: readonly S[],
  cuts: readonly number[],
): readonly Trapezoid<S>[] {
  const lines = standingLines(sides, cuts);
  const at = (x: number): number => lines[lineOf(lines, x)]!;
  const slanted = sides
    .map((side) =>
      side.from[0] <= side.to[0]
        ? ends(side, side.from, side.to, at)
        : ends(side, side.to, side.from, at),
    )
    .filter(({ left, right }) => left < right);
  return lines.slice(0, -1).flatMap((x0, i) => {
    const x1 = lines[i + 1]!;
    const middle = (x0 + x1) / 2;
    const crossing = slanted
      .filter(({ left, right }) => left <= x0 && right >= x1)
      .sort((p, q) => heightAt(p, middle) - heightAt(q, middle));
    return pairs(crossing).map(([low, high]) => ({
      x0,
      x1,
      below0: heightAt(low, x0),
      below1: heightAt(low, x1),
      above0: heightAt(high, x0),
      above1: heightAt(high, x1),
      below: low.side,
      above: high.side,
    }));
  });
}

export const areaOfTrapezoid = (t: Trapezoid): number =>
  ((t.x1 - t.x0) * (t.above0 - t.below0 + t.above1 - t.below1)) / 2;

interface Slanted<S> {
  readonly side: S;
  readonly left: number;
  readonly right: number;
  readonly y0: number;
  readonly y1: number;
}

const ends = <S>(side: S, p: Point, q: Point, at: (x: number) => number): Slanted<S> => ({
  side,
  left: at(p[0]),
  right: at(q[0]),
  y0: p[1],
  y1: q[1],
});

const heightAt = ({ left, right, y0, y1 }: Slanted<unknown>, x: number): number =>
  x === right ? y1 : y0 + ((x - left) / (right - left)) * (y1 - y0);

/** Every x of a corner, and the cuts between them, each once. */
function standingLines(sides: readonly Straight[], cuts: readonly number[]): readonly number[] {
  const corners = sides.map(({ from }) => from[0]);
  const [least, most] = [Math.min(...corners), Math.max(...corners)];
  const inner = cuts.filter((x) => x > least && x < most);
  const sorted = [...corners, ...inner].sort((p, q) => p - q);
  const lines: number[] = [];
  for (const x of sorted) {
    if (lines.length === 0 || x - lines.at(-1)! > SAME_FT) lines.push(x);
  }
  return lines;
}

/** The last line at or left of x. */
function lineOf(lines: readonly number[], x: number): number {
  let low = 0;
  let high = lines.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lines[middle]! <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

function pairs<T>(crossing: readonly T[]): readonly (readonly [T, T])[] {
  if (crossing.length % 2 === 1) throw new Error('the sides of a plane do not close');
  return Array.from({ length: crossing.length / 2 }, (_, i) => [
    crossing[2 * i]!,
    crossing[2 * i + 1]!,
  ]);
}
