// A plane of a take-off, drawn from what the record holds of it: every strip with its piece and length,
// every side with its kind. One function for the page and for paper.

import { cutList, type Strip } from './cut-list.js';
import type { Drawing, Point } from './svg.js';

type PointText = readonly [string, string];

/** Decimal text in feet, as it is recorded. */
export interface PlaneTaken {
  readonly name: string;
  readonly outline: readonly PointText[];
  readonly openings: readonly { readonly name: string; readonly outline: readonly PointText[] }[];
  readonly sides: readonly {
    readonly from: PointText;
    readonly to: PointText;
    readonly edge: string;
    readonly length_ft: string;
  }[];
  readonly strips: readonly {
    readonly pieces: readonly {
      readonly mark: string;
      readonly length_in: string;
      readonly polygons: readonly (readonly PointText[])[];
    }[];
  }[];
}

export function planeDrawing(plane: PlaneTaken, title: string): Drawing {
  return cutList({
    title,
    outline: points(plane.outline),
    openings: plane.openings.map(({ name, outline }) => ({ name, polygon: points(outline) })),
    strips: stripsOf(plane),
    sides: plane.sides
      .filter(({ edge }) => edge !== 'none')
      .slice(0, plane.outline.length)
      .map(({ from, to, edge, length_ft }) => ({
        from: point(from),
        to: point(to),
        kind: edge.replaceAll('-', ' '),
        length_in: Number(length_ft) * 12,
      })),
  });
}

const point = ([x, y]: PointText): Point => [Number(x), Number(y)];
const points = (list: readonly PointText[]): readonly Point[] => list.map(point);

/** The lowest pieces of all strips first, so that neighbors of one length share a label. */
function stripsOf({ strips }: PlaneTaken): readonly Strip[] {
  const most = Math.max(0, ...strips.map(({ pieces }) => pieces.length));
  return Array.from({ length: most }, (_, i) =>
    strips.flatMap(({ pieces }): Strip[] => {
      const piece = pieces[i];
      const [polygon, ...also] = (piece?.polygons ?? []).map(points);
      if (!piece || !polygon) return [];
      const mark = piece.mark.toUpperCase();
      return [{ mark, polygon, also, length_in: Number(piece.length_in), course: i }];
    }),
  ).flat();
}
