// Roof live load with its reductions, and the dead load of a panel.

import { asce } from '../sources.js';
import { result, step, type Outcome } from '../check.js';
import { psf, type Inches, type Per12, type Psf, type SquareFeet } from '../units.js';

export interface RoofLiveLoad {
  readonly R1: number;
  readonly R2: number;
  readonly Lr: Psf;
}

/**
 * L_r = L_o R_1 R_2 in psf of horizontal projection, 12 <= L_r <= 20, for ordinary flat, pitched
 * and curved roofs with L_o to 20 psf (4.8). A panel's tributary area stays under 200 ft2, so only
 * the slope reduces it. Left out: roofs with special occupancy, greenhouses, fabric awnings and the
 * 300 lb concentrated load on a roof that is walked on.
 */
export function roofLiveLoad(Lo: Psf, tributary: SquareFeet, rise: Per12): Outcome<RoofLiveLoad> {
  const R1 = areaReduction(tributary);
  const R2 = slopeReduction(rise);
  const Lr = psf(Math.min(20, Math.max(12, Lo * R1 * R2)));
  const clause = asce('7-22', '4.8.2');
  return result({ R1, R2, Lr }, [
    step('R_1', R1, '', '1 to 200 ft2; 1.2 - 0.001 A_t; 0.6 from 600 ft2', clause),
    step('R_2', R2, '', '1 to 4 in 12; 1.2 - 0.05 F; 0.6 from 12 in 12', clause),
    step('L_r', Lr, 'psf', 'L_o R_1 R_2, 12 <= L_r <= 20', clause),
  ]);
}

/** R_1, by tributary area in ft2. */
export const areaReduction = (tributary: SquareFeet): number =>
  tributary <= 200 ? 1 : tributary >= 600 ? 0.6 : 1.2 - 0.001 * tributary;

/** R_2, by rise in inches to 12. */
export const slopeReduction = (rise: Per12): number =>
  rise <= 4 ? 1 : rise >= 12 ? 0.6 : 1.2 - 0.05 * rise;

/**
 * Dead load of a panel in psf of surface: the flat sheet's weight by gauge times developed width
 * over cover width. Common practice; clips, screws and sealant are not counted.
 */
export function panelDeadLoad(sheet: Psf, developed: Inches, cover: Inches): Psf {
  if (!(cover > 0 && developed >= cover)) {
    throw new Error('the developed width of a panel is not less than its cover width');
  }
  return psf((sheet * developed) / cover);
}
