// Loads on a sloped panel turned into what acts normal to it and along it.

import { psf, type Degrees, type Psf } from '../units.js';

export interface SlopeComponents {
  readonly normal: Psf;
  /** Down the slope. */
  readonly along: Psf;
}

const radians = (theta: Degrees): number => (theta * Math.PI) / 180;

/**
 * Of a load given on the horizontal projection (snow, roof live load), per ft2 of slope: p cos^2
 * normal, p cos sin along. Statics.
 */
export function ofHorizontal(load: Psf, theta: Degrees): SlopeComponents {
  const t = radians(theta);
  return { normal: psf(load * Math.cos(t) ** 2), along: psf(load * Math.cos(t) * Math.sin(t)) };
}

/** Of a load given on the slope itself (the panel's weight): p cos normal, p sin along. Statics. */
export function ofSlope(load: Psf, theta: Degrees): SlopeComponents {
  const t = radians(theta);
  return { normal: psf(load * Math.cos(t)), along: psf(load * Math.sin(t)) };
}
