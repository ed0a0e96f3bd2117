// The planes of a roof seen from above, each with its named edges, in feet. x runs along the ridge
// (or the low eave), y across it; (0, 0) is a corner of the roof's outer edge.

import type { Edge } from './zone-plans.table.js';
import { lineThrough, type Line, type Point, type Polygon } from './plane-geometry.js';
import type { RoofShape } from './roof-figure.js';

export interface RoofPlane {
  readonly outline: Polygon;
  readonly edges: readonly { readonly edge: Edge; readonly line: Line }[];
}

/** The planes of a roof X long and Y deep in plan. A roof laid out as flat is one plane. */
export function roofPlanes(shape: RoofShape, X: number, Y: number): readonly RoofPlane[] {
  switch (shape) {
    case 'flat':
      return [
        plane(
          [
            [0, 0],
            [X, 0],
            [X, Y],
            [0, Y],
          ],
          ['side', 'end', 'side', 'end'],
        ),
      ];
    case 'monoslope':
      return [
        plane(
          [
            [0, 0],
            [X, 0],
            [X, Y],
            [0, Y],
          ],
          ['eave', 'rake', 'high', 'rake'],
        ),
      ];
    case 'gable':
      return [
        plane(
          [
            [0, 0],
            [X, 0],
            [X, Y / 2],
            [0, Y / 2],
          ],
          ['eave', 'rake', 'ridge', 'rake'],
        ),
        plane(
          [
            [X, Y],
            [0, Y],
            [0, Y / 2],
            [X, Y / 2],
          ],
          ['eave', 'rake', 'ridge', 'rake'],
        ),
      ];
    case 'hip':
      return hipPlanes(X, Y);
  }
}

/** Equal slopes: hips at 45 degrees in plan, the ridge along the longer side. */
function hipPlanes(X: number, Y: number): readonly RoofPlane[] {
  const corners: readonly [Point, Point, Point, Point] = [
    [0, 0],
    [X, 0],
    [X, Y],
    [0, Y],
  ];
  const d = Math.min(X, Y) / 2;
  const ridge: readonly [Point, Point] =
    X >= Y
      ? [
          [d, Y / 2],
          [X - d, Y / 2],
        ]
      : [
          [X / 2, d],
          [X / 2, Y - d],
        ];
  const tops: readonly Point[][] =
    X >= Y
      ? [[ridge[1], ridge[0]], [ridge[1]], [ridge[0], ridge[1]], [ridge[0]]]
      : [[ridge[0]], [ridge[1], ridge[0]], [ridge[1]], [ridge[0], ridge[1]]];
  return tops.map((top, i) => {
    const p = corners[i]!;
    const q = corners[(i + 1) % 4]!;
    const before = corners[(i + 3) % 4]!;
    const after = corners[(i + 2) % 4]!;
    const distinct = top.length === 2 && samePoint(top[0]!, top[1]!) ? [top[0]!] : top;
    const edges: Edge[] =
      distinct.length === 2 ? ['eave', 'hip', 'ridge', 'hip'] : ['eave', 'hip', 'hip'];
    const base = plane([p, q, ...distinct], edges);
    const neighbors = [lineThrough(before, p), lineThrough(q, after)];
    return {
      outline: base.outline,
      edges: [...base.edges, ...neighbors.map((line) => ({ edge: 'corner' as const, line }))],
    };
  });
}

const samePoint = (p: Point, q: Point): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-9;

/** Counter-clockwise outline; the i-th edge runs from the i-th point to the next. */
function plane(outline: Polygon, names: readonly Edge[]): RoofPlane {
  return {
    outline,
    edges: names.map((edge, i) => ({
      edge,
      line: lineThrough(outline[i]!, outline[(i + 1) % outline.length]!),
    })),
  };
}
