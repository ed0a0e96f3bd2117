// Linear expansion of roof metals, and what is known of roof temperatures. Steel per °F: roofing
// manual, examples read in a trade article; per °C of steel, copper, aluminum, zinc: a trade
// article; stainless: from memory. Other building materials: a builders' association magazine,
// January 2023, page 18.

import { cite } from '../sources.js';

export type RoofMetal = 'steel' | 'stainless' | 'copper' | 'aluminum' | 'zinc';

/** Per °F. A difference of 1 °C is 9/5 of one of 1 °F: never the thermometer's formula. */
export const EXPANSION_PER_F: { readonly [metal in RoofMetal]: number } = {
  steel: 6.7e-6,
  stainless: 9.6e-6,
  copper: (16.8e-6 * 5) / 9,
  aluminum: (23.1e-6 * 5) / 9,
  zinc: (22e-6 * 5) / 9,
};

export const EXPANSION_CITES = {
  steel: cite('roofing-manual', 'Example 1'),
  others: cite('metal-expansion', 'table of metals'),
  clipRange: cite('ufc-3-110-03', 'chapter 4, clips'),
} as const;

/** Per °C, as read. Steel's per °F above is the manual's own figure and a little larger. */
export const EXPANSION_PER_C = {
  steel: 12e-6,
  copper: 16.8e-6,
  aluminum: 23.1e-6,
  zinc: 22e-6,
  concrete: 12e-6,
  glass: 8.5e-6,
  woodAlongGrainLeast: 3.1e-6,
  woodAlongGrainMost: 4.5e-6,
} as const;

/** Range for the design of clips, °F (UFC 3-110-03, 2006). Its printed 93 °C is a slip: 111 °C. */
export const CLIP_DESIGN_RANGE_F = 200;

/** An unpainted roof in the sun on a 90 °F day, °F; darker roofs are hotter. */
export const SUNLIT_ROOF_AT_90F_F = 145;
