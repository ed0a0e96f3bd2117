// The cut list of one plane as data that a drawing can draw: outline, openings, strips with their
// polygons and the pieces of each. Feet on the slope, x along the eave, y up the slope.

import type { Point, Polygon } from '../wind/plane-geometry.js';
import type { Piece, Pieced } from './pieces.js';
import type { Plane } from './plane.js';
import type { EdgeKind } from './request.js';
import { polygonsOf } from './strips.js';

export interface CutSide {
  readonly from: Point;
  readonly to: Point;
  readonly edge: EdgeKind;
  readonly length_ft: number;
}

export interface CutRun {
  /** The covered part: one polygon, or several that touch where it goes round an opening. */
  readonly polygons: readonly Polygon[];
  readonly area_ft2: number;
  /** From below; as laid and as ordered. */
  readonly pieces: readonly Piece[];
}

export interface CutStrip {
  /** From the left, from 1. */
  readonly number: number;
  readonly left_ft: number;
  readonly right_ft: number;
  readonly runs: readonly CutRun[];
}

export interface CutList {
  readonly outline: Polygon;
  readonly openings: readonly { readonly name: string; readonly outline: Polygon }[];
  readonly sides: readonly CutSide[];
  readonly strips: readonly CutStrip[];
  /** Heights of end laps: lower ends of the upper pieces. */
  readonly laps_ft: readonly number[];
}

export function cutList(
  plane: Plane,
  lines: readonly number[],
  { runs, laps_ft }: Pieced,
): CutList {
  const byStrip: CutRun[][] = lines.slice(1).map(() => []);
  for (const { run, pieces } of runs)
    byStrip[run.strip]?.push({ polygons: polygonsOf(run), area_ft2: run.area_ft2, pieces });
  return {
    outline: plane.outline,
    openings: plane.openings,
    sides: plane.sides.map(({ from, to, edge, length_ft }) => ({ from, to, edge, length_ft })),
    strips: lines.slice(1).map((right_ft, strip) => ({
      number: strip + 1,
      left_ft: lines[strip]!,
      right_ft,
      runs: byStrip[strip] ?? [],
    })),
    laps_ft,
  };
}
