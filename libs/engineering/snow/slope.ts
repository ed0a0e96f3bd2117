// A roof slope as both its rise in 12 and its degrees, for rules that are written in either.

import { degrees, degreesOfRise, per12, type Degrees, type Per12 } from '../units.js';

export interface Slope {
  readonly rise: Per12;
  readonly theta: Degrees;
}

export const slopeOfRise = (rise: Per12): Slope => ({ rise, theta: degreesOfRise(rise) });

/**
 * Degrees are rounded: within a hundredth of 1/2:12 (2.386) or 7:12 (30.256), the limits of 7.6.1
 * that go by rise, they mean that rise.
 */
export function slopeOfDegrees(theta: Degrees): Slope {
  for (const limit of [0.5, 7]) {
    if (Math.abs(degreesOfRise(per12(limit)) - theta) <= 0.01) return { rise: per12(limit), theta };
  }
  return { rise: per12(12 * Math.tan((theta * Math.PI) / 180)), theta };
}

export const LEVEL: Slope = { rise: per12(0), theta: degrees(0) };
