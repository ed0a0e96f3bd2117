// Weight of flat sheet by metal, psf per inch of base thickness. Steel: the trade's constant, from
// gauge.ts. Aluminum and copper: density 0.098 and 0.322 lb/in3 times 144, common practice.

import type { Inches, Psf } from '../units.js';
import { psf } from '../units.js';
import { SHEET_WEIGHT } from './gauge.js';

export const SHEET_WEIGHT_PSF_PER_IN = {
  steel: SHEET_WEIGHT as number,
  aluminum: 14.11,
  copper: 46.37,
} as const;

/** Weight of a flat sheet, psf, from its base thickness. */
export function sheetWeightOf(metal: keyof typeof SHEET_WEIGHT_PSF_PER_IN, t: Inches): Psf {
  return psf(SHEET_WEIGHT_PSF_PER_IN[metal] * t);
}
