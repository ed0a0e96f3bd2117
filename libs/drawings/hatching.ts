// Hatching of convex polygons as plain lines: it prints, needs no id, and grows denser by level.

import { n, path, STROKES, type Point } from './svg.js';

const STEPS = [0, 20, 12, 7, 8, 5] as const;

/** Level 0 is blank; 1 to 5 grow denser; from 4 on the lines cross. */
export function hatched(polygon: readonly Point[], level: number): string {
  if (level <= 0) return '';
  const step = STEPS[Math.min(level, 5)] ?? 5;
  const one = lines(polygon, step, 1);
  const other = level >= 4 ? lines(polygon, step, -1) : '';
  return path(one + other, STROKES.hatch);
}

/** Lines y = slope x + c inside a convex polygon, as path data. */
function lines(polygon: readonly Point[], step: number, slope: 1 | -1): string {
  const offsets = polygon.map(([x, y]) => y - slope * x);
  const gap = step;
  const first = Math.ceil(Math.min(...offsets) / gap) * gap;
  const parts: string[] = [];
  for (let c = first; c < Math.max(...offsets); c += gap) {
    const [a, b] = crossings(polygon, slope, c);
    if (a && b) parts.push(`M${n(a[0])} ${n(a[1])}L${n(b[0])} ${n(b[1])}`);
  }
  return parts.join('');
}

function crossings(polygon: readonly Point[], slope: number, c: number): readonly Point[] {
  const found: Point[] = [];
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length] ?? [x1, y1];
    const [d1, d2] = [y1 - slope * x1 - c, y2 - slope * x2 - c];
    if (d1 < 0 === d2 < 0) return;
    const t = d1 / (d1 - d2);
    found.push([x1 + t * (x2 - x1), y1 + t * (y2 - y1)]);
  });
  return found;
}

/** The middle of a polygon's corners, where its label stands. */
export function middle(polygon: readonly Point[]): Point {
  let [area, cx, cy] = [0, 0, 0];
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length] ?? [x1, y1];
    const cross = x1 * y2 - x2 * y1;
    area += cross;
    cx += (x1 + x2) * cross;
    cy += (y1 + y2) * cross;
  });
  if (Math.abs(area) < 1e-9) return polygon[0] ?? [0, 0];
  return [cx / (3 * area), cy / (3 * area)];
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    low: Math.min(...ys),
    high: Math.max(...ys),
  };
}
