// The least slope the code allows a metal roof.

import { per12, type Per12 } from '../units.js';
import { LEAST_SLOPE, type PanelFamily } from './roof-code.table.js';

/**
 * Rise in 12 (IBC 1507.4.2 and 1507.5.2; IRC R905.10.2 agrees). `sealed`: sealant applied in the
 * laps, which then belongs on the order; it matters to lapped, non-soldered panels alone. On a
 * recovered roof the low point of the deflected roof counts. Soldered laps are left out.
 */
export function leastSlope(family: PanelFamily, sealed: boolean): Per12 {
  switch (family) {
    case 'lapped':
      return per12(sealed ? LEAST_SLOPE.lappedSealed : LEAST_SLOPE.lappedUnsealed);
    case 'standing-seam':
      return per12(LEAST_SLOPE.standingSeam);
    case 'metal-shingles':
      return per12(LEAST_SLOPE.metalShingles);
  }
}

/** Whether a roof's slope is allowed: not less than the least. */
export const slopeAllowed = (family: PanelFamily, sealed: boolean, rise: Per12): boolean =>
  rise >= leastSlope(family, sealed);
