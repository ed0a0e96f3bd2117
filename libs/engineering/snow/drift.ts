// Snow drifts on a lower roof, behind a parapet, at a projection and from a separate building.

import { feet, psf, type Feet, type Psf } from '../units.js';
import { driftHeight, type DriftSite } from './drift-height.js';

/**
 * Whether a windward or parapet drift of 7-22 stops at the clear height. Sources differ; uncapped
 * is the larger load. Capped, its width is 8 h²/h_c: one author's own choice, not read.
 */
export type WindwardCap = 'uncapped' | 'capped';

export interface DriftPlace {
  /** Leeward: fetch is the upper roof. Windward: the lower roof. Parapet: the roof upwind of it. */
  readonly kind: 'leeward' | 'windward' | 'parapet';
  readonly lu: Feet;
  /** From the lower roof to the upper roof's edge with its parapet; or the parapet's height. */
  readonly clear?: Feet;
  /** Length of the lower roof, which limits a leeward drift from 7-16 on. */
  readonly lowerRoof?: Feet;
}

export interface Drift {
  readonly required: boolean;
  /** Depth of the balanced snow, p_s / gamma. */
  readonly hb_ft: Feet;
  /** Clear height above it; null where the clear height is not given. */
  readonly hc_ft: Feet | null;
  readonly hd_ft: Feet;
  /** 0.75 h_d where windward, and never over h_c where the edition caps it. */
  readonly height_ft: Feet;
  /** Peak of the triangle, on top of the balanced load, at the step. */
  readonly pd_psf: Psf;
  /** Base of the triangle; on a shorter roof it is cut off at the roof's end, not squeezed. */
  readonly width_ft: Feet;
}

/**
 * The drift by 7.7.1 (steps) and 7.8 (parapets): triangle of height h (h_d, or 0.75 h_d windward)
 * and width 4 h; where h passes h_c the height is h_c and the width 4 h²/h_c, at most 8 h_c.
 * 7-22: windward and parapet width 8 h. 7-16 on: a leeward h_d need not exceed 0.6 of the lower
 * roof's length. No drift where h_c / h_b is under 0.2. `ps` is the balanced load of the roof that
 * carries the drift, never the least load p_m. Intersecting drifts are left out: take the larger.
 */
export function driftOnRoof(
  site: DriftSite,
  place: DriftPlace,
  ps: Psf,
  cap: WindwardCap = 'uncapped',
): Drift {
  const hb = ps / site.gamma;
  const hc = place.clear === undefined ? Infinity : place.clear - hb;
  const hc_ft = place.clear === undefined ? null : feet(hc);
  const hb_ft = feet(hb);
  const none = feet(0);
  if (site.pg <= 0 || !driftRequired(hc, hb)) {
    return {
      required: false,
      hb_ft,
      hc_ft,
      hd_ft: none,
      height_ft: none,
      pd_psf: psf(0),
      width_ft: none,
    };
  }
  const hd = limitedHeight(site, place);
  const h = place.kind === 'leeward' ? hd : 0.75 * hd;
  const wide = site.edition === '7-22' && place.kind !== 'leeward';
  const { height, width } = wide ? windward722(h, hc, cap) : triangle(h, hc);
  return {
    required: true,
    hb_ft,
    hc_ft,
    hd_ft: hd,
    height_ft: feet(height),
    pd_psf: psf(height * site.gamma),
    width_ft: feet(width),
  };
}

/** Drift is looked at where h_c / h_b is 0.2 or more (7.7.1). */
export const driftRequired = (hc: number, hb: number): boolean => hc >= 0.2 * hb;

/** h_d, limited to 0.6 of the lower roof's length on the leeward side from 7-16 on. */
function limitedHeight(site: DriftSite, place: DriftPlace): Feet {
  const hd = driftHeight(site, place.lu);
  return place.kind === 'leeward' && site.edition !== '7-10' && place.lowerRoof !== undefined
    ? leewardLimit(hd, place.lowerRoof)
    : hd;
}

/** A leeward h_d need not exceed 60 percent of the length of the lower roof (7-16, 7-22). */
export const leewardLimit = (hd: Feet, lowerRoof: Feet): Feet =>
  feet(Math.min(hd, 0.6 * lowerRoof));

const triangle = (h: number, hc: number): { height: number; width: number } =>
  h <= hc ? { height: h, width: 4 * h } : { height: hc, width: Math.min((4 * h * h) / hc, 8 * hc) };

const windward722 = (h: number, hc: number, cap: WindwardCap): { height: number; width: number } =>
  cap === 'uncapped' || h <= hc
    ? { height: h, width: 8 * h }
    : { height: hc, width: (8 * h * h) / hc };

export interface Projection {
  /** Length of the side that faces the wind. */
  readonly side: Feet;
  /** Clear space beneath it, above the roof. */
  readonly clearBelow: Feet;
  readonly upwind: Feet;
  readonly downwind: Feet;
  readonly height?: Feet;
}

/** A projection under 15 ft long or 2 ft or more clear of the roof collects no drift (7.8). */
export const projectionDriftRequired = (it: Pick<Projection, 'side' | 'clearBelow'>): boolean =>
  it.side >= 15 && it.clearBelow < 2;

/** Drift at a projection (7.8): as a parapet's, with the longer of the roofs up- and downwind. */
export function driftAtProjection(
  site: DriftSite,
  it: Projection,
  ps: Psf,
  cap: WindwardCap = 'uncapped',
): Drift | null {
  if (!projectionDriftRequired(it)) return null;
  const place: DriftPlace = {
    kind: 'parapet',
    lu: projectionFetch(it),
    ...(it.height === undefined ? {} : { clear: it.height }),
  };
  return driftOnRoof(site, place, ps, cap);
}

/** l_u of a projection: the larger of the roof lengths up- and downwind (7.8). */
export const projectionFetch = (it: Pick<Projection, 'upwind' | 'downwind'>): Feet =>
  feet(Math.max(it.upwind, it.downwind));

/**
 * Drift thrown from a higher separate building (7.7.2): where the gap s is under 20 ft and under
 * 6 h, h_d = min(h_d(l_u of the higher roof), (6 h - s)/6) over min(6 h_d, 6 h - s). 7-22 read
 * second-hand; 7-10 and 7-16 from memory. Null where none is thrown.
 */
export function driftFromNeighbor(
  site: DriftSite,
  gap: Feet,
  drop: Feet,
  lu: Feet,
): { readonly hd_ft: Feet; readonly pd_psf: Psf; readonly width_ft: Feet } | null {
  if (gap >= 20 || gap >= 6 * drop) return null;
  const hd = feet(Math.min(driftHeight(site, lu), (6 * drop - gap) / 6));
  return {
    hd_ft: hd,
    pd_psf: psf(hd * site.gamma),
    width_ft: feet(Math.min(6 * hd, 6 * drop - gap)),
  };
}
