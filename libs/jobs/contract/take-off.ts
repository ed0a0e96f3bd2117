// The take-off of a surface: what a person describes of its planes and of what goes with the panels,
// checked at the edge; what was counted; and what the pages show of it. Keys end in their unit.

import { z } from 'zod';
import { EDGE_KINDS, STARTS } from '#engineering';
import { Decimal, Id, Name, Words } from './amounts.js';
import type { Cause } from './cause.js';
import type { OrderLine } from './after-order.js';

const Edges = z.array(z.enum(EDGE_KINDS)).max(EDGE_KINDS.length);
const Start = z.enum(STARTS);
const Whole = (least: number, most: number) => z.number().int().min(least).max(most);

const Corner = z.strictObject({
  x_ft: Decimal.describe('along the eave, to the right as one looks up the slope'),
  y_ft: Decimal.describe('up the slope'),
  edge: z.enum(EDGE_KINDS).describe('kind of the side from here to the next corner'),
  joint: Name.optional().describe('name shared with the side of the other plane'),
});
const Outline = z.array(Corner).min(3).max(100);

const DrawnPlane = z.strictObject({
  name: Name,
  lies: z.enum(['roof', 'wall']),
  rise_per_12: Decimal.optional().describe('rise in 12 of run; of a roof only'),
  measured: z.enum(['on-slope', 'in-plan']),
  start: Start,
  outline: Outline,
  openings: z
    .array(z.strictObject({ name: Name, outline: Outline }))
    .max(40)
    .default([]),
});

/** A rectangle in plan inside one plane: a chimney, a curb, a skylight. */
const Rectangle = z.strictObject({
  plane: Name,
  name: Name,
  x_ft: Decimal,
  y_ft: Decimal,
  width_ft: Decimal,
  height_ft: Decimal,
});

export const Drawn = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('shape'),
    shape: z.enum(['shed', 'gable', 'hip']),
    along_ft: Decimal.describe('walls, along the eave and the ridge'),
    across_ft: Decimal.describe('walls, across the ridge'),
    overhang_ft: Decimal.describe('in plan, all round'),
    rise_per_12: Decimal,
    start: Start,
    openings: z.array(Rectangle).max(40).default([]),
  }),
  z.strictObject({
    by: z.literal('planes'),
    planes: z.array(DrawnPlane).min(1).max(60),
    openings: z.array(Rectangle).max(40).default([]),
  }),
]);
export type Drawn = z.infer<typeof Drawn>;

const Panel = z.strictObject({
  round_up_in: Decimal.describe('lengths are ordered in multiples of this'),
  end_lap_in: Decimal.optional().describe('end lap; absent: the panel takes none'),
  least_piece_in: Decimal.optional(),
  ends: z
    .array(z.strictObject({ edge: z.enum(EDGE_KINDS), add_in: Decimal }))
    .max(EDGE_KINDS.length)
    .default([])
    .describe('added to a piece that ends at this kind of edge; negative where it is held back'),
});
const Trim = z.strictObject({
  name: Name,
  edges: Edges.min(1),
  stock_in: Decimal,
  lap_in: Decimal,
  weight_plf: Decimal,
  screw_spacing_in: Decimal.optional(),
});
const Closure = z.strictObject({ name: Name, edges: Edges.min(1), length_in: Decimal });
const Sealant = z.strictObject({
  name: Name,
  edges: Edges,
  end_laps: z.boolean(),
  side_laps: z.boolean(),
  roll_ft: Decimal,
});
const Underlayment = z.strictObject({
  name: Name,
  roll_width_in: Decimal,
  roll_length_ft: Decimal,
  side_lap_in: Decimal,
  end_lap_in: Decimal,
  along: z
    .strictObject({ edges: Edges.min(1), courses: Whole(1, 20) })
    .optional()
    .describe('only along these edges; absent: the whole plane'),
});

export const TAKE_OFF_COMMANDS = {
  'record-take-off': {
    surface: Id,
    measured_from: Words.describe('the drawing, or who measured on site and when'),
    drawn: Drawn,
    panel: Panel,
    fastening: z
      .strictObject({ screws_each: Whole(1, 10).optional(), stitch_spacing_in: Decimal.optional() })
      .default({}),
    trims: z.array(Trim).max(40).default([]),
    closures: z.array(Closure).max(20).default([]),
    sealants: z.array(Sealant).max(20).default([]),
    underlayments: z.array(Underlayment).max(20).default([]),
    bundles: z
      .strictObject({
        most_lb: Decimal,
        most_pieces: Whole(1, 1000),
        landings: z.array(z.strictObject({ plane: Name, place: Name })).max(60),
      })
      .optional(),
    spares: z
      .strictObject({
        panels: Whole(0, 100).default(0).describe('of the longest piece'),
        fastener_percent: Whole(0, 50).default(0),
        touch_up: Whole(0, 100).default(0),
      })
      .default({ panels: 0, fastener_percent: 0, touch_up: 0 }),
  },
} as const;

/** Numbers as decimal text, in the unit that the key ends in; points are [x, y] in feet. */
export type PointText = readonly [string, string];

export interface TakenPiece {
  /** "1a": the number of the surface in the job, and a letter for the length, longest first. */
  readonly mark: string;
  readonly length_in: string;
  readonly count: number;
}

export interface TakenStrip {
  /** From the left, from 1. */
  readonly number: number;
  /** From below; a strip that goes round an opening or is lapped has several. */
  readonly pieces: readonly {
    readonly mark: string;
    readonly length_in: string;
    readonly polygons: readonly (readonly PointText[])[];
  }[];
}

export interface TakenPlane {
  readonly name: string;
  readonly slope_factor: string;
  readonly area_ft2: string;
  readonly openings_ft2: string;
  readonly bought_ft2: string;
  readonly waste_ft2: string;
  readonly waste_share: string;
  readonly laps_ft2: string;
  readonly weight_lb: string;
  readonly pieces: readonly TakenPiece[];
  readonly zones: readonly {
    readonly zone: string;
    readonly part: string;
    readonly area_ft2: string;
  }[];
  readonly outline: readonly PointText[];
  readonly openings: readonly { readonly name: string; readonly outline: readonly PointText[] }[];
  readonly sides: readonly {
    readonly from: PointText;
    readonly to: PointText;
    readonly edge: string;
    readonly length_ft: string;
  }[];
  readonly strips: readonly TakenStrip[];
}

export interface TakenTrim {
  readonly name: string;
  readonly stock_in: string;
  readonly stocks: number;
  readonly edges_ft: string;
  readonly bought_ft: string;
  readonly offcut_ft: string;
  readonly weight_lb: string;
  readonly screws: number | null;
  readonly patterns: readonly { readonly cuts_in: readonly string[]; readonly times: number }[];
  /** Whether no way to cut it needs fewer stock lengths. */
  readonly proved: boolean;
}

export interface TakenLine {
  readonly name: string;
  readonly length_ft: string;
  readonly count: number;
}

export interface TakenFasteners {
  readonly name: string;
  readonly kind: 'clip' | 'screw';
  readonly zones: readonly {
    readonly zone: string;
    readonly spacing_in: string;
    readonly per_row: number;
    readonly rows: number;
    readonly count: number;
  }[];
  readonly count: number;
  readonly screws: number | null;
  readonly stitch_screws: number | null;
}

export interface TakenBundle {
  readonly name: string;
  readonly plane: string;
  readonly place: string;
  readonly pieces: readonly TakenPiece[];
  readonly count: number;
  readonly longest_in: string;
  readonly weight_lb: string;
}

export interface TakeOffResult {
  /** The edition of the counting that gave these numbers. */
  readonly engine: string;
  readonly panel: {
    readonly profile: string;
    readonly sheet: string;
    readonly coverage_in: string;
    readonly weight_psf: string;
    readonly longest_ft: string;
    readonly longest_by: string;
  };
  readonly pieces: readonly TakenPiece[];
  readonly planes: readonly TakenPlane[];
  readonly edges: readonly { readonly edge: string; readonly length_ft: string }[];
  readonly trims: readonly TakenTrim[];
  readonly fasteners: TakenFasteners;
  readonly closures: readonly TakenLine[];
  readonly sealants: readonly TakenLine[];
  readonly underlayments: readonly TakenLine[];
  readonly bundles: readonly TakenBundle[];
  readonly spares: {
    readonly panels: number;
    readonly fasteners: number;
    readonly touch_up: number;
  };
  readonly totals: {
    readonly area_ft2: string;
    readonly bought_ft2: string;
    readonly waste_ft2: string;
    readonly waste_share: string;
    readonly pieces: number;
    readonly panels_lb: string;
    readonly trims_lb: string;
  };
  readonly notes: readonly string[];
}

/** A take-off in few words, as the job carries it. */
export interface TakeOffView {
  readonly surface: string;
  /** Counted within its surface, from 1. */
  readonly number: number;
  readonly recorded: { readonly by: string; readonly at: string };
  readonly measured_from: string;
  readonly stands: 'current' | 'stale';
  /** What changed since of what it was made from, in words. */
  readonly stale_because: readonly string[];
  readonly pieces: number;
  readonly area_ft2: string;
  readonly longest_in: string;
}

/** Everything of one take-off, with the lines of an order that it makes. */
export interface TakeOffSheet extends TakeOffView {
  readonly asked: Omit<
    z.output<z.ZodObject<(typeof TAKE_OFF_COMMANDS)['record-take-off']>>,
    'surface'
  >;
  readonly result: TakeOffResult;
  readonly lines: readonly OrderLine[];
  readonly causes: readonly Cause[];
}
