// The wind zones of the walls in elevation: zone 5 of width a at each corner, zone 4 between.

import type { Degrees } from '../units.js';
import { cut, lineThrough, type Polygon } from './plane-geometry.js';
import type { RoofShape } from './roof-figure.js';
import type { ZonePiece } from './zone-piece.js';

interface WallInput {
  readonly shape: RoofShape;
  readonly theta: Degrees;
  /** Building along the ridge or low eave, and across it, ft. */
  readonly X: number;
  readonly Y: number;
  readonly eaveHeight: number;
  readonly a: number;
}

/** One eave wall, one end wall; a monoslope has a high eave wall besides. Fig. 30.3-1 (30.4-1). */
export function wallLayout(input: WallInput): readonly ZonePiece[] {
  const { shape, theta, X, Y, eaveHeight: H, a } = input;
  const slope = Math.tan((theta * Math.PI) / 180);
  const eave = face('eave', wall(X, H, H), X, a);
  switch (shape) {
    case 'flat':
    case 'hip':
      return [...eave, ...face('end', wall(Y, H, H), Y, a)];
    case 'gable':
      return [...eave, ...face('end', peaked(Y, H, H + (Y / 2) * slope), Y, a)];
    case 'monoslope': {
      const top = H + Y * slope;
      return [
        ...eave,
        ...face('high-eave', wall(X, top, top), X, a),
        ...face('end', wall(Y, H, top), Y, a),
      ];
    }
  }
}

/** A wall of a width, its height at the left and at the right. */
const wall = (width: number, left: number, right: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, right],
  [0, left],
];

const peaked = (width: number, height: number, top: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [width / 2, top],
  [0, height],
];

function face(
  name: NonNullable<ZonePiece['face']>,
  outline: Polygon,
  width: number,
  a: number,
): ZonePiece[] {
  const edge = Math.min(a, width / 2);
  const left = cut(outline, lineThrough([edge, 0], [edge, 1]));
  const right = cut(outline, lineThrough([width - edge, 1], [width - edge, 0]));
  const middle = cut(
    cut(outline, lineThrough([edge, 1], [edge, 0])),
    lineThrough([width - edge, 0], [width - edge, 1]),
  );
  const piece = (zone: string, polygon: Polygon, width_ft?: number): ZonePiece[] =>
    polygon.length === 0
      ? []
      : [
          {
            part: 'wall',
            zone,
            polygon,
            face: name,
            ...(width_ft === undefined ? {} : { width_ft }),
          },
        ];
  return [...piece('5', left, edge), ...piece('4', middle), ...piece('5', right, edge)];
}
