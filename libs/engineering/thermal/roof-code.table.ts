// Metal roofs in the building codes: least slopes and fastener metals. IBC 2018 1507.4.2 (read on
// public copies), IBC 2018 1507.5.2 and 1507.4.4 (read in a state copy, page 377), IRC 2021
// R905.10.2 and R905.4.2 (second-hand).

import { cite, type Citation } from '../sources.js';

export type PanelFamily = 'lapped' | 'standing-seam' | 'metal-shingles';

/** Rise in 12; the limit itself is allowed. Listings, warranties and owners often ask for more. */
export const LEAST_SLOPE = {
  lappedUnsealed: 3,
  lappedSealed: 0.5,
  standingSeam: 0.25,
  metalShingles: 3,
} as const;

export const LEAST_SLOPE_CLAUSE: { readonly [family in PanelFamily]: Citation } = {
  lapped: cite('ibc-2018', '1507.4.2'),
  'standing-seam': cite('ibc-2018', '1507.4.2'),
  'metal-shingles': cite('ibc-2018', '1507.5.2'),
};

/** Fastener metals where the panel's maker approves none (1507.4.4). Stainless suits any roof. */
export const CODE_FASTENER_METALS = {
  steelRoof: ['galvanized', 'stainless'],
  copperRoof: ['copper', 'brass', 'bronze', 'copper alloy', '300-series stainless'],
  anyMetal: ['stainless'],
  aluminumRoofOnAluminum: ['aluminum', 'stainless'],
} as const;
