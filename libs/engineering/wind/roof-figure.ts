// Which figure of which edition gives a roof's coefficients, and the coefficient of a zone in it.

import type { AsceEdition } from '../sources.js';
import { negativeOf, onCurve, type Figure, type ZoneCurve } from './curves.js';
import type { Degrees, SquareFeet } from '../units.js';
import { fig_5A, fig_5B } from './figures-all-editions.table.js';
import { FIG_30_4_2A, FIG_30_4_2B, FIG_30_4_2C } from './figures-7-10.table.js';
import * as f16 from './figures-7-16.table.js';
import * as f22 from './figures-7-22.table.js';

export type RoofShape = 'flat' | 'gable' | 'hip' | 'monoslope';
export const ROOF_SHAPES = ['flat', 'gable', 'hip', 'monoslope'] as const;

/** One figure, or two between which the coefficient is linear: t = 0 is `low`, 1 is `high`. */
export interface Coefficients {
  readonly name: string;
  readonly low: Figure;
  readonly high: Figure;
  readonly t: number;
}

/** Slope classes take their upper edge in; 12:12 may come as 45.0000001. */
const upTo = (theta: Degrees, edge: number): boolean => theta <= edge + 1e-6;

/**
 * The figure for a roof. theta <= 45 degrees, monoslope <= 30, flat <= 7. `hOverB` is mean roof
 * height over the least horizontal dimension (hips of 7-16 only).
 */
export function coefficientsFor(
  edition: AsceEdition,
  shape: RoofShape,
  theta: Degrees,
  hOverB: number,
): Coefficients {
  if (shape === 'monoslope' && !upTo(theta, 3)) {
    return one(upTo(theta, 10) ? fig_5A(edition) : fig_5B(edition));
  }
  if (upTo(theta, 7)) return one(edition === '7-10' ? FIG_30_4_2A : f16.FIG_30_3_2A);
  if (edition === '7-10') return one(upTo(theta, 27) ? FIG_30_4_2B : FIG_30_4_2C);
  if (edition === '7-16') return shape === 'hip' ? hip716(theta, hOverB) : one(gable716(theta));
  return shape === 'hip' ? hip722(theta) : one(gable722(theta));
}

const one = (figure: Figure): Coefficients => ({
  name: figure.name,
  low: figure,
  high: figure,
  t: 0,
});

const between = (low: Figure, high: Figure, t: number): Coefficients =>
  t <= 0 ? one(low) : t >= 1 ? one(high) : { name: `${low.name} and ${high.name}`, low, high, t };

const gable716 = (theta: Degrees): Figure =>
  upTo(theta, 20) ? f16.FIG_16_2B : upTo(theta, 27) ? f16.FIG_16_2C : f16.FIG_16_2D;

const gable722 = (theta: Degrees): Figure =>
  upTo(theta, 20) ? f22.FIG_22_2B : upTo(theta, 27) ? f22.FIG_22_2C : f22.FIG_22_2D;

function hip716(theta: Degrees, hOverB: number): Coefficients {
  if (upTo(theta, 20)) return between(f16.FIG_16_2E, f16.FIG_16_2F, (hOverB - 0.5) / 0.3);
  return one(upTo(theta, 27) ? f16.FIG_16_2G : f16.fig_16_2H(theta));
}

function hip722(theta: Degrees): Coefficients {
  if (upTo(theta, 20)) return one(f22.FIG_22_2E);
  return between(f22.FIG_22_2F, f22.FIG_22_2G, (theta - 27) / 18);
}

/** GC_p of the positive curve at effective wind area A. */
export function positiveAt(c: Coefficients, area: SquareFeet): number {
  return mixed(onCurve(c.low.positive, area), c, () => onCurve(c.high.positive, area));
}

/** GC_p of a zone's negative curve; `i` counts the zones of the figure's roof or overhang list. */
export function negativeAt(
  c: Coefficients,
  part: 'negative' | 'overhang',
  i: number,
  area: SquareFeet,
): number {
  const low = zonesOf(c.low, part)[i]!;
  return mixed(negativeOf(low, area), c, () => negativeOf(zonesOf(c.high, part)[i]!, area));
}

const mixed = (low: number, c: Coefficients, high: () => number): number =>
  c.t === 0 ? low : low + (high() - low) * c.t;

/** The zones of the roof, or of the overhang's own curves (none where it is a sum). */
export function zonesOf(figure: Figure, part: 'negative' | 'overhang'): readonly ZoneCurve[] {
  if (part === 'negative') return figure.negative;
  return figure.overhang === 'roof-minus-wall' ? [] : figure.overhang;
}
