// Years until the weather has used up a zinc coating: the loss of ISO 9224 solved for time, or a
// constant rate. On average thickness, so red rust begins earlier at thin spots and cut edges.

import type { Micrometers } from '../units.js';
import {
  corrosivityBand,
  lossAfter,
  TANGENT_AFTER_YEARS,
  type MicrometersPerYear,
} from './corrosion.js';
import { TIME_EXPONENTS, type Corrosivity, type Exponent } from './corrosion.table.js';

export type ZincExponent = Exponent | 'linear';

export const zincExponent = (exponent: ZincExponent): number =>
  exponent === 'linear' ? 1 : TIME_EXPONENTS.zinc[exponent];

/**
 * Years after which the loss of ISO 9224:2012, Eq. 1 and 3, equals the thickness: (z/r)^(1/b), and
 * past 20 years along the tangent line. Thickness in um, rate in um/y, both over 0.
 */
export function zincLifeYears(
  zinc: Micrometers,
  rate: MicrometersPerYear,
  exponent: ZincExponent,
): number {
  const b = zincExponent(exponent);
  const years = (zinc / rate) ** (1 / b);
  if (years <= TANGENT_AFTER_YEARS) return years;
  const at20 = lossAfter(rate, TANGENT_AFTER_YEARS, b);
  const slope = rate * b * TANGENT_AFTER_YEARS ** (b - 1);
  return TANGENT_AFTER_YEARS + (zinc - at20) / slope;
}

/** The rate by which a category is judged: its upper bound. ISO 9223:2012, Table 2. */
export const upperZincRate = (category: Corrosivity): MicrometersPerYear =>
  corrosivityBand('zinc um/y', category).to;

/**
 * Least and greatest life in a category at a constant rate, from its upper and lower bounds; C1
 * has no lower rate, so no greatest life. Agrees with what is remembered of ISO 14713-1 Table 2.
 */
export function zincLifeRange(
  zinc: Micrometers,
  category: Corrosivity,
): { readonly least: number; readonly most: number | undefined } {
  const { over, to } = corrosivityBand('zinc um/y', category);
  return {
    least: zincLifeYears(zinc, to, 'linear'),
    most: over > 0 ? zincLifeYears(zinc, over, 'linear') : undefined,
  };
}
