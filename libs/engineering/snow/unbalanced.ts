// Unbalanced snow on gable and hip roofs (7.6.1).

import { feet, psf, type Feet, type Pcf, type Per12, type Psf } from '../units.js';
import { ridgeDriftHeight, type DriftSite } from './drift-height.js';

export interface UnbalancedSnow {
  readonly windward_psf: Psf;
  readonly leeward_psf: Psf;
  /** On top of the leeward load, from the ridge over the width. */
  readonly surcharge_psf: Psf;
  readonly surcharge_width_ft: Feet;
}

/**
 * Asked from 1/2:12 to 7:12, both included. By rise, not degrees: 7:12 is 30.256 degrees and a test
 * against the printed 30.2 would drop it.
 */
export const unbalancedRequired = (rise: Per12): boolean => rise >= 0.5 && rise <= 7;

/**
 * Windward 0.3 p_s, leeward p_s with a strip at the ridge of h_d gamma / sqrt(S) over
 * 8/3 h_d sqrt(S), cut at the eave (from memory). S: run for a rise of one. W: eave to ridge,
 * horizontal, of the windward side. Both wind directions are to be looked at; a panel feels the
 * ridge strip. The roof that is narrow with single rafters has its own case, below.
 */
export function unbalancedSnow(site: DriftSite, ps: Psf, rise: Per12, W: Feet): UnbalancedSnow {
  const hd = ridgeDriftHeight(site, W);
  const S = 12 / rise;
  return {
    windward_psf: psf(0.3 * ps),
    leeward_psf: ps,
    surcharge_psf: ridgeSurcharge(hd, site.gamma, S),
    surcharge_width_ft: feet(Math.min(ridgeExtent(hd, S), W)),
  };
}

export const ridgeSurcharge = (hd: Feet, gamma: Pcf, S: number): Psf =>
  psf((hd * gamma) / Math.sqrt(S));

/** 8/3 h_d sqrt(S), before it is cut at the eave. */
export const ridgeExtent = (hd: Feet, S: number): Feet => feet((8 / 3) * hd * Math.sqrt(S));

/**
 * W of 20 ft or less with single prismatic members from ridge to eave: leeward I_s p_g (p_g in
 * 7-22, I_s = 1), windward none. A panel that spans purlins is not such a member.
 */
export const unbalancedNarrow = (pg: Psf, Is: number): UnbalancedSnow => ({
  windward_psf: psf(0),
  leeward_psf: psf(Is * pg),
  surcharge_psf: psf(0),
  surcharge_width_ft: feet(0),
});
