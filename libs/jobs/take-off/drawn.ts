// The planes that a person drew, by a shape's dimensions or corner by corner, with the rectangles that
// lie in them; and from a fault of the calculation back to the place that was filled in.

import { builtRoof, rectangularOpening, type Fault, type PlaneRequest } from '#engineering';
import type { Drawn } from '../contract/take-off.js';
import { asNumbers } from './decimals.js';

export type Planes =
  | { readonly ok: true; readonly planes: readonly PlaneRequest[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Rectangle = Parameters<typeof rectangularOpening>[1] & {
  readonly plane: string;
  readonly name: string;
};

export function planesOf(drawn: Drawn): Planes {
  const base = basePlanes(drawn);
  if (!base.ok) return base;
  const names = base.planes.map(({ name }) => name);
  const placed = asNumbers(drawn.openings) as readonly Rectangle[];
  const faults = placed.flatMap(({ plane, name, width_ft, height_ft }, i): Fault[] => [
    ...(names.includes(plane)
      ? []
      : [
          {
            pointer: `/openings/${i}/plane`,
            message: `${name} is on ${plane}; the planes are ${names.join(', ')}`,
          },
        ]),
    ...(width_ft > 0 && height_ft > 0
      ? []
      : [{ pointer: `/openings/${i}`, message: `${name} must have a width and a height over 0` }]),
  ]);
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    planes: base.planes.map((plane) => ({
      ...plane,
      openings: [
        ...plane.openings,
        ...placed
          .filter((each) => each.plane === plane.name)
          .map((each) => rectangularOpening(each.name, each)),
      ],
    })),
  };
}

function basePlanes(drawn: Drawn): Planes {
  if (drawn.by === 'planes')
    return { ok: true, planes: asNumbers(drawn.planes) as readonly PlaneRequest[] };
  const { by: _, openings: __, ...shape } = drawn;
  const built = builtRoof(asNumbers(shape) as Parameters<typeof builtRoof>[0]);
  return built.ok ? { ok: true, planes: built.value } : built;
}

const SHAPE_PLANES = {
  shed: ['roof'],
  gable: ['front', 'back'],
  hip: ['front', 'right', 'back', 'left'],
} as const;

/** Where in "drawn" a fault of a plane belongs. */
export function placeInDrawn(pointer: string, drawn: Drawn): string {
  const [, , i = '', inside, j, ...rest] = pointer.split('/');
  const byHand = drawn.by === 'planes' ? drawn.planes[Number(i)] : undefined;
  const ownOpenings = byHand?.openings.length ?? 0;
  if (inside !== 'openings' || Number(j) < ownOpenings)
    return byHand || i === '' ? `/drawn${pointer}` : '/drawn';
  const name = drawn.by === 'shape' ? SHAPE_PLANES[drawn.shape][Number(i)] : byHand?.name;
  const rectangles = drawn.openings
    .map(({ plane }, at) => ({ at, plane }))
    .filter(({ plane }) => plane === name);
  const found = rectangles[Number(j) - ownOpenings]?.at ?? 0;
  return [`/drawn/openings/${found}`, ...rest.filter((part) => part === 'name')].join('/');
}
