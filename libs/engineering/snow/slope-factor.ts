// The roof slope factor C_s: how much of the flat roof load stays on a slope (7.4).

import type { AsceEdition } from '../sources.js';
import type { Degrees } from '../units.js';
import { SLOPE_KNEES_DEG } from './factors.table.js';

export type SnowSurface = 'slippery-unobstructed' | 'other';
type Panel = 'warm' | 'middle' | 'cold';

/**
 * Two readings of 7-22 where sources differ. `no-slippery-when-warm`: under C_t 1.1 no reduction
 * for slippery roofs, an ice dam being assumed, and C_t 1.1 counts as middle (the larger load).
 * `slippery-when-warm`: up to C_t 1.1 the roof is warm, with a slippery line from 5 degrees.
 */
export type WarmRoofReading = 'no-slippery-when-warm' | 'slippery-when-warm';

export interface SlopeFactorInput {
  readonly edition: AsceEdition;
  readonly Ct: number;
  readonly theta: Degrees;
  readonly surface: SnowSurface;
  /** R of the roof, h·ft²·°F/Btu; unknown counts as too low for a warm slippery roof. */
  readonly R: number | undefined;
  readonly ventilated: boolean | undefined;
}

/**
 * C_s: 1 up to the knee (knee included), straight to 0 at 70 degrees. Slippery asks for an
 * unobstructed surface with room below the eave for the snow: snow guards, a gutter above the
 * surface or a lower roof at the eave make it `other`. Between C_t panels nothing is interpolated.
 * Curved and multiple folded roofs are left out.
 */
export function slopeFactor(
  input: SlopeFactorInput,
  reading: WarmRoofReading = 'no-slippery-when-warm',
): number {
  const panel = input.edition === '7-22' ? panel722(input.Ct, reading) : panel716(input.Ct);
  const slippery =
    input.surface === 'slippery-unobstructed' &&
    (panel !== 'warm' ||
      (input.edition === '7-22' ? reading === 'slippery-when-warm' : insulationGate(input)));
  return line(input.theta, SLOPE_KNEES_DEG[slippery ? 'slippery' : 'other'][panel]);
}

/** 7-10 and 7-16: a warm roof's slippery line asks R 30, or R 20 where ventilated (7.4.1). */
export const insulationGate = (roof: Pick<SlopeFactorInput, 'R' | 'ventilated'>): boolean =>
  roof.R !== undefined && roof.R >= (roof.ventilated === true ? 20 : 30);

const panel716 = (Ct: number): Panel => (Ct <= 1 ? 'warm' : Ct < 1.2 ? 'middle' : 'cold');

function panel722(Ct: number, reading: WarmRoofReading): Panel {
  if (Ct >= 1.2) return 'cold';
  const warm = reading === 'slippery-when-warm' ? Ct <= 1.1 : Ct < 1.1;
  return warm ? 'warm' : 'middle';
}

const line = (theta: number, knee: number): number =>
  theta <= knee ? 1 : theta >= 70 ? 0 : 1 - (theta - knee) / (70 - knee);
