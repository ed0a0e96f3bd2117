// The take-off of one plane: area, strips, pieces, what is bought against what is covered, and the
// zones that it lies under; with its steps.

import { step, type Fault, type Step } from '../check.js';
import { cite, COMMON_PRACTICE } from '../sources.js';
import type { ZonePiece } from '../wind/zone-piece.js';
import { pieceLines, type PieceLine } from './bundles.js';
import { cutList, type CutList } from './cut-list.js';
import { piecesOf } from './pieces.js';
import type { Plane, Side } from './plane.js';
import type { PanelRequest } from './request.js';
import { sideLaps, stripsOf, type Run } from './strips.js';
import { zoneAreas, zoneReaches, type ZoneArea, type ZoneReach } from './zones.js';

export interface PlaneTakeOff {
  readonly name: string;
  readonly slope_factor: number;
  /** On the slope, without openings. */
  readonly area_ft2: number;
  readonly openings_ft2: number;
  /** Whether the pieces were taken off the drawing or entered. */
  readonly lengths: 'taken-off' | 'entered';
  /** Longest first. */
  readonly pieces: readonly PieceLine[];
  readonly bought_ft2: number;
  readonly waste_ft2: number;
  /** Of what is bought. */
  readonly waste_share: number;
  /** End laps, part of the waste. */
  readonly laps_ft2: number;
  readonly weight_lb: number;
  readonly zones: readonly ZoneArea[];
  readonly cut_list: CutList;
}

/** What the rest of the take-off needs of a plane beside its result. */
export interface LaidPlane {
  readonly plane: Plane;
  readonly runs: readonly Run<Side>[];
  /** Zones over each run. */
  readonly reaches: readonly (readonly ZoneReach[])[];
  readonly sideLaps_ft: readonly number[];
  readonly endLaps: number;
  readonly result: PlaneTakeOff;
}

export function layPlane(
  plane: Plane,
  index: number,
  panel: PanelRequest,
  layout: readonly ZonePiece[],
  faults: Fault[],
): LaidPlane {
  const cover = panel.coverage_in / 12;
  const strips = stripsOf(plane.sides, cover, plane.start);
  const pointer = `/planes/${index}`;
  const { entered } = plane.request;
  const pieced = piecesOf(
    strips.runs,
    panel,
    { pointer, plane: plane.name },
    entered ? [] : faults,
  );
  const lengths = pieced.runs.flatMap(({ pieces }) => pieces.map(({ length_in }) => length_in));
  const lines = entered ? enteredLines(entered, pointer, panel, faults) : pieceLines(lengths);
  const reaches = zoneReaches(plane, strips.runs, layout);
  const laps = entered ? 0 : pieced.runs.reduce((n, { pieces }) => n + pieces.length - 1, 0);
  const bought_ft2 = lines.reduce(
    (sum, { length_in, count }) => sum + count * (length_in / 12) * cover,
    0,
  );
  const result: PlaneTakeOff = {
    name: plane.name,
    slope_factor: plane.slopeFactor,
    area_ft2: plane.area_ft2,
    openings_ft2: plane.openings_ft2,
    lengths: entered ? 'entered' : 'taken-off',
    pieces: lines,
    bought_ft2,
    waste_ft2: bought_ft2 - plane.area_ft2,
    waste_share: bought_ft2 > 0 ? (bought_ft2 - plane.area_ft2) / bought_ft2 : 0,
    laps_ft2: (laps * cover * (panel.end_lap_in ?? 0)) / 12,
    weight_lb: bought_ft2 * panel.weight_psf,
    zones: zoneAreas(reaches),
    cut_list: cutList(plane, strips.lines, pieced),
  };
  return {
    plane,
    runs: strips.runs,
    reaches,
    sideLaps_ft: sideLaps(strips.runs),
    endLaps: laps,
    result,
  };
}

function enteredLines(
  entered: readonly PieceLine[],
  pointer: string,
  { longest_ft }: PanelRequest,
  faults: Fault[],
): readonly PieceLine[] {
  entered.forEach(({ length_in }, i) => {
    if (length_in > 12 * longest_ft) {
      const message = `is over the longest piece of ${12 * longest_ft} in`;
      faults.push({ pointer: `${pointer}/entered/${i}/length_in`, message });
    }
  });
  return pieceLines(
    entered.flatMap(({ length_in, count }) => Array<number>(count).fill(length_in)),
  );
}

const GEOMETRY = (where: string) => cite('mechanics', where);

const sideSteps = (plane: LaidPlane['plane'], of: string): readonly Step[] =>
  plane.sides
    .filter(({ edge }) => edge !== 'none')
    .map(({ edge, length_ft }, i) => {
      const formula = 'sqrt(dx^2 + dy^2) on the slope';
      return step(`L_${i + 1} (${edge}, ${of})`, length_ft, 'ft', formula, GEOMETRY('true length'));
    });

export function planeSteps({ plane, result }: LaidPlane, panel: PanelRequest): readonly Step[] {
  const of = plane.name;
  const { rise_per_12 } = plane.request;
  const strips = result.cut_list.strips.length;
  const pieces = result.pieces.reduce((n, { count }) => n + count, 0);
  const factor = 'sqrt(1 + (rise / 12)^2)';
  return [
    ...(rise_per_12 === undefined
      ? []
      : [step(`F (${of})`, result.slope_factor, '', factor, GEOMETRY('slope factor'))]),
    ...sideSteps(plane, of),
    step(
      `A_openings (${of})`,
      result.openings_ft2,
      'ft2',
      'sum of the openings',
      GEOMETRY('area of a polygon'),
    ),
    step(
      `A (${of})`,
      result.area_ft2,
      'ft2',
      'sum (x_i y_i+1 - x_i+1 y_i) / 2, less openings',
      GEOMETRY('area of a polygon'),
    ),
    step(`n_strips (${of})`, strips, '', `ceil(width / ${panel.coverage_in} in)`, COMMON_PRACTICE),
    step(
      `n_pieces (${of})`,
      pieces,
      '',
      result.lengths === 'entered'
        ? 'as entered'
        : 'longest edge of each strip, with allowances, rounded up; lapped over the longest piece',
      COMMON_PRACTICE,
    ),
    step(
      `A_bought (${of})`,
      result.bought_ft2,
      'ft2',
      'sum of piece lengths times coverage',
      GEOMETRY('area'),
    ),
    step(`waste (${of})`, result.waste_ft2, 'ft2', 'A_bought - A', GEOMETRY('area')),
  ];
}
