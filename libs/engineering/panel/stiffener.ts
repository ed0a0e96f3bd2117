// Flanges that lean on a stiffener: a simple lip at the edge, or ribs between the webs
// (AISI S100-16 Appendix 1, 1.3 and 1.4). Inches and ksi; compression is positive.

import {
  effectiveWidth,
  reduction,
  S100_RULES,
  type PlateRules,
  type PlateWidth,
} from './plate.js';
import { POISSON } from './steel.js';

export interface LippedFlange {
  readonly w: number;
  readonly t: number;
  /** Flat width and overall width of the lip. */
  readonly d: number;
  readonly D: number;
  /** Angle between lip and flange, radians. */
  readonly theta: number;
  readonly f: number;
  readonly E: number;
}

export interface LippedWidth extends PlateWidth {
  readonly S: number;
  readonly Is: number;
  readonly Ia: number;
  /** I_s/I_a, at most 1: the share of the lip that counts. */
  readonly RI: number;
}

/**
 * A uniformly compressed flange with a simple lip (1.3): S = 1.28 sqrt(E/f); no lip needed to
 * w/t = 0.328 S; I_s = d^3 t sin^2 theta/12; I_a = 399 t^4 ((w/t)/S - 0.328)^3, at most
 * t^4 (115 (w/t)/S + 5); k = (k_a - k_u) R_I^n + k_u with k_a = 5.25 - 5 D/w, at most 4.
 * Valid to w/t 60, D/w 0.8, lip angle 40 to 140 degrees; the caller refuses what lies outside.
 */
export function lippedFlange(x: LippedFlange, rules: PlateRules = S100_RULES): LippedWidth {
  const { w, t, d, D, theta, f, E } = x;
  const S = 1.28 * Math.sqrt(E / f);
  const relative = w / t / S;
  const Is = (d ** 3 * t * Math.sin(theta) ** 2) / 12;
  if (relative <= rules.lipConstant) {
    const { k, lambda } = effectiveWidth(w, t, f, E, 4);
    return { k, lambda, rho: 1, b: w, S, Is, Ia: 0, RI: 1 };
  }
  const Ia = Math.min(
    399 * t ** 4 * (relative - rules.lipConstant) ** 3,
    t ** 4 * (115 * relative + 5),
  );
  const RI = Math.min(1, Is / Ia);
  const full = Math.max(rules.unstiffened, Math.min(4, 5.25 - (5 * D) / w));
  const k = (full - rules.unstiffened) * RI ** rules.lipExponent(relative) + rules.unstiffened;
  const { lambda, rho, b } = effectiveWidth(w, t, f, E, k);
  return { k, lambda, rho, b, S, Is, Ia, RI };
}

export interface RibbedFlange {
  /** Width between the webs and the widest flat between ribs. */
  readonly bo: number;
  readonly bp: number;
  readonly t: number;
  /** Each rib: area, own second moment about the flats' mid-line, distance from a web. */
  readonly ribs: readonly { readonly area: number; readonly I: number; readonly c: number }[];
  /** Gross area of flats and ribs. */
  readonly area: number;
  /** Flat width of the adjoining webs. */
  readonly h: number;
  readonly f: number;
  readonly E: number;
}

/**
 * A flange with intermediate stiffeners (1.4.1): the lesser of distortional R k_d and local
 * k_loc = 4 (b_o/b_p)^2 gives rho, and b = rho A_g/t lies at the centroid of flats and ribs.
 * k_d = ((1 + beta^2)^2 + 2 sum gamma_i omega_i)/(beta^2 (1 + 2 sum delta_i omega_i)) with
 * omega_i = sin^2(pi c_i/b_o), which for even ribs is the standard's short form.
 * From memory; no published result was found to test it.
 */
export function ribbedFlange(x: RibbedFlange): PlateWidth {
  const { bo, bp, t, ribs, area, h, f, E } = x;
  let [gamma, delta] = [0, 0];
  for (const rib of ribs) {
    const omega = Math.sin((Math.PI * rib.c) / bo) ** 2;
    gamma += ((10.92 * rib.I) / (bo * t ** 3)) * omega;
    delta += (rib.area / (bo * t)) * omega;
  }
  const beta2 = Math.sqrt(1 + 2 * gamma);
  const kd = ((1 + beta2) ** 2 + 2 * gamma) / (beta2 * (1 + 2 * delta));
  const R = bo / h < 1 ? 2 : Math.max(0.5, (11 - bo / h) / 5);
  const k = Math.min(R * kd, 4 * (bo / bp) ** 2);
  const Fcr = ((k * Math.PI ** 2 * E) / (12 * (1 - POISSON ** 2))) * (t / bo) ** 2;
  const lambda = Math.sqrt(f / Fcr);
  const rho = reduction(lambda);
  return { k, lambda, rho, b: (rho * area) / t };
}
