// Clips or screws by zone spacing: rows along each run of panel, in the zones that it lies under.

import { common, sidesOf, areaOf, split, type Line, type Point, type Polygon } from '../wind/plane-geometry.js';
import type { ZonePiece } from '../wind/zone-layout.js';
import type { Part } from '../wind/zone-pressure.js';
import { inPlan, type Plane } from './plane.js';
import type { AttachmentRequest } from './request.js';
import type { Run } from './strips.js';
import type { Trapezoid } from './trapezoids.js';

type ZoneSpacing = AttachmentRequest['zones'][number];

/** Stands for every zone that is not named by itself. */
export const EVERY_ZONE = 'all';

export interface ZoneRows {
  readonly zone: string;
  readonly rows: number;
  readonly count: number;
}

/** A stretch of a run, along the slope, that has one spacing. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly spacing: ZoneSpacing;
}

interface LaidZone {
  readonly zone: string;
  readonly lines: readonly Line[];
}

/** Zones over a plane: of the layout in plan, or none where the plane has no place in it. */
export function zonesOver(plane: Plane, layout: readonly ZonePiece[]): readonly LaidZone[] {
  if (inPlan(plane) === null) return [];
  return layout
    .filter(({ part }) => part !== 'wall')
    .map(({ zone, polygon }) => ({ zone, lines: sidesOf(polygon) }));
}

export const spacingFor = (attachment: AttachmentRequest, zone: string): ZoneSpacing | undefined =>
  attachment.zones.find((each) => each.zone === zone) ??
  attachment.zones.find((each) => each.zone === EVERY_ZONE);

/** The spacing with the most fasteners: what counts where the zone is not known. */
export const closest = ({ zones }: AttachmentRequest): ZoneSpacing =>
  zones.reduce((most, each) => (density(each) > density(most) ? each : most));

const density = ({ spacing_in, per_row }: ZoneSpacing): number => per_row / spacing_in;

/**
 * Rows of one run, by zone. Where it lies under several zones side by side the closest spacing
 * counts, as it does where no zone is known. Each stretch of length L takes ceil(L / spacing) rows,
 * and one row closes the upper end, so that no gap is over the spacing.
 */
export function rowsOf(
  run: Run,
  plane: Plane,
  zones: readonly LaidZone[],
  attachment: AttachmentRequest,
): readonly ZoneRows[] {
  const stretches = stretchesOf(run, plane, zones, attachment);
  return stretches.map(({ from, to, spacing }, i) => {
    const closing = i === stretches.length - 1 ? 1 : 0;
    const rows = Math.ceil((12 * (to - from)) / spacing.spacing_in - 1e-6) + closing;
    return { zone: spacing.zone, rows, count: rows * spacing.per_row };
  });
}

function stretchesOf(
  run: Run,
  plane: Plane,
  zones: readonly LaidZone[],
  attachment: AttachmentRequest,
): readonly Stretch[] {
  const low = Math.min(...run.parts.map((t) => Math.min(t.below0, t.below1)));
  const high = Math.max(...run.parts.map((t) => Math.max(t.above0, t.above1)));
  const under = run.parts.flatMap((part) => zoneReaches(part, plane, zones));
  const heights = [low, high, ...under.flatMap(({ from, to }) => [from, to])]
    .filter((y) => y >= low && y <= high)
    .sort((p, q) => p - q);
  const stretches: Stretch[] = [];
  for (let i = 1; i < heights.length; i++) {
    const [from, to] = [heights[i - 1]!, heights[i]!];
    if (to - from < 1e-6) continue;
    const middle = (from + to) / 2;
    const here = under
      .filter((each) => each.from < middle && each.to > middle)
      .map(({ zone }) => spacingFor(attachment, zone) ?? closest(attachment));
    const spacing = here.reduce<ZoneSpacing | null>(
      (most, each) => (most === null || density(each) > density(most) ? each : most),
      null,
    );
    lengthen(stretches, { from, to, spacing: spacing ?? closest(attachment) });
  }
  return stretches;
}

function lengthen(stretches: Stretch[], next: Stretch): void {
  const last = stretches.at(-1);
  if (last?.spacing === next.spacing) stretches[stretches.length - 1] = { ...last, to: next.to };
  else stretches.push(next);
}

/** Where along the slope a part lies under each zone. */
function zoneReaches(
  part: Trapezoid,
  plane: Plane,
  zones: readonly LaidZone[],
): readonly { readonly zone: string; readonly from: number; readonly to: number }[] {
  const place = inPlan(plane);
  if (place === null) return [];
  const polygon = cornersOf(part).map(place);
  const up = place([0, plane.slopeFactor]);
  const foot = place([0, 0]);
  const height = ([x, y]: Point): number =>
    ((x - foot[0]) * (up[0] - foot[0]) + (y - foot[1]) * (up[1] - foot[1])) * plane.slopeFactor;
  return zones.flatMap(({ zone, lines }) => {
    const heights = split(polygon, lines).inside.map(height);
    return heights.length === 0
      ? []
      : [{ zone, from: Math.min(...heights), to: Math.max(...heights) }];
  });
}

const cornersOf = (t: Trapezoid): Polygon => [
  [t.x0, t.below0],
  [t.x1, t.below1],
  [t.x1, t.above1],
  [t.x0, t.above0],
];

export interface ZoneArea {
  readonly zone: string;
  readonly part: Part;
  /** On the slope. */
  readonly area_ft2: number;
}

/** The zones that a plane lies under, with its area on the slope in each, largest first. */
export function zoneAreas(
  plane: Plane,
  runs: readonly Run[],
  layout: readonly ZonePiece[],
): readonly ZoneArea[] {
  const place = inPlan(plane);
  if (place === null) return [];
  const found = new Map<string, { zone: string; part: Part; area_ft2: number }>();
  const polygons = runs.flatMap(({ parts }) => parts).map((part) => cornersOf(part).map(place));
  for (const { zone, part, polygon } of layout) {
    if (part === 'wall') continue;
    const area = polygons.reduce((sum, each) => sum + areaOf(common(each, polygon)), 0);
    if (area < 1e-3) continue;
    const known = found.get(`${part} ${zone}`) ?? { zone, part, area_ft2: 0 };
    known.area_ft2 += area * plane.slopeFactor;
    found.set(`${part} ${zone}`, known);
  }
  return [...found.values()].sort((p, q) => q.area_ft2 - p.area_ft2);
}
