// GC_p of gable and hip roofs in ASCE/SEI 7-22, Fig. 30.3-2B to 2G: two or three second-hand
// readings that agree. No area below 10 ft2 counts. Figure 2A is that of 7-16. Overhangs over
// 7 degrees are the roof zone minus the positive of the wall zone below (30.7).

import { curves, type Figure } from './curves.js';

// prettier-ignore
export const FIG_22_2B: Figure = {
  name: 'Fig. 30.3-2B',
  positive: [[10, 0.6], [200, 0.3]],
  negative: curves(
    ['1', [[10, -2.0], [300, -0.5]]],
    ['2', [[10, -2.7], [200, -1.0]]],
    ['3', [[10, -3.6], [100, -1.8]]],
  ),
  overhang: 'roof-minus-wall',
};

// prettier-ignore
export const FIG_22_2C: Figure = {
  name: 'Fig. 30.3-2C',
  positive: [[10, 0.6], [200, 0.3]],
  negative: curves(
    ['1', [[10, -1.5], [200, -0.8]]],
    ['2', [[10, -2.5], [100, -1.2]]],
    ['3', [[10, -3.0], [100, -1.4]]],
  ),
  overhang: 'roof-minus-wall',
};

// prettier-ignore
export const FIG_22_2D: Figure = {
  name: 'Fig. 30.3-2D',
  positive: [[10, 0.9], [200, 0.5]],
  negative: curves(
    ['1', [[10, -1.8], [100, -0.8]]],
    ['2', [[10, -2.0], [200, -1.0]]],
    ['3', [[10, -2.5], [200, -1.0]]],
  ),
  overhang: 'roof-minus-wall',
};

// prettier-ignore
export const FIG_22_2E: Figure = {
  name: 'Fig. 30.3-2E',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(
    ['1', [[10, -1.8], [200, -0.8]]],
    ['2', [[10, -2.4], [200, -1.3]]],
    ['3', [[10, -2.6], [200, -1.4]]],
  ),
  overhang: 'roof-minus-wall',
};

// prettier-ignore
export const FIG_22_2F: Figure = {
  name: 'Fig. 30.3-2F',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(['1', [[10, -1.4], [100, -0.8]]], ['2 3', [[10, -2.0], [100, -1.0]]]),
  overhang: 'roof-minus-wall',
};

/** Hip at 45 degrees; from 27 to 45 the coefficient is interpolated from 2F at the same area. */
// prettier-ignore
export const FIG_22_2G: Figure = {
  name: 'Fig. 30.3-2G',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(
    ['1', [[10, -1.5], [100, -0.7]]],
    ['2', [[10, -1.8], [100, -0.8]]],
    ['3', [[10, -2.4], [100, -1.0]]],
  ),
  overhang: 'roof-minus-wall',
};
