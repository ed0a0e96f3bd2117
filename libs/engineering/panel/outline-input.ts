// A sheet's outline as calculators take it.

import type { ListField } from '../input.js';
import { inches } from '../units.js';
import type { OutlinePoint } from './corners.js';

export const OUTLINE = {
  kind: 'list',
  says: 'mid-line corners from edge to edge, y up toward the weather',
  least: 3,
  most: 400,
  of: {
    kind: 'group',
    says: 'a corner',
    fields: {
      x_in: { kind: 'number', says: 'across the sheet', unit: 'in' },
      y_in: { kind: 'number', says: 'height', unit: 'in' },
      r_inside_in: {
        kind: 'number',
        says: 'inside radius of the bend; square unless given',
        unit: 'in',
        least: 0,
        optional: true,
      },
    },
  },
} as const satisfies ListField;

interface PointInput {
  readonly x_in: number;
  readonly y_in: number;
  readonly r_inside_in?: number | undefined;
}

export const outlineOf = (points: readonly PointInput[]): OutlinePoint[] =>
  points.map((p) => ({
    x: inches(p.x_in),
    y: inches(p.y_in),
    insideRadius: inches(p.r_inside_in ?? 0),
  }));

/** The assumption about bends without a radius, where there is one. */
export function squareBends(points: readonly PointInput[]): string[] {
  const bends = points.slice(1, -1);
  return bends.some((p) => p.r_inside_in === undefined)
    ? ['bends without r_inside_in are taken as square: inside radius 0']
    : [];
}
