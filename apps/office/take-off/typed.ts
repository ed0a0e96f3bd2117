// What is typed for a take-off: the same shape as the command, every number still a text.

import type { EdgeKind } from '#engineering';
import type { JobView, SurfaceView, TakeOffSheet } from '#jobs/contract';
import { EDGE_KINDS } from '#engineering';

export interface CornerTyped {
  readonly x_ft: string;
  readonly y_ft: string;
  readonly edge: string;
  readonly joint: string;
}
export interface PlaneTyped {
  readonly name: string;
  readonly lies: string;
  readonly rise_per_12: string;
  readonly measured: string;
  readonly start: string;
  readonly outline: readonly CornerTyped[];
  /** Openings with corners of their own, as they were recorded; this form draws rectangles. */
  readonly openings: readonly unknown[];
}
export interface OpeningTyped {
  readonly plane: string;
  readonly name: string;
  readonly x_ft: string;
  readonly y_ft: string;
  readonly width_ft: string;
  readonly height_ft: string;
}
export interface TrimTyped {
  readonly name: string;
  readonly edges: readonly string[];
  readonly stock_in: string;
  readonly lap_in: string;
  readonly weight_plf: string;
  readonly screw_spacing_in: string;
}
export interface ClosureTyped {
  readonly name: string;
  readonly edges: readonly string[];
  readonly length_in: string;
}
export interface SealantTyped {
  readonly name: string;
  readonly edges: readonly string[];
  readonly end_laps: boolean;
  readonly side_laps: boolean;
  readonly roll_ft: string;
}
export interface UnderlaymentTyped {
  readonly name: string;
  readonly roll_width_in: string;
  readonly roll_length_ft: string;
  readonly side_lap_in: string;
  readonly end_lap_in: string;
  /** Empty: over the whole plane. */
  readonly edges: readonly string[];
  readonly courses: string;
}

export interface TakeOffTyped {
  readonly measured_from: string;
  readonly by: string;
  readonly shape: {
    readonly shape: string;
    readonly along_ft: string;
    readonly across_ft: string;
    readonly overhang_ft: string;
    readonly rise_per_12: string;
    readonly start: string;
  };
  readonly planes: readonly PlaneTyped[];
  readonly openings: readonly OpeningTyped[];
  readonly panel: {
    readonly round_up_in: string;
    readonly end_lap_in: string;
    readonly least_piece_in: string;
  };
  /** Added at each kind of edge; empty: nothing. */
  readonly ends: Readonly<Record<string, string>>;
  readonly fastening: { readonly screws_each: string; readonly stitch_spacing_in: string };
  readonly trims: readonly TrimTyped[];
  readonly closures: readonly ClosureTyped[];
  readonly sealants: readonly SealantTyped[];
  readonly underlayments: readonly UnderlaymentTyped[];
  readonly bundles: { readonly most_lb: string; readonly most_pieces: string };
  readonly landings: Readonly<Record<string, string>>;
  readonly spares: {
    readonly panels: string;
    readonly fastener_percent: string;
    readonly touch_up: string;
  };
}

export const corner = (): CornerTyped => ({ x_ft: '', y_ft: '', edge: 'eave', joint: '' });
export const plane = (name: string, rise: string, lies: string): PlaneTyped => ({
  name,
  lies,
  rise_per_12: lies === 'roof' ? rise : '',
  measured: lies === 'roof' ? 'in-plan' : 'on-slope',
  start: 'left',
  outline: [corner(), corner(), corner(), corner()],
  openings: [],
});

const trim = (name: string, edge: EdgeKind): TrimTyped => ({
  name,
  edges: [edge],
  stock_in: '',
  lap_in: '',
  weight_plf: '',
  screw_spacing_in: '',
});

/** A first take-off starts from the facts of the job; a further one from what was drawn before. */
export function takeOffTyped(
  job: JobView,
  surface: SurfaceView,
  before: TakeOffSheet | undefined,
): TakeOffTyped {
  const at = (path: string): string => {
    const value = job.facts.find((fact) => fact.path === path)?.value;
    return (value as { v?: string } | undefined)?.v ?? '';
  };
  const building = `building/${surface.building}`;
  const [width, length] = [at(`${building}/width`), at(`${building}/length`)].map(Number) as [
    number,
    number,
  ];
  const roof = surface.kind !== 'wall';
  const rise = at(`surface/${surface.id}/slope`);
  const shape = job.facts.find((fact) => fact.path === `${building}/roof-shape`)?.value;
  const start: TakeOffTyped = {
    measured_from: '',
    by: roof ? 'shape' : 'planes',
    shape: {
      shape: shape === 'hip' ? 'hip' : shape === 'monoslope' ? 'shed' : 'gable',
      along_ft: length > 0 ? String(Math.max(length, width)) : '',
      across_ft: width > 0 ? String(Math.min(length, width)) : '',
      overhang_ft: '',
      rise_per_12: rise,
      start: 'left',
    },
    planes: [plane(surface.name, rise, roof ? 'roof' : 'wall')],
    openings: [],
    panel: { round_up_in: '1', end_lap_in: '', least_piece_in: '' },
    ends: {},
    fastening: { screws_each: '', stitch_spacing_in: '' },
    trims: roof
      ? [trim('Eave trim', 'eave'), trim('Rake trim', 'rake'), trim('Ridge cap', 'ridge')]
      : [],
    closures: [],
    sealants: [],
    underlayments: [],
    bundles: { most_lb: '', most_pieces: '' },
    landings: {},
    spares: { panels: '0', fastener_percent: '0', touch_up: '0' },
  };
  return before ? typedAgain(start, before.asked) : start;
}

type Asked = TakeOffSheet['asked'];

function typedAgain(start: TakeOffTyped, asked: Asked): TakeOffTyped {
  const { drawn, panel, fastening, bundles, spares } = asked;
  const text = (n: number | undefined): string => (n === undefined ? '' : String(n));
  return {
    ...start,
    measured_from: asked.measured_from,
    by: drawn.by,
    ...(drawn.by === 'shape' ? { shape: { ...drawn } } : { planes: drawn.planes.map(planeAgain) }),
    openings: drawn.openings,
    panel: {
      round_up_in: panel.round_up_in,
      end_lap_in: panel.end_lap_in ?? '',
      least_piece_in: panel.least_piece_in ?? '',
    },
    ends: Object.fromEntries(panel.ends.map(({ edge, add_in }) => [edge, add_in])),
    fastening: {
      screws_each: text(fastening.screws_each),
      stitch_spacing_in: fastening.stitch_spacing_in ?? '',
    },
    trims: asked.trims.map((each) => ({ ...each, screw_spacing_in: each.screw_spacing_in ?? '' })),
    closures: asked.closures,
    sealants: asked.sealants,
    underlayments: asked.underlayments.map(({ along, ...each }) => ({
      ...each,
      edges: along?.edges ?? [],
      courses: text(along?.courses),
    })),
    bundles: { most_lb: bundles?.most_lb ?? '', most_pieces: text(bundles?.most_pieces) },
    landings: Object.fromEntries(
      (bundles?.landings ?? []).map(({ plane: of, place }) => [of, place]),
    ),
    spares: {
      panels: text(spares.panels),
      fastener_percent: text(spares.fastener_percent),
      touch_up: text(spares.touch_up),
    },
  };
}

const planeAgain = (
  each: Extract<Asked['drawn'], { by: 'planes' }>['planes'][number],
): PlaneTyped => ({
  ...each,
  rise_per_12: each.rise_per_12 ?? '',
  outline: each.outline.map((one) => ({ ...one, joint: one.joint ?? '' })),
});

const SHAPE_PLANES: Readonly<Record<string, readonly string[]>> = {
  shed: ['roof'],
  gable: ['front', 'back'],
  hip: ['front', 'right', 'back', 'left'],
};
export const planeNames = ({ by, shape, planes }: TakeOffTyped): readonly string[] =>
  by === 'shape'
    ? (SHAPE_PLANES[shape.shape] ?? [])
    : planes.map(({ name }) => name.trim()).filter(Boolean);

const SHAPE_EDGES: Readonly<Record<string, readonly EdgeKind[]>> = {
  shed: ['eave', 'rake', 'peak'],
  gable: ['eave', 'rake', 'ridge'],
  hip: ['eave', 'hip', 'ridge'],
};
/** Kinds of edges that occur, so that only they are asked about. */
export function edgesOf({ by, shape, planes, openings }: TakeOffTyped): readonly EdgeKind[] {
  const drawn: readonly string[] =
    by === 'shape'
      ? (SHAPE_EDGES[shape.shape] ?? [])
      : planes.flatMap(({ outline }) => outline.map(({ edge }) => edge));
  const around = openings.length > 0 ? ['endwall', 'sidewall', 'high-side'] : [];
  return EDGE_KINDS.filter((edge) => edge !== 'none' && [...drawn, ...around].includes(edge));
}
