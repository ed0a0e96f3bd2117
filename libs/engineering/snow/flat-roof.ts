// Snow on a flat roof: factors, load, least load on low slopes, density and rain on snow.

import type { AsceEdition } from '../sources.js';
import { pcf, psf, type Degrees, type Feet, type Pcf, type Psf } from '../units.js';
import {
  EXPOSURE_FACTOR,
  LEAST_LOAD_MAX_722,
  SNOW_IMPORTANCE,
  THERMAL_BY_R,
  THERMAL_FACTOR_716,
  THERMAL_FACTOR_722,
  type RiskCategory,
  type RoofExposure,
  type Terrain,
  type ThermalCondition,
} from './factors.table.js';

/** I_s by risk category (Table 1.5-2); 1 in 7-22, whose p_g already carries the risk category. */
export const snowImportance = (edition: AsceEdition, category: RiskCategory): number =>
  edition === '7-22' ? 1 : SNOW_IMPORTANCE[category];

/** C_e (Table 7.3-1; 7-10 Table 7-2). Undefined where the table says "not applicable". */
export const exposureFactor = (terrain: Terrain, exposure: RoofExposure): number | undefined =>
  EXPOSURE_FACTOR[terrain][exposure];

/**
 * C_t, 7-10 Table 7-3 and 7-16 Table 7.3-2. R: of the roof in h·ft²·°F/Btu; only the cold
 * ventilated roof asks for it, and counts as heated (1.0) where R is 25 or less.
 */
export function thermalFactor716(condition: ThermalCondition, R?: number): number {
  if (condition === 'cold-ventilated' && R !== undefined && R <= 25) {
    return THERMAL_FACTOR_716.heated;
  }
  return THERMAL_FACTOR_716[condition];
}

/** C_t, 7-22 Tables 7.3-2 and, for heated structures, 7.3-3 by p_g and R. */
export const thermalFactor722 = (condition: ThermalCondition, pg: Psf, R: number): number =>
  condition === 'heated' ? thermalFactorByR(pg, R) : THERMAL_FACTOR_722[condition];

/**
 * C_t of 7-22 Table 7.3-3, between the rows and columns by straight lines. p_g under 10 and over
 * 70 psf and R under 20 take the edge of the table; R over 50 gives 1.20.
 */
export function thermalFactorByR(pg: Psf, R: number): number {
  if (R > 50) return THERMAL_BY_R.overR50;
  const col = place(THERMAL_BY_R.pg_psf, pg);
  const row = place(THERMAL_BY_R.R, R);
  const at = (r: number, c: number): number => THERMAL_BY_R.Ct[r]?.[c] ?? NaN;
  const along = (r: number): number => at(r, col.i) + col.part * (at(r, col.i + 1) - at(r, col.i));
  return along(row.i) + row.part * (along(row.i + 1) - along(row.i));
}

function place(grid: readonly number[], value: number): { i: number; part: number } {
  const last = grid.length - 1;
  let i = 0;
  while (i < last - 1 && value >= (grid[i + 1] ?? Infinity)) i += 1;
  const low = grid[i] ?? NaN;
  const part = (value - low) / ((grid[i + 1] ?? NaN) - low);
  return { i, part: Math.min(1, Math.max(0, part)) };
}

/**
 * p_f = 0.7 C_e C_t I_s p_g (7.3). The 0.7 takes the ground load to the roof; it is not the 0.7 of
 * the ASD combinations. I_s is 1 in 7-22.
 */
export const flatRoofSnow = (pg: Psf, Ce: number, Ct: number, Is: number): Psf =>
  psf(0.7 * Ce * Ct * Is * pg);

/**
 * p_m, the least load on low slopes (7-10 and 7-16: I_s p_g up to 20 psf, else 20 I_s; 7-22: the
 * smaller of p_g and p_m,max). A uniform case of its own: never the base of drift or unbalanced.
 */
export function leastRoofSnow(edition: AsceEdition, pg: Psf, category: RiskCategory): Psf {
  return edition === '7-22'
    ? psf(Math.min(pg, LEAST_LOAD_MAX_722[category]))
    : psf(SNOW_IMPORTANCE[category] * Math.min(pg, 20));
}

/** The least load counts on monoslope, hip and gable roofs under 15 degrees. Curved: left out. */
export const leastSnowApplies = (theta: Degrees): boolean => theta < 15;

/** gamma = 0.13 p_g + 14, at most 30 pcf (Eq. 7.7-1). Takes p_g, not p_f. */
export const snowDensity = (pg: Psf): Pcf => pcf(Math.min(0.13 * pg + 14, 30));

/**
 * Rain on snow (7.10), a surcharge on the balanced load alone: 5 psf where 0 < p_g <= 20 (7-10,
 * 7-16), 8 psf where 0 < p_g <= p_m,max (7-22), on slopes in degrees under W/50 with W, eave to
 * ridge, in feet.
 */
export function rainOnSnow(
  edition: AsceEdition,
  pg: Psf,
  category: RiskCategory,
  theta: Degrees,
  W: Feet,
): Psf {
  if (pg <= 0 || theta >= W / 50) return psf(0);
  if (edition === '7-22') return psf(pg <= LEAST_LOAD_MAX_722[category] ? 8 : 0);
  return psf(pg <= 20 ? 5 : 0);
}
