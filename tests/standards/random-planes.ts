// For tests: a plain request, and random planes that are simple polygons with openings inside.

import fc from 'fast-check';
import type { Point, Polygon } from '../../libs/engineering/wind/plane-geometry.js';
import { isInside } from '../../libs/engineering/takeoff/outline.js';
import type {
  EdgeKind,
  PanelRequest,
  PlaneRequest,
  TakeOffRequest,
} from '../../libs/engineering/takeoff/request.js';

export const PANEL: PanelRequest = {
  coverage_in: 36,
  weight_psf: 1,
  longest_ft: 200,
  round_up_in: 0.125,
  ends_in: {},
};

export const ask = (
  planes: readonly PlaneRequest[],
  rest: Partial<TakeOffRequest> = {},
): TakeOffRequest => ({
  planes,
  panel: PANEL,
  trims: [],
  closures: [],
  sealants: [],
  underlayments: [],
  ...rest,
});

type Corner = PlaneRequest['outline'][number];
export const corners = (
  points: readonly (readonly [number, number, EdgeKind?, (string | undefined)?])[],
): readonly Corner[] =>
  points.map(([x_ft, y_ft, edge = 'none', joint]) =>
    joint === undefined ? { x_ft, y_ft, edge } : { x_ft, y_ft, edge, joint },
  );

export const freePlane = (
  outline: readonly Corner[],
  rest: Partial<PlaneRequest> = {},
): PlaneRequest => ({
  name: 'A',
  lies: 'roof',
  rise_per_12: 6,
  measured: 'on-slope',
  outline,
  openings: [],
  start: 'left',
  ...rest,
});

export interface RandomPlane {
  readonly outline: Polygon;
  readonly openings: readonly Polygon[];
}

/** Corners at ascending angles about the origin at any distance: simple, mostly not convex. */
const star: fc.Arbitrary<Polygon> = fc
  .array(
    fc.record({
      gap: fc.double({ min: 0.2, max: 1, noNaN: true }),
      far: fc.double({ min: 6, max: 60, noNaN: true }),
    }),
    { minLength: 4, maxLength: 12 },
  )
  .map((steps) => {
    const all = steps.reduce((sum, { gap }) => sum + gap, 0);
    let angle = 0;
    return steps.map(({ gap, far }): Point => {
      angle += (gap / all) * 2 * Math.PI;
      return [far * Math.cos(angle), far * Math.sin(angle)];
    });
  })
  .filter((points) => isInside([0, 0], points) && inner(points) > 0.5);

/** Distance from the origin to the nearest side. */
function inner(points: Polygon): number {
  return Math.min(
    ...points.map(([px, py], i) => {
      const [qx, qy] = points[(i + 1) % points.length]!;
      const [dx, dy] = [qx - px, qy - py];
      const t = Math.min(1, Math.max(0, -(px * dx + py * dy) / (dx * dx + dy * dy)));
      return Math.hypot(px + t * dx, py + t * dy);
    }),
  );
}

const box = (x: number, y: number, w: number, h: number): Polygon => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

/** A star with none, one or two openings near the origin. */
export const randomPlane: fc.Arbitrary<RandomPlane> = fc
  .tuple(star, fc.integer({ min: 0, max: 2 }), fc.double({ min: 0.1, max: 0.6, noNaN: true }))
  .map(([outline, count, share]) => {
    const d = inner(outline) * share;
    const boxes = [box(-d, -d * 0.7, d * 0.8, d * 1.2), box(d * 0.1, -d * 0.5, d * 0.8, d * 0.6)];
    return { outline, openings: boxes.slice(0, count) };
  });

export const requestOf = (
  { outline, openings }: RandomPlane,
  rest: Partial<PlaneRequest> = {},
): PlaneRequest =>
  freePlane(corners(outline), {
    openings: openings.map((points, i) => ({ name: `opening ${i + 1}`, outline: corners(points) })),
    ...rest,
  });
