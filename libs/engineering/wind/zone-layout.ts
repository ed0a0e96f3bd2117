// The wind zones of a building to scale, in feet: roof and overhang in plan, walls in elevation.
// For drawing, and for finding the zones under a panel strip.

import { TO_BE_CONFIRMED } from '../check.js';
import type { AsceEdition } from '../sources.js';
import type { Degrees, Feet } from '../units.js';
import { dimensionA } from './areas.js';
import { areaOf, common, shifted, sidesOf, split, turned } from './plane-geometry.js';
import type { Line, Point, Polygon } from './plane-geometry.js';
import { planFor } from './roof-plan.js';
import type { RoofShape } from './roof-figure.js';
import { roofPlanes, type RoofPlane } from './roof-planes.js';
import { wallLayout } from './wall-layout.js';
import type { Edge, ZonePlan } from './zone-plans.table.js';
import type { ZonePiece } from './zone-piece.js';
import type { Part } from './zone-pressure.js';

export interface LayoutInput {
  readonly edition: AsceEdition;
  /** Mean roof height. */
  readonly h: Feet;
  readonly roof: {
    readonly shape: RoofShape;
    readonly theta: Degrees;
    /** Least horizontal dimension of the building, without overhangs. */
    readonly width: Feet;
    readonly length: Feet;
    /** Which of the two the slope runs along: the ridge of a gable lies across it. */
    readonly falls: 'along-width' | 'along-length';
    /** Horizontal overhang all round; 0 for none. */
    readonly overhang: Feet;
  };
  /** Wall height at the (low) eave. */
  readonly eaveHeight: Feet;
}

/**
 * Every zone as convex pieces that together cover roof, overhang and walls once. Strips are
 * measured from the roof's outer edge in 7-22, in earlier editions the overhang is added to them
 * (larger). One wall of each kind is given. Hips are drawn with equal slopes.
 */
export function zoneLayout(input: LayoutInput): readonly ZonePiece[] {
  const { edition, h, roof } = input;
  const { shape, width, length, theta, overhang } = roof;
  const along = roof.falls === 'along-width';
  const [X, Y] = along ? [length, width] : [width, length];
  const a = dimensionA(edition, width, h, theta);
  const { plan, laidAs } = planFor(edition, shape, theta);
  const planes = roofPlanes(laidAs, X + 2 * overhang, Y + 2 * overhang);
  const unit = plan.unit === 'a' ? a : h;
  const added = edition === '7-22' ? 0 : overhang;
  const walls = sidesOf([
    [0, 0],
    [X, 0],
    [X, Y],
    [0, Y],
  ]);
  const place = (polygon: Polygon): Polygon =>
    polygon.map(([x, y]): Point => [x - overhang, y - overhang]);
  const roofPieces = planes
    .flatMap((each) => piecesOf(each, plan, unit, added))
    .flatMap((piece) => {
      const { inside, rest } = split(place(piece.polygon), walls);
      return [
        ...(inside.length > 0 ? [{ ...piece, part: 'roof' as const, polygon: inside }] : []),
        ...(overhang > 0 ? rest : []).map((polygon) => ({
          ...piece,
          part: 'overhang' as const,
          polygon,
        })),
      ];
    })
    .map((piece) => (along ? piece : { ...piece, polygon: mirrored(piece.polygon) }));
  return [...roofPieces, ...wallLayout({ shape, theta, X, Y, eaveHeight: input.eaveHeight, a })];
}

/** What of the layout has still to be seen in the standard. */
export function zoneLayoutNotes(input: LayoutInput): readonly string[] {
  const { plan } = planFor(input.edition, input.roof.shape, input.roof.theta);
  return [
    ...(plan.unconfirmed === undefined ? [] : [`${plan.unconfirmed}: ${TO_BE_CONFIRMED}`]),
    ...(input.edition !== '7-22' && input.roof.overhang > 0
      ? [`edge strips are measured from the wall and widened by the overhang: ${TO_BE_CONFIRMED}`]
      : []),
  ];
}

/** x and y change places; the order of the points is turned so that it stays counter-clockwise. */
const mirrored = (polygon: Polygon): Polygon => polygon.map(([x, y]): Point => [y, x]).reverse();

const PERIMETER: ReadonlySet<Edge> = new Set(['eave', 'rake', 'high', 'end', 'side', 'corner']);

type PlanPiece = Omit<ZonePiece, 'part'>;

/** Cuts one plane by the rules of its plan, first rule first. */
function piecesOf(plane: RoofPlane, plan: ZonePlan, unit: number, added: number): PlanPiece[] {
  const pieces: PlanPiece[] = [];
  let left: readonly Polygon[] = [plane.outline];
  for (const rule of plan.rules) {
    const widths = rule.near.map(([edge, n]) => n * unit + (PERIMETER.has(edge) ? added : 0));
    for (const lines of combinationsOf(
      plane,
      rule.near.map(([edge]) => edge),
    )) {
      const strips = lines.map((line, i) => turned(shifted(line, widths[i]!)));
      left = left.flatMap((polygon) => {
        const { inside, rest } = split(polygon, strips);
        if (inside.length > 0) {
          pieces.push({ zone: rule.zone, polygon: inside, width_ft: Math.min(...widths) });
        }
        return rest;
      });
    }
  }
  for (const polygon of left) pieces.push({ zone: plan.rest, polygon });
  return pieces;
}

/** Every way to take one line of each named edge. */
function combinationsOf(plane: RoofPlane, names: readonly Edge[]): readonly (readonly Line[])[] {
  return names.reduce<readonly (readonly Line[])[]>(
    (sets, name) =>
      sets.flatMap((set) =>
        plane.edges.filter(({ edge }) => edge === name).map(({ line }) => [...set, line]),
      ),
    [[]],
  );
}

export interface ZoneUnder {
  readonly part: Part;
  readonly zone: string;
  readonly area_ft2: number;
}

/**
 * The zones a strip lies in, with the plan area in each, largest first. `strip` is a convex polygon
 * in the coordinates of the layout; `pieces` are those of one view (plan, or one face of wall).
 */
export function zonesUnder(pieces: readonly ZonePiece[], strip: Polygon): readonly ZoneUnder[] {
  const found = new Map<string, { part: Part; zone: string; area_ft2: number }>();
  for (const piece of pieces) {
    const area = areaOf(common(piece.polygon, strip));
    if (area < 1e-6) continue;
    const key = `${piece.part} ${piece.zone}`;
    const known = found.get(key);
    if (known) known.area_ft2 += area;
    else found.set(key, { part: piece.part, zone: piece.zone, area_ft2: area });
  }
  return [...found.values()].sort((p, q) => q.area_ft2 - p.area_ft2);
}
