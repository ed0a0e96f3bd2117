// GC_p of roofs in ASCE/SEI 7-16, Fig. 30.3-2A to 2I: second-hand readings. Where readings differ
// both stand here and the larger magnitude counts. Figure 2A is the same in 7-22.

import { curves, type Figure } from './curves.js';

// prettier-ignore
export const FIG_30_3_2A: Figure = {
  name: 'Fig. 30.3-2A',
  positive: [[10, 0.3], [100, 0.2]],
  negative: curves(
    ["1'", [[100, -0.9], [1000, -0.4]]],
    ['1', [[10, -1.7], [500, -1.0]]],
    ['2', [[10, -2.3], [500, -1.4]]],
    ['3', [[10, -3.2], [500, -1.4]]],
  ),
  overhang: curves(
    ["1' 1", [[10, -1.7], [100, -1.6], [500, -1.0]]],
    ['2', [[10, -2.3], [500, -1.1]]],
    ['3', [[10, -3.2], [500, -1.1]]],
  ),
};

// prettier-ignore
export const FIG_16_2B: Figure = {
  name: 'Fig. 30.3-2B',
  positive: [[2, 0.7], [100, 0.3]],
  negative: curves(
    ['1 2e', [[20, -2.0], [100, -0.5]]],
    ['2n 2r 3e', [[10, -3.0], [250, -1.0]]],
    ['3r', [[10, -3.6], [100, -1.8]]],
  ),
  overhang: curves(
    ['1 2e', [[20, -2.5], [100, -1.5]]],
    ['2n 2r', [[10, -3.5], [250, -2.0]]],
    ['3e', [[10, -4.1], [100, -2.3]], [[10, -4.1], [250, -1.5]]],
    ['3r', [[10, -4.7], [250, -1.5]], [[10, -4.7], [100, -2.3]]],
  ),
  overhangUnconfirmed: 'two readings of the overhang zones 3e and 3r; the larger counts',
};

// prettier-ignore
export const FIG_16_2C: Figure = {
  name: 'Fig. 30.3-2C',
  positive: [[2, 0.7], [100, 0.3]],
  negative: curves(
    ['1 2e', [[20, -1.5], [300, -0.8]]],
    ['2n 2r 3e', [[10, -2.5], [150, -1.2]]],
    ['3r', [[4, -3.6], [50, -1.8]]],
  ),
  overhang: curves(
    ['1 2e', [[20, -2.0], [350, -1.8]]],
    ['2n 2r', [[10, -3.0], [150, -2.2]]],
    ['3e', [[10, -3.6], [150, -1.7]]],
    ['3r', [[4, -4.7], [50, -2.4]]],
  ),
  overhangUnconfirmed: 'one reading of the overhang curves',
};

// prettier-ignore
export const FIG_16_2D: Figure = {
  name: 'Fig. 30.3-2D',
  positive: [[10, 0.9], [100, 0.5]],
  negative: curves(
    ['1 2e 2r', [[10, -1.8], [100, -0.8]]],
    ['2n 3r', [[10, -2.0], [200, -1.0]]],
    ['3e', [[2, -3.2], [300, -1.0]]],
  ),
  overhang: curves(
    ['1 2e 2r', [[10, -2.6], [100, -1.6]]],
    ['2n 3r', [[10, -2.8], [200, -1.8]]],
    ['3e', [[2, -4.0], [300, -1.8]]],
  ),
};

const HIP = 'one reading of the hip curves of 7-16';

/** Hip, h/B not above 0.5. Overhang zone 1 reads as growing with area: its largest counts. */
// prettier-ignore
export const FIG_16_2E: Figure = {
  name: 'Fig. 30.3-2E',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(
    ['1', [[20, -1.3], [100, -1.0]]],
    ['2r', [[10, -2.4], [200, -1.3]]],
    ['2e 3', [[10, -1.8], [200, -1.1]]],
  ),
  overhang: curves(
    ['1', [[10, -1.8], [100, -2.0]], [[10, -2.0]]],
    ['2r', [[10, -2.9], [200, -2.3]]],
    ['2e', [[10, -2.3], [200, -2.1]]],
    ['3', [[10, -2.9], [200, -1.6]]],
  ),
  unconfirmed: HIP,
  overhangUnconfirmed: HIP,
};

/** Hip, h/B 0.8 or more. */
// prettier-ignore
export const FIG_16_2F: Figure = {
  name: 'Fig. 30.3-2F',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(
    ['1', [[20, -1.8], [100, -1.0]]],
    ['2r', [[10, -2.4], [200, -1.3]]],
    ['2e 3', [[10, -2.6], [200, -1.4]]],
  ),
  overhang: curves(
    ['1', [[20, -2.3], [100, -2.0]]],
    ['2r', [[10, -2.9], [200, -2.3]]],
    ['2e', [[10, -3.1], [200, -2.4]]],
    ['3', [[10, -3.7], [200, -1.9]]],
  ),
  unconfirmed: HIP,
  overhangUnconfirmed: HIP,
};

// prettier-ignore
export const FIG_16_2G: Figure = {
  name: 'Fig. 30.3-2G',
  positive: [[10, 0.7], [100, 0.3]],
  negative: curves(
    ['1', [[10, -1.4], [100, -0.8]]],
    ['2r 2e 3', [[10, -2.0], [200, -1.0]]],
  ),
  overhang: curves(
    ['1', [[7, -1.9], [200, -1.8]]],
    ['2r 2e', [[7, -2.5], [200, -2.0]]],
    ['3', [[7, -3.1], [200, -1.5]]],
  ),
  unconfirmed: HIP,
  overhangUnconfirmed: HIP,
};

/**
 * Hip over 27 to 45 degrees, coefficients linear in the slope theta (degrees). The areas between
 * which zone 1 falls are read in two ways; 10 and 200 ft2 give the larger load at every area.
 */
export function fig_16_2H(theta: number): Figure {
  const overhang1 = Math.min(-0.895 - 0.0135 * theta, -1.5);
  // prettier-ignore
  return {
    name: 'Fig. 30.3-2H, 2I',
    positive: [[3, 0.9], [100, 0.3]],
    negative: curves(
      ['1', [[10, -0.6175 - 0.02 * theta], [200, -0.095 - 0.0135 * theta]]],
      ['2r', [[7, 1.0 - 0.082 * theta], [100, -1.0]]],
      ['2e', [[3, 0.2 - 0.067 * theta], [50, -0.8]]],
      ['3', [[5, 1.25 - 0.108 * theta], [50, -1.0]]],
    ),
    overhang: curves(
      ['1', [[10, -1.4175 - 0.02 * theta], [200, overhang1]]],
      ['2r', [[7, 0.2 - 0.082 * theta], [50, -1.8]]],
      ['2e', [[3, -0.6 - 0.067 * theta], [50, -1.6]]],
      ['3', [[5, 0.45 - 0.108 * theta], [50, -1.8]]],
    ),
    unconfirmed: 'one unclear reading of the hip curves over 27 degrees',
    overhangUnconfirmed: 'one unclear reading of the hip curves over 27 degrees',
  };
}
