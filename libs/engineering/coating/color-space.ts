// Color readings and the ways between them: CIE XYZ, CIELAB, its LCh form, and Hunter L, a, b.
// X, Y and Z stand on a scale where Y of white is 100.

import { CIELAB_WHITES, HUNTER_WHITES } from './white.table.js';
import type { Illuminant, Observer, White } from './white.table.js';

export type { Illuminant, Observer, White };

export interface Xyz {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
}
/** L, a and b of CIELAB or of Hunter: the scale is named where the reading is kept. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}
export interface Lch {
  readonly L: number;
  readonly C: number;
  readonly h_deg: number;
}
/** What a reading was taken under. A fade record keeps both. */
export interface Viewing {
  readonly illuminant: Illuminant;
  readonly observer: Observer;
}

export const cielabWhite = (viewing: Viewing): White =>
  CIELAB_WHITES[viewing.observer][viewing.illuminant];

const DELTA = 6 / 29;
const response = (t: number): number => (t > DELTA ** 3 ? Math.cbrt(t) : (841 / 108) * t + 4 / 29);
const responseInverse = (f: number): number => (f > DELTA ? f ** 3 : (108 / 841) * (f - 4 / 29));

/**
 * L* = 116 f(Y/Yn) - 16, a* = 500 (f(X/Xn) - f(Y/Yn)), b* = 200 (f(Y/Yn) - f(Z/Zn)), with
 * f(t) = t^(1/3) over (6/29)^3 and (841/108) t + 4/29 below. CIE e-ILV 17-23-076.
 * Valid for X, Y, Z of at least 0.
 */
export function xyzToCielab({ X, Y, Z }: Xyz, [Xn, Yn, Zn]: White): Lab {
  const fx = response(X / Xn);
  const fy = response(Y / Yn);
  const fz = response(Z / Zn);
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/** The inverse of xyzToCielab. A reading outside all colors gives negative values. */
export function cielabToXyz({ L, a, b }: Lab, [Xn, Yn, Zn]: White): Xyz {
  const fy = (L + 16) / 116;
  return {
    X: Xn * responseInverse(fy + a / 500),
    Y: Yn * responseInverse(fy),
    Z: Zn * responseInverse(fy - b / 200),
  };
}

/** C = sqrt(a*^2 + b*^2), h = atan2(b*, a*) in 0 to 360 degrees. CIE e-ILV 17-23-076. */
export function cielabToLch({ L, a, b }: Lab): Lch {
  const h = (Math.atan2(b, a) * 180) / Math.PI;
  return { L, C: Math.hypot(a, b), h_deg: h < 0 ? h + 360 : h };
}

export function lchToCielab({ L, C, h_deg }: Lch): Lab {
  const h = (h_deg * Math.PI) / 180;
  return { L, a: C * Math.cos(h), b: C * Math.sin(h) };
}

/** White and coefficients of the Hunter scale under one illuminant and observer. */
export interface HunterScale {
  readonly white: White;
  readonly Ka: number;
  readonly Kb: number;
}

/**
 * The scale by which Hunter readings are made. Illuminant C at 2 degrees takes the trade's short
 * form, L = 10 sqrt(Y), a = 17.5 (1.02 X - Y)/sqrt(Y), b = 7 (Y - 0.847 Z)/sqrt(Y), which is the
 * general form with Xn = 100/1.02 and Zn = 100/0.847; the others take the tabulated values.
 */
export function hunterScale({ illuminant, observer }: Viewing): HunterScale {
  if (illuminant === 'C' && observer === '2-degree') return SHORT_FORM_C2;
  return HUNTER_WHITES[observer][illuminant];
}

const SHORT_FORM_C2: HunterScale = { white: [100 / 1.02, 100, 100 / 0.847], Ka: 175, Kb: 70 };

/** Ka = 175 sqrt(Xn/98.043), Kb = 70 sqrt(Zn/118.115): the rule behind the table, from memory. */
export function hunterCoefficients(Xn: number, Zn: number): { Ka: number; Kb: number } {
  return { Ka: 175 * Math.sqrt(Xn / 98.043), Kb: 70 * Math.sqrt(Zn / 118.115) };
}

/**
 * L = 100 sqrt(Y/Yn), a = Ka (X/Xn - Y/Yn)/sqrt(Y/Yn), b = Kb (Y/Yn - Z/Zn)/sqrt(Y/Yn).
 * Hunter's square-root form. Valid for Y over 0.
 */
export function xyzToHunter({ X, Y, Z }: Xyz, { white: [Xn, Yn, Zn], Ka, Kb }: HunterScale): Lab {
  const y = Y / Yn;
  const root = Math.sqrt(y);
  return { L: 100 * root, a: (Ka * (X / Xn - y)) / root, b: (Kb * (y - Z / Zn)) / root };
}

/** The inverse of xyzToHunter. A reading outside all colors gives negative values. */
export function hunterToXyz({ L, a, b }: Lab, { white: [Xn, Yn, Zn], Ka, Kb }: HunterScale): Xyz {
  const root = L / 100;
  const y = root * root;
  return { X: Xn * (y + (a / Ka) * root), Y: Yn * y, Z: Zn * (y - (b / Kb) * root) };
}
