// The corners of a shape, written out as planes: where a roof is nearly a gable or a hip, they are
// changed instead of typed from nothing.

import { builtRoof } from '#engineering';
import type { PlaneTyped, TakeOffTyped } from './typed.js';

/** As typed, to a ten-thousandth of a foot. */
const text = (n: number): string => String(Number(n.toFixed(4)));

const isBlank = ({ outline }: PlaneTyped): boolean =>
  outline.every(({ x_ft, y_ft }) => x_ft.trim() === '' && y_ft.trim() === '');

/** The planes to go on with: what was typed stays; blank ones are those of the shape, where it is whole. */
export function planesFrom({ shape, planes }: TakeOffTyped): readonly PlaneTyped[] {
  if (!planes.every(isBlank)) return planes;
  const built = builtRoof({
    shape: shape.shape as 'gable',
    along_ft: Number(shape.along_ft),
    across_ft: Number(shape.across_ft),
    overhang_ft: Number(shape.overhang_ft),
    rise_per_12: Number(shape.rise_per_12),
    start: shape.start as 'left',
  });
  if (!built.ok) return planes;
  return built.value.map(({ name, start, outline }) => ({
    name,
    lies: 'roof',
    rise_per_12: shape.rise_per_12,
    measured: 'in-plan',
    start,
    outline: outline.map(({ x_ft, y_ft, edge, joint }) => ({
      x_ft: text(x_ft),
      y_ft: text(y_ft),
      edge,
      joint: joint ?? '',
    })),
    openings: [],
  }));
}
