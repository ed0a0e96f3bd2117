// What was counted, as the record keeps it: decimal text, a mark for every length of the surface, and
// each strip with the part of the plane that each of its pieces covers.

import type { CutList, PieceLine, PlaneTakeOff, Point, Polygon, TakeOff } from '#engineering';
import type {
  PointText,
  TakenPiece,
  TakenPlane,
  TakenStrip,
  TakeOffResult,
} from '../contract/take-off.js';
import { decimal, inFeet, inInches, inPounds, inSquareFeet } from './decimals.js';
import type { RecordTakeOff } from './request.js';
import type { Setting } from './setting.js';

/** Raised when the same planes would give other numbers. */
export const TAKE_OFF_ENGINE = 'take-off 1';

export interface Marking {
  /** "1a" for the longest length of the first surface. */
  readonly mark: (length_in: number) => string;
  readonly pieces: readonly TakenPiece[];
}

export function resultOf(
  counted: TakeOff,
  notes: readonly string[],
  command: RecordTakeOff,
  setting: Setting,
  surface: number,
): TakeOffResult {
  const marking = markingOf(counted, surface);
  const { totals, attachment } = counted;
  if (!attachment) throw new Error('a take-off of a surface counts its fasteners');
  return {
    engine: TAKE_OFF_ENGINE,
    panel: {
      profile: setting.profile.name,
      sheet: setting.sheet,
      coverage_in: inInches(setting.coverage_in),
      weight_psf: decimal(setting.weight_psf, 4),
      longest_ft: inFeet(setting.longest.ft),
      longest_by: setting.longest.by,
    },
    pieces: marking.pieces,
    planes: counted.planes.map((plane) => planeOf(plane, marking)),
    edges: counted.edges.map(({ edge, length_ft }) => ({ edge, length_ft: decimal(length_ft, 2) })),
    ...goods(counted),
    fasteners: {
      name: setting.fastener.name,
      kind: setting.fastener.kind,
      zones: attachment.zones.map((each) => ({ ...each, ...rowOf(setting, each.zone) })),
      count: attachment.count,
      screws: attachment.screws,
      stitch_screws: attachment.stitch_screws,
    },
    bundles: bundlesOf(counted, marking),
    spares: {
      panels: command.spares.panels,
      fasteners: Math.ceil((attachment.count * command.spares.fastener_percent) / 100),
      touch_up: command.spares.touch_up,
    },
    totals: {
      area_ft2: inSquareFeet(totals.area_ft2),
      bought_ft2: inSquareFeet(totals.bought_ft2),
      waste_ft2: inSquareFeet(totals.waste_ft2),
      waste_share: decimal(totals.waste_share, 4),
      pieces: totals.pieces,
      panels_lb: inPounds(totals.panels_lb),
      trims_lb: inPounds(totals.trims_lb),
    },
    notes,
  };
}

function rowOf(
  { rows }: Setting,
  zone: string,
): { readonly spacing_in: string; readonly per_row: number } {
  const row = rows.find((each) => each.zone === zone);
  if (!row) throw new Error(`zone ${zone} was counted and has no spacing`);
  return { spacing_in: inInches(row.spacing_in), per_row: row.per_row };
}

function markingOf({ planes }: TakeOff, surface: number): Marking {
  const counts = new Map<number, number>();
  for (const { length_in, count } of planes.flatMap(({ pieces }) => pieces))
    counts.set(length_in, (counts.get(length_in) ?? 0) + count);
  const lengths = [...counts.keys()].sort((p, q) => q - p);
  const mark = (length_in: number): string => `${surface}${letters(lengths.indexOf(length_in))}`;
  return {
    mark,
    pieces: lengths.map((length) => ({
      mark: mark(length),
      length_in: inInches(length),
      count: counts.get(length) ?? 0,
    })),
  };
}

/** a, b … z, aa, ab … */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letters(Math.floor(index / 26) - 1)}${last}`;
}

const marked = (lines: readonly PieceLine[], { mark }: Marking): readonly TakenPiece[] =>
  lines.map(({ length_in, count }) => ({
    mark: mark(length_in),
    length_in: inInches(length_in),
    count,
  }));

function planeOf(plane: PlaneTakeOff, marking: Marking): TakenPlane {
  const { cut_list } = plane;
  return {
    name: plane.name,
    slope_factor: decimal(plane.slope_factor, 6),
    area_ft2: inSquareFeet(plane.area_ft2),
    openings_ft2: inSquareFeet(plane.openings_ft2),
    bought_ft2: inSquareFeet(plane.bought_ft2),
    waste_ft2: inSquareFeet(plane.waste_ft2),
    waste_share: decimal(plane.waste_share, 4),
    laps_ft2: inSquareFeet(plane.laps_ft2),
    weight_lb: inPounds(plane.weight_lb),
    pieces: marked(plane.pieces, marking),
    zones: plane.zones.map(({ zone, part, area_ft2 }) => ({
      zone,
      part,
      area_ft2: inSquareFeet(area_ft2),
    })),
    outline: pointsOf(cut_list.outline),
    openings: cut_list.openings.map(({ name, outline }) => ({ name, outline: pointsOf(outline) })),
    sides: cut_list.sides.map(({ from, to, edge, length_ft }) => ({
      from: pointOf(from),
      to: pointOf(to),
      edge,
      length_ft: inFeet(length_ft),
    })),
    strips: cut_list.strips.map((strip) => stripOf(strip, marking)),
  };
}

function stripOf({ number, runs }: CutList['strips'][number], { mark }: Marking): TakenStrip {
  return {
    number,
    pieces: runs.flatMap(({ polygons, pieces }) =>
      pieces.map((piece, i) => ({
        mark: mark(piece.length_in),
        length_in: inInches(piece.length_in),
        polygons: polygons
          .map((polygon) =>
            between(
              polygon,
              i === 0 ? -Infinity : piece.from_ft,
              pieces[i + 1]?.from_ft ?? Infinity,
            ),
          )
          .filter((polygon) => polygon.length > 2)
          .map(pointsOf),
      })),
    ),
  };
}

/** The part of a polygon between two heights: the piece above lies on the piece below. */
function between(polygon: Polygon, low: number, high: number): Polygon {
  return cutOff(
    cutOff(polygon, (y) => y - low),
    (y) => high - y,
  );
}

function cutOff(polygon: Polygon, inside: (y: number) => number): Polygon {
  return polygon.flatMap((p, i): Point[] => {
    const q = polygon[(i + 1) % polygon.length]!;
    const [a, b] = [inside(p[1]), inside(q[1])];
    const kept: Point[] = a >= 0 ? [p] : [];
    if (a >= 0 === b >= 0 || !Number.isFinite(a) || !Number.isFinite(b)) return kept;
    const t = a / (a - b);
    return [...kept, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]];
  });
}

const pointOf = ([x, y]: Point): PointText => [inFeet(x), inFeet(y)];
const pointsOf = (polygon: Polygon): readonly PointText[] => polygon.map(pointOf);

function goods({
  trims,
  closures,
  sealants,
  underlayments,
}: TakeOff): Pick<TakeOffResult, 'trims' | 'closures' | 'sealants' | 'underlayments'> {
  const lines = (all: TakeOff['closures']) =>
    all.map(({ name, length_ft, count }) => ({ name, length_ft: decimal(length_ft, 2), count }));
  return {
    trims: trims.map((each) => ({
      name: each.name,
      stock_in: inInches(each.stock_in),
      stocks: each.stocks,
      edges_ft: decimal(each.edges_ft, 2),
      bought_ft: decimal(each.bought_ft, 2),
      offcut_ft: decimal(each.offcut_ft, 2),
      weight_lb: inPounds(each.weight_lb),
      screws: each.screws,
      patterns: each.patterns.map(({ cuts_in, times }) => ({
        cuts_in: cuts_in.map(inInches),
        times,
      })),
      proved: each.proved,
    })),
    closures: lines(closures),
    sealants: lines(sealants),
    underlayments: lines(underlayments),
  };
}

const bundlesOf = ({ bundles }: TakeOff, marking: Marking): TakeOffResult['bundles'] =>
  bundles.map((each) => ({
    name: `B${each.number}`,
    plane: each.plane,
    place: each.place,
    pieces: marked(each.pieces, marking),
    count: each.count,
    longest_in: inInches(each.longest_in),
    weight_lb: inPounds(each.weight_lb),
  }));
