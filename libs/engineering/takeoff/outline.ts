// Faults of an outline or opening: a polygon that crosses or touches itself, an opening that is not
// wholly inside, openings that overlap. Feet.

import type { Fault } from '../check.js';
import { areaOf, type Point, type Polygon } from '../wind/plane-geometry.js';

/** What is nearer than this counts as touching: about an eightieth of an inch. */
export const NEAR_FT = 1e-3;

export interface Outline {
  readonly pointer: string;
  readonly name: string;
  readonly points: Polygon;
}

type Segment = readonly [Point, Point];

const sidesOf = (points: Polygon): readonly Segment[] =>
  points.map((p, i) => [p, points[(i + 1) % points.length]!]);

/** Every fault of one plane's outline with its openings. */
export function outlineFaults(outline: Outline, openings: readonly Outline[]): readonly Fault[] {
  const own = [outline, ...openings].flatMap(ownFaults);
  if (own.length > 0) return own;
  const sides = sidesOf(outline.points);
  const faults: Fault[] = [];
  openings.forEach((opening, i) => {
    const { pointer, points, name } = opening;
    if (meets(sidesOf(points), sides) || !isInside(points[0]!, outline.points)) {
      faults.push({
        pointer,
        message: `${name} must lie inside ${outline.name}; at its edge, draw it as part of the outline`,
      });
    }
    for (const other of openings.slice(0, i)) {
      const overlap =
        meets(sidesOf(points), sidesOf(other.points)) ||
        isInside(points[0]!, other.points) ||
        isInside(other.points[0]!, points);
      if (overlap) faults.push({ pointer, message: `${name} overlaps or touches ${other.name}` });
    }
  });
  return faults;
}

function ownFaults({ pointer, points, name }: Outline): readonly Fault[] {
  const sides = sidesOf(points);
  const faults: Fault[] = [];
  sides.forEach(([p, q], i) => {
    const at = `${pointer}/${i}`;
    if (Math.hypot(q[0] - p[0], q[1] - p[1]) < NEAR_FT) {
      faults.push({
        pointer: at,
        message: `corners ${i + 1} and ${next(i, points) + 1} of ${name} are the same`,
      });
      return;
    }
    if (turnsBack(p, q, points[(i + 2) % points.length]!)) {
      faults.push({
        pointer: at,
        message: `${name} turns back on itself after corner ${next(i, points) + 1}`,
      });
    }
    for (let j = i + 2; j < sides.length; j++) {
      if (i === 0 && j === sides.length - 1) continue;
      if (gap(sides[i]!, sides[j]!) < NEAR_FT) {
        faults.push({
          pointer: at,
          message: `sides ${i + 1} and ${j + 1} of ${name} cross or touch`,
        });
      }
    }
  });
  if (faults.length === 0 && areaOf(points) < NEAR_FT) {
    faults.push({ pointer, message: `${name} has no area` });
  }
  return faults;
}

const next = (i: number, points: Polygon): number => (i + 1) % points.length;

function turnsBack(p: Point, q: Point, r: Point): boolean {
  const [ax, ay, bx, by] = [q[0] - p[0], q[1] - p[1], r[0] - q[0], r[1] - q[1]];
  return ax * bx + ay * by < 0 && distanceTo(r, [p, q]) < NEAR_FT;
}

const meets = (some: readonly Segment[], others: readonly Segment[]): boolean =>
  some.some((one) => others.some((other) => gap(one, other) < NEAR_FT));

/** Distance between two segments; 0 where they cross. */
function gap(one: Segment, other: Segment): number {
  const [p, q] = one;
  const [r, s] = other;
  if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) return 0;
  return Math.min(
    distanceTo(p, other),
    distanceTo(q, other),
    distanceTo(r, one),
    distanceTo(s, one),
  );
}

const side = (p: Point, q: Point, r: Point): number =>
  Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));

function distanceTo([x, y]: Point, [p, q]: Segment): number {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const along = ((x - p[0]) * dx + (y - p[1]) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - p[0] - t * dx, y - p[1] - t * dy);
}

/** Even-odd rule. */
export function isInside([x, y]: Point, points: Polygon): boolean {
  let inside = false;
  for (const [[px, py], [qx, qy]] of sidesOf(points)) {
    if (py > y !== qy > y && x < px + ((y - py) / (qy - py)) * (qx - px)) inside = !inside;
  }
  return inside;
}
