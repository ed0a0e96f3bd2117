// A plane on the slope: its sides with kind and true length, and where it lies in plan. Feet.

import type { Fault } from '../check.js';
import { areaOf, type Point, type Polygon } from '../wind/plane-geometry.js';
import { outlineFaults, type Outline } from './outline.js';
import type { EdgeKind, PlaneRequest, Start } from './request.js';

export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly edge: EdgeKind;
  readonly joint: string | null;
  /** True length on the slope. */
  readonly length_ft: number;
}

export interface Plane {
  readonly name: string;
  readonly lies: 'roof' | 'wall';
  /** Length on the slope by length in plan, along the fall; 1 for a wall. */
  readonly slopeFactor: number;
  readonly outline: Polygon;
  readonly openings: readonly { readonly name: string; readonly outline: Polygon }[];
  /** Of the outline first, then of the openings. */
  readonly sides: readonly Side[];
  readonly area_ft2: number;
  readonly openings_ft2: number;
  readonly start: Start;
  readonly request: PlaneRequest;
}

/** sqrt(1 + (rise / 12)^2): a length up the slope by its length in plan. */
export const slopeFactor = (rise_per_12: number): number => Math.hypot(1, rise_per_12 / 12);

/** Reads one plane; every fault is added to `faults`. */
export function readPlane(request: PlaneRequest, at: string, faults: Fault[]): Plane | null {
  const { name, lies, rise_per_12 } = request;
  const own: Fault[] = [];
  if (lies === 'roof' && rise_per_12 === undefined) {
    own.push({ pointer: `${at}/rise_per_12`, message: `is missing: ${name} is a roof` });
  }
  if (lies === 'wall' && rise_per_12 !== undefined) {
    own.push({ pointer: `${at}/rise_per_12`, message: `does not belong here: ${name} is a wall` });
  }
  if (lies === 'wall' && request.measured === 'in-plan') {
    own.push({ pointer: `${at}/measured`, message: `must be on-slope: ${name} is a wall` });
  }
  const factor = rise_per_12 === undefined ? 1 : slopeFactor(rise_per_12);
  const stretch = request.measured === 'in-plan' ? factor : 1;
  const placed = (corners: PlaneRequest['outline']): Polygon =>
    corners.map(({ x_ft, y_ft }): Point => [x_ft, y_ft * stretch]);
  const outline: Outline = { pointer: `${at}/outline`, name, points: placed(request.outline) };
  const openings = request.openings.map((each, i): Outline => ({
    pointer: `${at}/openings/${i}/outline`,
    name: each.name,
    points: placed(each.outline),
  }));
  own.push(...outlineFaults(outline, openings));
  faults.push(...own);
  if (own.length > 0) return null;
  const openings_ft2 = openings.reduce((sum, { points }) => sum + areaOf(points), 0);
  return {
    name,
    lies,
    slopeFactor: factor,
    outline: outline.points,
    openings: openings.map((each) => ({ name: each.name, outline: each.points })),
    sides: [
      ...sidesWith(outline.points, request.outline),
      ...openings.flatMap(({ points }, i) => sidesWith(points, request.openings[i]!.outline)),
    ],
    area_ft2: areaOf(outline.points) - openings_ft2,
    openings_ft2,
    start: request.start,
    request,
  };
}

function sidesWith(points: Polygon, corners: PlaneRequest['outline']): readonly Side[] {
  return corners.map(({ edge, joint }, i) => {
    const from = points[i]!;
    const to = points[(i + 1) % points.length]!;
    const length_ft = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return { from, to, edge, joint: joint ?? null, length_ft };
  });
}

/** A point of the plane in the plan of the zone layout; null where the plane has no place there. */
export function inPlan(plane: Plane): ((point: Point) => Point) | null {
  const { place } = plane.request;
  if (place === undefined || plane.lies === 'wall') return null;
  const angle = (place.turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([x, y]) => {
    const run = y / plane.slopeFactor;
    return [place.x_ft + x * cos - run * sin, place.y_ft + x * sin + run * cos];
  };
}
