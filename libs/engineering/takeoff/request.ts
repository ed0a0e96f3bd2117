// What a take-off is asked: roof and wall planes as polygons, the panel, and what goes with it.
// Read strictly; the same description gives the JSON Schema.

import type { Field, Input, Shape } from '../input.js';

/** Kinds of sides. `peak`: upper free edge of a shed; `high-side`: upper side of an opening. */
export const EDGE_KINDS = [
  'eave',
  'ridge',
  'hip',
  'valley',
  'rake',
  'peak',
  'sidewall',
  'endwall',
  'high-side',
  'none',
] as const;
export type EdgeKind = (typeof EDGE_KINDS)[number];

/** Where the first full panel lies; centered: equal cut panels at both sides. */
export const STARTS = ['left', 'right', 'centered'] as const;
export type Start = (typeof STARTS)[number];

/** Bounds that keep a slip of the pen from becoming an order. */
const MOST_FT = 2000;
const edges = {
  kind: 'list',
  says: 'edge kinds',
  of: { kind: 'choice', says: 'edge kind', of: EDGE_KINDS },
  least: 1,
} as const satisfies Field;
const name = { kind: 'text', says: 'name' } as const satisfies Field;
const coordinate = (says: string) =>
  ({ kind: 'number', says, unit: 'ft', least: -MOST_FT, most: MOST_FT }) as const;
const inches = (says: string, most: number) =>
  ({ kind: 'number', says, unit: 'in', above: 0, most }) as const;
const lap = (says: string) => ({ kind: 'number', says, unit: 'in', least: 0, most: 24 }) as const;
const pounds = (says: string, unit: string) =>
  ({ kind: 'number', says, unit, least: 0, most: 1000 }) as const;
const list = <const S extends Shape>(says: string, fields: S, least: number, most: number) =>
  ({ kind: 'list', says, least, most, of: { kind: 'group', says, fields } }) as const;

const corners = list(
  'corners in order; each names the side that runs from it to the next',
  {
    x_ft: coordinate('along the eave, to the right as one looks up the slope'),
    y_ft: coordinate('up the slope'),
    edge: { kind: 'choice', says: 'kind of the side from here to the next corner', of: EDGE_KINDS },
    joint: { kind: 'text', says: 'name shared with the side of the other plane', optional: true },
  },
  3,
  100,
);

export const PLANE = {
  name,
  lies: { kind: 'choice', says: 'a sloping roof or a wall', of: ['roof', 'wall'] },
  rise_per_12: {
    kind: 'number',
    says: 'rise in 12 of run; of a roof only',
    unit: 'in',
    above: 0,
    most: 120,
    optional: true,
  },
  measured: { kind: 'choice', says: 'how y is measured', of: ['on-slope', 'in-plan'] },
  outline: corners,
  openings: list('openings inside the outline', { name, outline: corners }, 0, 40),
  start: { kind: 'choice', says: 'edge that the first full panel lies at', of: STARTS },
  place: {
    kind: 'group',
    says: 'where (0, 0) lies in the plan of the zone layout, and which way x runs',
    fields: {
      x_ft: coordinate('in plan'),
      y_ft: coordinate('in plan'),
      turn_deg: {
        kind: 'number',
        says: 'from the x of the plan, counter-clockwise',
        unit: 'deg',
        least: 0,
        below: 360,
      },
    },
    optional: true,
  },
  entered: {
    ...list(
      'pieces entered instead of taken off',
      {
        length_in: inches('piece length', 12 * MOST_FT),
        count: { kind: 'number', says: 'pieces', unit: '', whole: true, least: 1, most: 5000 },
      },
      1,
      500,
    ),
    optional: true,
  },
} as const satisfies Shape;

const allowance = {
  kind: 'number',
  says: 'added to a piece that ends there; negative where it is held back',
  unit: 'in',
  least: -24,
  most: 24,
  optional: true,
} as const satisfies Field;

const PANEL = {
  coverage_in: { kind: 'number', says: 'coverage width', unit: 'in', least: 4, most: 72 },
  weight_psf: pounds('weight by covered area', 'psf'),
  longest_ft: { kind: 'number', says: 'longest piece', unit: 'ft', least: 2, most: 500 },
  end_lap_in: { ...lap('end lap; absent: the panel takes none'), optional: true },
  round_up_in: inches('lengths are ordered in multiples of this', 12),
  least_piece_in: { ...inches('shortest piece that is made', 240), optional: true },
  ends_in: {
    kind: 'group',
    says: 'allowance at each kind of edge that a piece ends at; 0 where none is given',
    fields: Object.fromEntries(EDGE_KINDS.map((kind) => [kind, allowance])) as {
      readonly [K in EdgeKind]: typeof allowance;
    },
  },
} as const satisfies Shape;

const ATTACHMENT = {
  fastener: { kind: 'text', says: 'clip or screw' },
  zones: list(
    'by wind zone; "all" stands for every zone not named',
    {
      zone: { kind: 'text', says: "the standard's zone name, or all" },
      spacing_in: inches('between rows along the panel', 240),
      per_row: {
        kind: 'number',
        says: 'in one row of one panel',
        unit: '',
        whole: true,
        least: 1,
        most: 60,
      },
    },
    1,
    20,
  ),
  screws_each: {
    kind: 'number',
    says: 'screws in each clip',
    unit: '',
    whole: true,
    least: 1,
    most: 10,
    optional: true,
  },
  stitch_spacing_in: { ...inches('between stitch screws along side laps', 120), optional: true },
} as const satisfies Shape;

export const REQUEST = {
  planes: list('planes', PLANE, 1, 100),
  panel: { kind: 'group', says: 'the panel', fields: PANEL },
  attachment: { kind: 'group', says: 'attachment by zone', fields: ATTACHMENT, optional: true },
  trims: list(
    'trims by the edges that they cover',
    {
      name,
      edges,
      stock_in: inches('stock length', 600),
      lap_in: lap('lap of one trim piece on the next'),
      weight_plf: pounds('weight', 'plf'),
      screw_spacing_in: { ...inches('between its screws', 120), optional: true },
    },
    0,
    40,
  ),
  closures: list(
    'closures by edge',
    { name, edges, length_in: inches('of one closure', 240) },
    0,
    20,
  ),
  sealants: list(
    'sealants by edge and lap',
    {
      name,
      edges: { ...edges, least: 0 },
      end_laps: { kind: 'flag', says: 'also in end laps' },
      side_laps: { kind: 'flag', says: 'also in side laps' },
      roll_ft: {
        kind: 'number',
        says: 'length of a roll or tube',
        unit: 'ft',
        above: 0,
        most: 1000,
      },
    },
    0,
    20,
  ),
  underlayments: list(
    'underlayments, of the whole plane or along edges',
    {
      name,
      roll_width_in: { kind: 'number', says: 'width of a roll', unit: 'in', least: 6, most: 240 },
      roll_length_ft: {
        kind: 'number',
        says: 'length of a roll',
        unit: 'ft',
        least: 5,
        most: 1000,
      },
      side_lap_in: lap('lap of one course on the next'),
      end_lap_in: lap('lap of one roll on the next'),
      along: {
        kind: 'group',
        says: 'only along these edges, in so many courses',
        fields: {
          edges,
          courses: { kind: 'number', says: 'courses', unit: '', whole: true, least: 1, most: 20 },
        },
        optional: true,
      },
    },
    0,
    20,
  ),
  bundles: {
    kind: 'group',
    says: 'how pieces are bundled, and where each plane’s bundles land',
    fields: {
      most_lb: { kind: 'number', says: 'heaviest bundle', unit: 'lb', above: 0, most: 50_000 },
      most_pieces: {
        kind: 'number',
        says: 'most pieces in a bundle',
        unit: '',
        whole: true,
        least: 1,
        most: 1000,
      },
      landings: list(
        'landing place by plane',
        { plane: name, place: { kind: 'text', says: 'place' } },
        0,
        100,
      ),
    },
    optional: true,
  },
} as const satisfies Shape;

export type TakeOffRequest = Input<typeof REQUEST>;
export type PlaneRequest = Input<typeof PLANE>;
export type PanelRequest = TakeOffRequest['panel'];
export type AttachmentRequest = NonNullable<TakeOffRequest['attachment']>;
