// Convex polygons in a plane: cutting by a straight line, common part, area. Feet.

export type Point = readonly [x: number, y: number];
export type Polygon = readonly Point[];

/** A directed line: x nx + y ny - c is the distance from it, positive inside. */
export interface Line {
  readonly nx: number;
  readonly ny: number;
  readonly c: number;
}

/** The line through two points, inside to the left of the way from `p` to `q`. */
export function lineThrough([px, py]: Point, [qx, qy]: Point): Line {
  const length = Math.hypot(qx - px, qy - py);
  const nx = -(qy - py) / length;
  const ny = (qx - px) / length;
  return { nx, ny, c: nx * px + ny * py };
}

export const distance = (line: Line, [x, y]: Point): number => x * line.nx + y * line.ny - line.c;

/** The line moved inward by d. */
export const shifted = (line: Line, d: number): Line => ({ ...line, c: line.c + d });

/** The same line with its inside turned round. */
export const turned = (line: Line): Line => ({ nx: -line.nx, ny: -line.ny, c: -line.c });

const NOTHING = 1e-9;

/** The part of a convex polygon inside the line; empty where there is none. */
export function cut(polygon: Polygon, line: Line): Polygon {
  const kept: Point[] = [];
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!;
    const q = polygon[(i + 1) % polygon.length]!;
    const dp = distance(line, p);
    const dq = distance(line, q);
    if (dp >= -NOTHING) kept.push(p);
    if ((dp > NOTHING && dq < -NOTHING) || (dp < -NOTHING && dq > NOTHING)) {
      const t = dp / (dp - dq);
      kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  }
  return areaOf(kept) > 1e-6 ? kept : [];
}

/** Splits by the common inside of several lines: what is inside, and the convex rest. */
export function split(
  polygon: Polygon,
  lines: readonly Line[],
): { readonly inside: Polygon; readonly rest: readonly Polygon[] } {
  const rest: Polygon[] = [];
  let inside = polygon;
  for (const line of lines) {
    if (inside.length === 0) break;
    const outside = cut(inside, turned(line));
    if (outside.length > 0) rest.push(outside);
    inside = cut(inside, line);
  }
  return inside.length === 0 ? { inside, rest: [polygon] } : { inside, rest };
}

export function areaOf(polygon: Polygon): number {
  let twice = 0;
  for (let i = 0; i < polygon.length; i++) {
    const [px, py] = polygon[i]!;
    const [qx, qy] = polygon[(i + 1) % polygon.length]!;
    twice += px * qy - qx * py;
  }
  return Math.abs(twice) / 2;
}

/** The sides of a convex polygon as lines, inside inward, whichever way it runs. */
export function sidesOf(polygon: Polygon): readonly Line[] {
  let x = 0;
  let y = 0;
  for (const p of polygon) {
    x += p[0] / polygon.length;
    y += p[1] / polygon.length;
  }
  return polygon.map((p, i) => {
    const line = lineThrough(p, polygon[(i + 1) % polygon.length]!);
    return distance(line, [x, y]) >= 0 ? line : turned(line);
  });
}

/** The common part of two convex polygons; empty where there is none. */
export function common(a: Polygon, b: Polygon): Polygon {
  return split(a, sidesOf(b)).inside;
}
