// Corrosion of bare metal in the open air: first-year loss from climate and salt, its category,
// and the loss after years. For ranking the risk to cut edges and scratches; never the promised
// life of a painted sheet, and never for 55 % Al-Zn, for which no such rates were found.

import { micrometers, type Micrometers } from '../units.js';
import { CATEGORIES, UPPER_RATES } from './corrosion.table.js';
import type { Corrosivity, RateScale } from './corrosion.table.js';

export const BARE_METAL_CAUTION =
  'Bare metal in the open air: ranks the risk at cut edges and scratches; ' +
  'never the promised life of a painted sheet, and no warranty term.';

export type MicrometersPerYear = number;

export interface Climate {
  /** Yearly mean temperature, deg C, -17.1 to 28.7. */
  readonly T: number;
  /** Yearly mean relative humidity, %, 34 to 93. */
  readonly RH: number;
  /** Sulfur dioxide deposition P_d, mg/(m2 d), 0.7 to 150.4. */
  readonly Pd: number;
  /** Chloride deposition S_d, mg/(m2 d), 0.4 to 760.5. */
  readonly Sd: number;
}

/** The ranges in which the dose-response functions hold. ISO 9223:2012 (second-hand). */
export const CLIMATE_RANGE = {
  T: { least: -17.1, most: 28.7 },
  RH: { least: 34, most: 93 },
  Pd: { least: 0.7, most: 150.4 },
  Sd: { least: 0.4, most: 760.5 },
} as const;

/** The two terms of a dose-response function: sulfur dioxide and chloride. */
export interface FirstYearLoss {
  readonly sulfur: MicrometersPerYear;
  readonly chloride: MicrometersPerYear;
  readonly rate: MicrometersPerYear;
}

/**
 * r_zn = 0.0129 Pd^0.44 exp(0.046 RH + f) + 0.0175 Sd^0.57 exp(0.008 RH + 0.085 T), with
 * f = 0.038 (T - 10) to 10 deg C and -0.071 (T - 10) above. ISO 9223:2012, Eq. 2 (second-hand).
 */
export function firstYearZinc({ T, RH, Pd, Sd }: Climate): FirstYearLoss {
  const f = (T <= 10 ? 0.038 : -0.071) * (T - 10);
  const sulfur = 0.0129 * Pd ** 0.44 * Math.exp(0.046 * RH + f);
  const chloride = 0.0175 * Sd ** 0.57 * Math.exp(0.008 * RH + 0.085 * T);
  return { sulfur, chloride, rate: sulfur + chloride };
}

/**
 * r_st = 1.77 Pd^0.52 exp(0.020 RH + g) + 0.102 Sd^0.62 exp(0.033 RH + 0.040 T), with
 * g = 0.150 (T - 10) to 10 deg C and -0.054 (T - 10) above. ISO 9223:2012, Eq. 1 (second-hand).
 */
export function firstYearSteel({ T, RH, Pd, Sd }: Climate): FirstYearLoss {
  const g = (T <= 10 ? 0.15 : -0.054) * (T - 10);
  const sulfur = 1.77 * Pd ** 0.52 * Math.exp(0.02 * RH + g);
  const chloride = 0.102 * Sd ** 0.62 * Math.exp(0.033 * RH + 0.04 * T);
  return { sulfur, chloride, rate: sulfur + chloride };
}

/** The band of a first-year loss; upper bounds inclusive. ISO 9223:2012, Table 2. */
export function corrosivity(scale: RateScale, rate: number): Corrosivity | 'above CX' {
  const at = UPPER_RATES[scale].findIndex((upper) => rate <= upper);
  return CATEGORIES[at] ?? 'above CX';
}

/** Lower (exclusive) and upper (inclusive) first-year loss of a category. */
export function corrosivityBand(
  scale: RateScale,
  category: Corrosivity,
): { readonly over: number; readonly to: number } {
  const at = CATEGORIES.indexOf(category);
  return { over: UPPER_RATES[scale][at - 1] ?? 0, to: UPPER_RATES[scale][at] as number };
}

/** t^b, the factor on the first-year loss. ISO 9224:2012, Table 3 (second-hand). */
export const timeFactor = (years: number, b: number): number => years ** b;

/** The year after which ISO 9224 replaces the power law by its tangent line. */
export const TANGENT_AFTER_YEARS = 20;

/**
 * D = r t^b up to 20 years; beyond, D = r (20^b + b 20^(b-1) (t - 20)). ISO 9224:2012, Eq. 1
 * and 3 (second-hand). t in years of at least 0, b from TIME_EXPONENTS or 1.
 */
export function lossAfter(rate: MicrometersPerYear, years: number, b: number): Micrometers {
  if (years <= TANGENT_AFTER_YEARS) return micrometers(rate * timeFactor(years, b));
  const slope = b * TANGENT_AFTER_YEARS ** (b - 1);
  return micrometers(
    rate * (timeFactor(TANGENT_AFTER_YEARS, b) + slope * (years - TANGENT_AFTER_YEARS)),
  );
}
