// Snow on the move: sliding onto a lower roof, drag on snow retention, ice at the eave.

import { degreesOfRise, feet, plf, pounds, psf } from '../units.js';
import type { Feet, Inches, Per12, Plf, Pounds, Psf } from '../units.js';
import { insulationGate, type SnowSurface } from './slope-factor.js';

/**
 * What a lower roof under 15 ft wide carries. Sources differ: `whole` puts the whole load on it
 * (the larger), `in-proportion` keeps the intensity (the text as remembered).
 */
export type NarrowLowerRoof = 'whole' | 'in-proportion';

export interface SlidingSnow {
  /** Per foot of eave. */
  readonly plf: Plf;
  readonly width_ft: Feet;
}

/** Slippery roofs steeper than 1/4:12, others steeper than 2:12 shed onto a lower roof (7.9). */
export const slides = (surface: SnowSurface, rise: Per12): boolean =>
  rise > (surface === 'slippery-unobstructed' ? 0.25 : 2);

/**
 * 0.4 p_f W per foot of eave over 15 ft of the lower roof (7.9). p_f: flat value of the upper roof;
 * W: its eave to ridge. Added to the lower roof's balanced load, not to unbalanced, drift, partial
 * or rain on snow.
 */
export function slidingSnow(
  pfUpper: Psf,
  upperW: Feet,
  lowerRoof?: Feet,
  narrow: NarrowLowerRoof = 'whole',
): SlidingSnow {
  const total = 0.4 * pfUpper * upperW;
  if (lowerRoof === undefined || lowerRoof >= 15) return { plf: plf(total), width_ft: feet(15) };
  const share = narrow === 'whole' ? 1 : lowerRoof / 15;
  return { plf: plf(total * share), width_ft: lowerRoof };
}

/**
 * Drag that snow retention holds, by statics: p_s sin(theta) on the horizontal run from the
 * retention to the ridge, per seam. `ps` is on the horizontal projection; `run` is horizontal too
 * (a length along the slope times cos(theta)). Slick metal: no friction is taken off. Retention
 * makes the surface obstructed, so C_s is to be found again with surface `other` before `ps` is
 * taken. What a clamp or a seam holds comes from its test report alone.
 */
export function retentionDrag(
  ps: Psf,
  rise: Per12,
  run: Feet,
  seamSpacing: Inches,
): { readonly sin_theta: number; readonly plf: Plf; readonly per_seam_lb: Pounds } {
  const sin = Math.sin((degreesOfRise(rise) * Math.PI) / 180);
  const perFoot = ps * sin * run;
  return { sin_theta: sin, plf: plf(perFoot), per_seam_lb: pounds((perFoot * seamSpacing) / 12) };
}

/**
 * 2 p_f on overhangs of warm roofs that drain over the eave, with dead load alone (7.4.5; 7.4.4 in
 * 7-22; the 2 p_f from memory). A warm roof here: R under 30, or under 20 where ventilated.
 */
export function eaveIce(pf: Psf, R: number, ventilated: boolean): Psf | null {
  return insulationGate({ R, ventilated }) ? null : psf(2 * pf);
}
