// The wind zones that the runs of a plane lie under: where along the slope, and with what area.

import {
  areaOf,
  sidesOf,
  split,
  type Line,
  type Point,
  type Polygon,
} from '../wind/plane-geometry.js';
import type { ZonePiece } from '../wind/zone-piece.js';
import type { Part } from '../wind/zone-pressure.js';
import { inPlan, type Plane } from './plane.js';
import type { Run } from './strips.js';
import type { Trapezoid } from './trapezoids.js';

/** A zone over one part of a run, between two heights on the slope. */
export interface ZoneReach {
  readonly zone: string;
  readonly part: Part;
  readonly from: number;
  readonly to: number;
  /** On the slope. */
  readonly area_ft2: number;
}

export interface ZoneArea {
  readonly zone: string;
  readonly part: Part;
  /** On the slope. */
  readonly area_ft2: number;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}
interface LaidZone extends Box {
  readonly piece: ZonePiece;
  readonly lines: readonly Line[];
}

/** By run; nothing for a wall or a plane that has no place in the plan of the layout. */
export function zoneReaches(
  plane: Plane,
  runs: readonly Run[],
  layout: readonly ZonePiece[],
): readonly (readonly ZoneReach[])[] {
  const place = inPlan(plane);
  if (place === null || layout.length === 0) return runs.map(() => []);
  const zones = layout
    .filter(({ part }) => part !== 'wall')
    .map((piece) => ({ piece, lines: sidesOf(piece.polygon), ...boxOf(piece.polygon) }));
  const height = heightOf(place, plane.slopeFactor);
  return runs.map(({ parts }) =>
    parts.flatMap((part) =>
      reachesOf(cornersOf(part).map(place), zones, height, plane.slopeFactor),
    ),
  );
}

function reachesOf(
  polygon: Polygon,
  zones: readonly LaidZone[],
  height: (point: Point) => number,
  slopeFactor: number,
): readonly ZoneReach[] {
  const box = boxOf(polygon);
  return zones.flatMap((zone) => {
    if (apart(box, zone)) return [];
    const { inside } = split(polygon, zone.lines);
    if (inside.length === 0) return [];
    const heights = inside.map(height);
    return {
      zone: zone.piece.zone,
      part: zone.piece.part,
      from: Math.min(...heights),
      to: Math.max(...heights),
      area_ft2: areaOf(inside) * slopeFactor,
    };
  });
}

/** From a point in plan back to its height on the slope. */
function heightOf(place: (point: Point) => Point, slopeFactor: number): (point: Point) => number {
  const foot = place([0, 0]);
  const up = place([0, slopeFactor]);
  const [nx, ny] = [up[0] - foot[0], up[1] - foot[1]];
  return ([x, y]) => ((x - foot[0]) * nx + (y - foot[1]) * ny) * slopeFactor;
}

const cornersOf = (t: Trapezoid): Polygon => [
  [t.x0, t.below0],
  [t.x1, t.below1],
  [t.x1, t.above1],
  [t.x0, t.above0],
];

function boxOf(polygon: Polygon): Box {
  const xs = polygon.map(([x]) => x);
  const ys = polygon.map(([, y]) => y);
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    low: Math.min(...ys),
    high: Math.max(...ys),
  };
}

const apart = (p: Box, q: Box): boolean =>
  p.right <= q.left || q.right <= p.left || p.high <= q.low || q.high <= p.low;

/** Summed by zone, largest first. */
export function zoneAreas(reaches: readonly (readonly ZoneReach[])[]): readonly ZoneArea[] {
  const found = new Map<string, { zone: string; part: Part; area_ft2: number }>();
  for (const { zone, part, area_ft2 } of reaches.flat()) {
    const known = found.get(`${part} ${zone}`);
    if (known) known.area_ft2 += area_ft2;
    else found.set(`${part} ${zone}`, { zone, part, area_ft2 });
  }
  return [...found.values()].sort((p, q) => q.area_ft2 - p.area_ft2);
}
