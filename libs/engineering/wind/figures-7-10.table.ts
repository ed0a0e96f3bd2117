// GC_p of roofs and walls in ASCE/SEI 7-10, Fig. 30.4-1 and 30.4-2A to 2C. End points from memory,
// reproduced by code tables made with them; overhang curves (net) from memory only.

import { curves, type Figure } from './curves.js';

const OVERHANG = 'overhang curves of 7-10 are from memory';

// prettier-ignore
export const FIG_30_4_2A: Figure = {
  name: 'Fig. 30.4-2A',
  positive: [[10, 0.3], [100, 0.2]],
  negative: curves(
    ['1', [[10, -1.0], [100, -0.9]]],
    ['2', [[10, -1.8], [100, -1.1]]],
    ['3', [[10, -2.8], [100, -1.1]]],
  ),
  overhang: curves(
    ['1 2', [[10, -1.7], [100, -1.6], [500, -1.1]]],
    ['3', [[10, -2.8], [100, -0.8]]],
  ),
  overhangUnconfirmed: OVERHANG,
};

// prettier-ignore
export const FIG_30_4_2B: Figure = {
  name: 'Fig. 30.4-2B',
  positive: [[10, 0.5], [100, 0.3]],
  negative: curves(
    ['1', [[10, -0.9], [100, -0.8]]],
    ['2', [[10, -1.7], [100, -1.2]]],
    ['3', [[10, -2.6], [100, -2.0]]],
  ),
  overhang: curves(['2', [[10, -2.2]]], ['3', [[10, -3.7], [100, -2.5]]]),
  overhangUnconfirmed: OVERHANG,
};

// prettier-ignore
export const FIG_30_4_2C: Figure = {
  name: 'Fig. 30.4-2C',
  positive: [[10, 0.9], [100, 0.8]],
  negative: curves(
    ['1', [[10, -1.0], [100, -0.8]]],
    ['2 3', [[10, -1.2], [100, -1.0]]],
  ),
  overhang: curves(['2 3', [[10, -2.0], [100, -1.8]]]),
  overhangUnconfirmed: OVERHANG,
};
