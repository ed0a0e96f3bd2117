// The height of a snow drift, h_d, by edition.

import { feet, type Feet, type Pcf, type Psf } from '../units.js';

/** What the drift height depends on besides the fetch. W2: the winter wind parameter of 7-22. */
export type DriftSite =
  | {
      readonly edition: '7-10' | '7-16';
      readonly pg: Psf;
      readonly gamma: Pcf;
      readonly Is: number;
    }
  | { readonly edition: '7-22'; readonly pg: Psf; readonly gamma: Pcf; readonly W2: number };

/** h_d of the site's edition for the fetch l_u. No snow, no drift. */
export function driftHeight(site: DriftSite, lu: Feet): Feet {
  if (site.pg <= 0) return feet(0);
  switch (site.edition) {
    case '7-10':
      return feet(cubeRoot(site.pg, Math.max(lu, 25)));
    case '7-16':
      return driftHeight716(site.pg, lu, site.Is, site.gamma);
    case '7-22':
      return driftHeight722(site.pg, lu, site.W2, site.gamma);
  }
}

/** h_d for the unbalanced load (7.6.1), l_u = W: W under 20 ft counts as 20 before 7-22. */
export function ridgeDriftHeight(site: DriftSite, W: Feet): Feet {
  if (site.pg <= 0) return feet(0);
  if (site.edition === '7-22') return driftHeight722(site.pg, W, site.W2, site.gamma);
  const formula = cubeRoot(site.pg, Math.max(W, 20));
  return feet(site.edition === '7-16' ? Math.sqrt(site.Is) * formula : formula);
}

/**
 * h_d = sqrt(I_s) (0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5), l_u at least 20 ft; for a shorter fetch
 * h_d need not exceed sqrt(I_s p_g l_u / (4 gamma)) with the true l_u (7-16 Fig. 7.6-1).
 */
export function driftHeight716(pg: Psf, lu: Feet, Is: number, gamma: Pcf): Feet {
  const formula = Math.sqrt(Is) * cubeRoot(pg, Math.max(lu, 20));
  if (lu >= 20) return feet(formula);
  return feet(Math.min(formula, Math.sqrt((Is * pg * lu) / (4 * gamma))));
}

/**
 * h_d = 1.5 sqrt(p_g^0.74 l_u^0.70 W2^1.7 / gamma) (7-22 Eq. 7.6-1), ft, psf, pcf; W2 is a fraction
 * of time, about 0.25 to 0.65 in the lower 48 states. No least fetch.
 */
export const driftHeight722 = (pg: Psf, lu: Feet, W2: number, gamma: Pcf): Feet =>
  feet(1.5 * Math.sqrt((pg ** 0.74 * lu ** 0.7 * W2 ** 1.7) / gamma));

/** 0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5 (7-10 Fig. 7-9, l_u at least 25 ft, no I_s). */
const cubeRoot = (pg: number, lu: number): number =>
  0.43 * Math.cbrt(lu) * Math.sqrt(Math.sqrt(pg + 10)) - 1.5;
