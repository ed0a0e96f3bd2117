// What goes with the panels along edges and under them: closures, sealant, underlayment.

import { panelSideLength, type EdgeRun } from './edges.js';
import type { Plane } from './plane.js';
import type { TakeOffRequest } from './request.js';
import { stripsOf } from './strips.js';
import type { Trapezoid } from './trapezoids.js';

export interface CountedLine {
  readonly name: string;
  /** Along edges and in laps; of underlayment, along its courses. */
  readonly length_ft: number;
  readonly count: number;
}

const whole = (n: number): number => Math.ceil(n - 1e-6);

/** Closures along the panels' sides of edges: a ridge takes them on both planes. */
export function closureLine(
  { name, edges, length_in }: TakeOffRequest['closures'][number],
  planes: readonly Plane[],
): CountedLine {
  const length_ft = panelSideLength(planes, edges);
  return { name, length_ft, count: whole((12 * length_ft) / length_in) };
}

/** Laps of all panels, ft: ends of one on another, and sides of neighboring panels. */
export interface Laps {
  readonly end_ft: number;
  readonly side_ft: number;
}

export function sealantLine(
  sealant: TakeOffRequest['sealants'][number],
  planes: readonly Plane[],
  laps: Laps,
): CountedLine {
  const length_ft =
    panelSideLength(planes, sealant.edges) +
    (sealant.end_laps ? laps.end_ft : 0) +
    (sealant.side_laps ? laps.side_ft : 0);
  return { name: sealant.name, length_ft, count: whole(length_ft / sealant.roll_ft) };
}

/**
 * Rolls of underlayment. Over the whole plane it lies in courses along the eave, each lapped on the
 * one below; openings are not deducted. Along edges it lies in the courses asked for. Every roll
 * loses one end lap.
 */
export function underlaymentLine(
  underlayment: TakeOffRequest['underlayments'][number],
  planes: readonly Plane[],
  runs: readonly EdgeRun[],
): CountedLine {
  const { name, roll_width_in, side_lap_in, roll_length_ft, end_lap_in, along } = underlayment;
  const length_ft =
    along === undefined
      ? planes.reduce((sum, plane) => sum + coursesOf(plane, (roll_width_in - side_lap_in) / 12), 0)
      : runs
          .filter(({ edge }) => along.edges.includes(edge))
          .reduce((sum, each) => sum + along.courses * each.length_ft, 0);
  return { name, length_ft, count: whole(length_ft / (roll_length_ft - end_lap_in / 12)) };
}

/** Length of all courses of a plane: strips of the plane with x and y exchanged. */
function coursesOf({ outline }: Plane, width_ft: number): number {
  const sides = outline.map(([x, y], i) => {
    const [x2, y2] = outline[(i + 1) % outline.length]!;
    return { from: [y, x], to: [y2, x2] } as const;
  });
  const { runs } = stripsOf(sides, width_ft, 'left');
  return runs.reduce((sum, { parts }) => sum + longestOf(parts), 0);
}

function longestOf(parts: readonly Trapezoid[]): number {
  const low = Math.min(...parts.map((t) => Math.min(t.below0, t.below1)));
  const high = Math.max(...parts.map((t) => Math.max(t.above0, t.above1)));
  return high - low;
}
