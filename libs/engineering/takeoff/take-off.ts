// The take-off of roof and wall planes: pieces, trims, fasteners, closures, sealant, underlayment,
// weights and bundles, with the cut list of each plane. Lengths come from drawings: measure first.

import { refused, result, type Fault, type Outcome, type Step } from '../check.js';
import { readInput } from '../input.js';
import type { ZonePiece } from '../wind/zone-piece.js';
import { countFasteners, zoneFaults, type FastenerCount } from './fastener-count.js';
import { bundlesOf, type Bundle } from './bundles.js';
import type { SolveStock } from './cutting-stock.js';
import { edgeRuns, lengthsByKind, unjoined, type EdgeRun } from './edges.js';
import { closureLine, sealantLine, underlaymentLine, type CountedLine } from './materials.js';
import { readPlane, type Plane } from './plane.js';
import { layPlane, planeSteps, type LaidPlane, type PlaneTakeOff } from './plane-take-off.js';
import { REQUEST, type EdgeKind, type TakeOffRequest } from './request.js';
import { trimFaults, trimLine, type TrimLine } from './trims.js';

export interface TakeOff {
  readonly planes: readonly PlaneTakeOff[];
  /** Every edge once, by kind. */
  readonly edges: readonly { readonly edge: EdgeKind; readonly length_ft: number }[];
  readonly trims: readonly TrimLine[];
  readonly attachment: FastenerCount | null;
  readonly closures: readonly CountedLine[];
  readonly sealants: readonly CountedLine[];
  readonly underlayments: readonly CountedLine[];
  readonly bundles: readonly Bundle[];
  readonly totals: {
    readonly area_ft2: number;
    readonly bought_ft2: number;
    readonly waste_ft2: number;
    readonly waste_share: number;
    readonly pieces: number;
    readonly panels_lb: number;
    readonly trims_lb: number;
  };
}

export interface TakeOffMeans {
  /** Zones of the building in plan, from `zoneLayout`; without them the closest spacing counts. */
  readonly layout?: readonly ZonePiece[];
  /** A solver for what the own search gives up on. */
  readonly solve?: SolveStock;
}

export const TAKE_OFF_CAUTION =
  'Lengths are from drawings or as entered: field-measure before the order. ' +
  'Attachment counts follow the spacings given and choose none.';

/** Takes off every plane; every fault at once and nothing where there is one. */
export function takeOff(request: TakeOffRequest, means: TakeOffMeans = {}): Outcome<TakeOff> {
  const read = readInput(REQUEST, request);
  if (!read.ok) return read;
  const { layout = [], solve } = means;
  const faults: Fault[] = nameFaults(request);
  const planes = request.planes.map((each, i) => readPlane(each, `/planes/${i}`, faults));
  trimFaults(request.trims, faults);
  underlaymentFaults(request, faults);
  if (planes.includes(null)) return refused(...faults);
  const known = planes as readonly Plane[];
  const runs = edgeRuns(known, faults);
  const laid = known.map((plane, i) => layPlane(plane, i, request.panel, layout, faults));
  zoneFaults(laid, request.attachment, faults);
  const bundles = bundlesFor(request, laid, faults);
  if (faults.length > 0) return refused(...faults);
  const trims = request.trims.map((trim) => trimLine(trim, runs, solve));
  const taken = { ...materials(request, laid, runs), trims, bundles };
  const value: TakeOff = {
    planes: laid.map((each) => each.result),
    edges: lengthsByKind(runs),
    attachment: request.attachment ? countFasteners(laid, request.attachment) : null,
    ...taken,
    totals: totals(laid, trims),
  };
  return result(value, steps(laid, request), notes(request, laid, value, layout));
}

function nameFaults({ planes, bundles }: TakeOffRequest): Fault[] {
  const names = planes.map(({ name }) => name);
  const twice = names.flatMap((name, i) =>
    names.indexOf(name) < i
      ? [{ pointer: `/planes/${i}/name`, message: `${name} is the name of another plane too` }]
      : [],
  );
  const strange = (bundles?.landings ?? []).flatMap(({ plane }, i) =>
    names.includes(plane)
      ? []
      : [{ pointer: `/bundles/landings/${i}/plane`, message: `there is no plane ${plane}` }],
  );
  return [...twice, ...strange];
}

function underlaymentFaults({ underlayments }: TakeOffRequest, faults: Fault[]): void {
  underlayments.forEach((each, i) => {
    if (each.side_lap_in >= each.roll_width_in) {
      faults.push({
        pointer: `/underlayments/${i}/side_lap_in`,
        message: `must be under the width of ${each.name}`,
      });
    }
    if (each.end_lap_in >= 12 * each.roll_length_ft) {
      faults.push({
        pointer: `/underlayments/${i}/end_lap_in`,
        message: `must be under the length of ${each.name}`,
      });
    }
  });
}

function bundlesFor(
  { bundles, panel }: TakeOffRequest,
  laid: readonly LaidPlane[],
  faults: Fault[],
) {
  if (bundles === undefined) return [];
  const pieces = laid.map((each) => ({ plane: each.plane.name, lines: each.result.pieces }));
  return bundlesOf(bundles, pieces, (panel.coverage_in / 12) * panel.weight_psf, faults);
}

function materials(request: TakeOffRequest, laid: readonly LaidPlane[], runs: readonly EdgeRun[]) {
  const planes = laid.map(({ plane }) => plane);
  const cover = request.panel.coverage_in / 12;
  const laps = {
    end_ft: laid.reduce((sum, { endLaps }) => sum + endLaps * cover, 0),
    side_ft: laid.reduce((sum, each) => sum + each.sideLaps_ft.reduce((p, q) => p + q, 0), 0),
  };
  return {
    closures: request.closures.map((each) => closureLine(each, planes)),
    sealants: request.sealants.map((each) => sealantLine(each, planes, laps)),
    underlayments: request.underlayments.map((each) => underlaymentLine(each, planes, runs)),
  };
}

function totals(laid: readonly LaidPlane[], trims: readonly TrimLine[]): TakeOff['totals'] {
  const sum = (of: (each: PlaneTakeOff) => number): number =>
    laid.reduce((total, each) => total + of(each.result), 0);
  const area_ft2 = sum((each) => each.area_ft2);
  const bought_ft2 = sum((each) => each.bought_ft2);
  return {
    area_ft2,
    bought_ft2,
    waste_ft2: bought_ft2 - area_ft2,
    waste_share: bought_ft2 > 0 ? (bought_ft2 - area_ft2) / bought_ft2 : 0,
    pieces: sum((each) => each.pieces.reduce((n, { count }) => n + count, 0)),
    panels_lb: sum((each) => each.weight_lb),
    trims_lb: trims.reduce((total, { weight_lb }) => total + weight_lb, 0),
  };
}

const steps = (laid: readonly LaidPlane[], { panel }: TakeOffRequest): readonly Step[] =>
  laid.flatMap((each) => planeSteps(each, panel));

function notes(
  request: TakeOffRequest,
  laid: readonly LaidPlane[],
  value: TakeOff,
  layout: readonly ZonePiece[],
): readonly string[] {
  const trimmed = new Set(request.trims.flatMap(({ edges }) => edges));
  const bare = value.edges.map(({ edge }) => edge).filter((edge) => !trimmed.has(edge));
  const alone = unjoined(laid.map(({ plane }) => plane));
  const short = laid.filter(({ result: r }) => r.lengths === 'entered' && r.waste_ft2 < 0);
  const lapped = laid.filter(({ endLaps }) => endLaps > 0);
  const unplaced = laid.filter(
    ({ plane, result: r }) =>
      request.attachment !== undefined &&
      (layout.length > 0 || request.attachment.zones.length > 1) &&
      r.zones.reduce((sum, { area_ft2 }) => sum + area_ft2, 0) < 0.999 * plane.area_ft2,
  );
  const namesOf = (list: readonly LaidPlane[]): string =>
    list.map(({ plane }) => plane.name).join(', ');
  return [
    TAKE_OFF_CAUTION,
    'Offcuts of hips, valleys and openings are not used again.',
    ...(lapped.length > 0
      ? [`End laps on ${namesOf(lapped)}: each line of laps has to lie over a support.`]
      : []),
    ...(bare.length > 0 ? [`No trim is named for: ${bare.join(', ')}.`] : []),
    ...(alone.length > 0 ? [`Counted in full, as no joint is named: ${alone.join(', ')}.`] : []),
    ...(short.length > 0
      ? [`The lengths entered cover less than the plane: ${namesOf(short)}.`]
      : []),
    ...(unplaced.length > 0
      ? [`Not all under the zone layout, so the closest spacing counts: ${namesOf(unplaced)}.`]
      : []),
    ...(value.trims.some(({ proved }) => !proved)
      ? ['Some trims may be cut from fewer stock lengths.']
      : []),
  ];
}
