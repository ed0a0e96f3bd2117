// A pair of color readings brought into the scale that a limit names.

import {
  cielabToXyz,
  cielabWhite,
  hunterScale,
  hunterToXyz,
  xyzToCielab,
  xyzToHunter,
  type Lab,
  type Viewing,
  type Xyz,
} from './color-space.js';
import { ciede2000, labDistance, type ColorScale } from './color-difference.js';

/** A reading as the instrument gave it, with the space it stands in. */
export type ColorReading =
  | { readonly space: 'XYZ'; readonly value: Xyz }
  | { readonly space: 'CIELAB' | 'Hunter'; readonly value: Lab };

/** CIEDE2000 works on CIELAB coordinates. Valid for Y over 0 where the scale is Hunter. */
export function inScale(reading: ColorReading, scale: ColorScale, viewing: Viewing): Lab {
  const space = scale === 'Hunter' ? 'Hunter' : 'CIELAB';
  if (reading.space === space) return reading.value;
  const xyz = toXyz(reading, viewing);
  return space === 'Hunter'
    ? xyzToHunter(xyz, hunterScale(viewing))
    : xyzToCielab(xyz, cielabWhite(viewing));
}

export function toXyz(reading: ColorReading, viewing: Viewing): Xyz {
  if (reading.space === 'XYZ') return reading.value;
  return reading.space === 'CIELAB'
    ? cielabToXyz(reading.value, cielabWhite(viewing))
    : hunterToXyz(reading.value, hunterScale(viewing));
}

/** dE of two readings already in the scale. */
export const colorDifference = (scale: ColorScale, first: Lab, second: Lab): number =>
  scale === 'CIEDE2000' ? ciede2000(first, second).dE : labDistance(first, second);
