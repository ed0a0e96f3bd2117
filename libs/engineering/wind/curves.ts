// External pressure coefficients as curves over the effective wind area: linear in log10 of the
// area between the printed points, constant outside them.

import type { SquareFeet } from '../units.js';

/** Printed points: area in ft2, GC_p. */
export type Curve = readonly (readonly [area_ft2: number, GCp: number])[];

/** The negative curve of one zone; where readings differ, the larger magnitude counts. */
export interface ZoneCurve {
  readonly zone: string;
  readonly readings: readonly Curve[];
}

export interface Figure {
  readonly name: string;
  /** One positive curve for all zones of the roof. */
  readonly positive: Curve;
  readonly negative: readonly ZoneCurve[];
  /** Net curves of top and soffit, or the sum of roof zone and the wall zone below. */
  readonly overhang: readonly ZoneCurve[] | 'roof-minus-wall';
  /** Why the text of the edition has still to be seen, if so. */
  readonly unconfirmed?: string;
  readonly overhangUnconfirmed?: string;
}

/** Rows of zone names, separated by a space, with one curve or several readings of it. */
export const curves = (
  ...rows: readonly (readonly [zones: string, ...readings: Curve[]])[]
): readonly ZoneCurve[] =>
  rows.flatMap(([zones, ...readings]) => zones.split(' ').map((zone) => ({ zone, readings })));

/** GC_p = G1 + (G2 - G1) log10(A/A1) / log10(A2/A1) between two printed points. */
export function onCurve(curve: Curve, area: SquareFeet): number {
  const first = curve[0]!;
  if (area <= first[0]) return first[1];
  for (let i = 1; i < curve.length; i++) {
    const [A2, G2] = curve[i]!;
    if (area < A2) {
      const [A1, G1] = curve[i - 1]!;
      return G1 + ((G2 - G1) * Math.log(area / A1)) / Math.log(A2 / A1);
    }
  }
  return curve[curve.length - 1]![1];
}

/** The negative coefficient of a zone: the larger magnitude of the readings. */
export function negativeOf(zone: ZoneCurve, area: SquareFeet): number {
  let least = 0;
  for (const reading of zone.readings) least = Math.min(least, onCurve(reading, area));
  return least;
}

/** The printed points as text: "(10, -1.7) (500, -1)". */
export const curveText = (curve: Curve): string =>
  curve.map(([area, GCp]) => `(${area}, ${GCp})`).join(' ');
