// Shed, gable and hip roofs from their dimensions, as planes for a take-off. In plan the ridge runs
// along x; (0, 0) is a wall corner, as in the zone layout of a roof that falls along y.

import { refused, result, type Outcome } from '../check.js';
import { readInput, type Input, type Shape } from '../input.js';
import { STARTS, type EdgeKind, type PlaneRequest } from './request.js';

const dimension = (says: string) =>
  ({ kind: 'number', says, unit: 'ft', above: 0, most: 1000 }) as const;

export const BUILT_ROOF = {
  shape: { kind: 'choice', says: 'shape', of: ['shed', 'gable', 'hip'] },
  along_ft: dimension('walls, along the eave and the ridge'),
  across_ft: dimension('walls, across the ridge'),
  overhang_ft: { kind: 'number', says: 'in plan, all round', unit: 'ft', least: 0, most: 12 },
  rise_per_12: {
    kind: 'number',
    says: 'rise in 12 of run, of every plane',
    unit: 'in',
    above: 0,
    most: 120,
  },
  start: { kind: 'choice', says: 'edge that the first full panel lies at', of: STARTS },
} as const satisfies Shape;

export type BuiltRoof = Input<typeof BUILT_ROOF>;

const SAME_FT = 1e-6;
const LEAST_RIDGE_FT = 1 / 96;

type Corner = PlaneRequest['outline'][number];

/** The planes, without openings: add them to the plane that they lie in, measured in plan. */
export function builtRoof(dimensions: BuiltRoof): Outcome<readonly PlaneRequest[]> {
  const read = readInput(BUILT_ROOF, dimensions);
  if (!read.ok) return read;
  const { shape, along_ft, across_ft } = read.value;
  if (shape === 'hip' && across_ft > along_ft) {
    return refused({
      pointer: '/across_ft',
      message: 'of a hip must be at most along_ft: its ridge runs along the longer side',
    });
  }
  const ridge_ft = along_ft - across_ft;
  if (shape === 'hip' && ridge_ft > SAME_FT && ridge_ft < LEAST_RIDGE_FT) {
    return refused({
      pointer: '/along_ft',
      message: 'of a hip must equal across_ft or be at least an eighth of an inch over it',
    });
  }
  return result({ shed, gable, hip }[shape](read.value));
}

function shed(roof: BuiltRoof): readonly PlaneRequest[] {
  const [X, Y] = outer(roof);
  return [plane(roof, 'roof', 0, rectangle(X, Y, corner('peak')))];
}

function gable(roof: BuiltRoof): readonly PlaneRequest[] {
  const [X, Y] = outer(roof);
  const outline = rectangle(X, Y / 2, corner('ridge', 'ridge'));
  return [plane(roof, 'front', 0, outline), plane(roof, 'back', 180, outline)];
}

/** Equal slopes: hips at 45 degrees in plan. On a square the ridge is a point. */
function hip(roof: BuiltRoof): readonly PlaneRequest[] {
  const [X, Y] = outer(roof);
  const d = Y / 2;
  const long = (right: string, left: string): Corner[] => [
    at(0, 0, 'eave'),
    at(X, 0, 'hip', right),
    ...(X - Y > SAME_FT ? [at(X - d, d, 'ridge', 'ridge')] : []),
    at(d, d, 'hip', left),
  ];
  const end = (right: string, left: string): Corner[] => [
    at(0, 0, 'eave'),
    at(Y, 0, 'hip', right),
    at(d, d, 'hip', left),
  ];
  const [fr, br, bl, fl] = ['front right', 'back right', 'back left', 'front left'].map(
    (each) => `hip ${each}`,
  );
  return [
    plane(roof, 'front', 0, long(fr!, fl!)),
    plane(roof, 'right', 90, end(br!, fr!)),
    plane(roof, 'back', 180, long(bl!, br!)),
    plane(roof, 'left', 270, end(fl!, bl!)),
  ];
}

const outer = ({ along_ft, across_ft, overhang_ft }: BuiltRoof): readonly [number, number] => [
  along_ft + 2 * overhang_ft,
  across_ft + 2 * overhang_ft,
];

type Side = Pick<Corner, 'edge' | 'joint'>;
const corner = (edge: EdgeKind, joint?: string): Side =>
  joint === undefined ? { edge } : { edge, joint };
const at = (x_ft: number, y_ft: number, edge: EdgeKind, joint?: string): Corner => ({
  x_ft,
  y_ft,
  ...corner(edge, joint),
});

const rectangle = (X: number, Y: number, top: Side): readonly Corner[] => [
  at(0, 0, 'eave'),
  at(X, 0, 'rake'),
  { x_ft: X, y_ft: Y, ...top },
  at(0, Y, 'rake'),
];

/** Each plane's corner at the left end of its eave, as one looks up its slope. */
function plane(
  roof: BuiltRoof,
  name: string,
  turn_deg: number,
  outline: readonly Corner[],
): PlaneRequest {
  const [X, Y] = outer(roof);
  const o = roof.overhang_ft;
  const place = { 0: [0 - o, 0 - o], 90: [X - o, 0 - o], 180: [X - o, Y - o], 270: [0 - o, Y - o] }[
    turn_deg
  ]!;
  return {
    name,
    lies: 'roof',
    rise_per_12: roof.rise_per_12,
    measured: 'in-plan',
    outline,
    openings: [],
    start: roof.start,
    place: { x_ft: place[0]!, y_ft: place[1]!, turn_deg },
  };
}

/** A rectangular opening, a chimney or curb, with the edges that panels meet it by. */
export function rectangularOpening(
  name: string,
  place: {
    readonly x_ft: number;
    readonly y_ft: number;
    readonly width_ft: number;
    readonly height_ft: number;
  },
): PlaneRequest['openings'][number] {
  const { x_ft, y_ft, width_ft, height_ft } = place;
  return {
    name,
    outline: [
      at(x_ft, y_ft, 'endwall'),
      at(x_ft + width_ft, y_ft, 'sidewall'),
      at(x_ft + width_ft, y_ft + height_ft, 'high-side'),
      at(x_ft, y_ft + height_ft, 'sidewall'),
    ],
  };
}
