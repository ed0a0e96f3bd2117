// White points by illuminant and observer, Y of white = 100. Hunter's whites and coefficients are
// the scale's own illuminant table, read in an open color library (second-hand). CIELAB's whites
// come from the CIE chromaticities x, y in the same library, except C at 2 degrees, where both
// scales share one white (98.04, 100, 118.11), as the trade's C/2 practice does.

export type Illuminant = 'A' | 'C' | 'D50' | 'D65' | 'F2';
export type Observer = '2-degree' | '10-degree';

/** Xn, Yn, Zn on a scale where Y of white is 100. */
export type White = readonly [Xn: number, Yn: number, Zn: number];

interface HunterWhite {
  readonly white: White;
  readonly Ka: number;
  readonly Kb: number;
}

const row = (Xn: number, Zn: number, Ka: number, Kb: number): HunterWhite => ({
  white: [Xn, 100, Zn],
  Ka,
  Kb,
});

export const HUNTER_WHITES: Readonly<Record<Observer, Readonly<Record<Illuminant, HunterWhite>>>> =
  {
    '2-degree': {
      A: row(109.83, 35.55, 185.2, 38.4),
      C: row(98.04, 118.11, 175, 70),
      D50: row(96.38, 82.45, 173.51, 58.48),
      D65: row(95.02, 108.82, 172.3, 67.2),
      F2: row(98.09, 67.53, 175, 52.9),
    },
    '10-degree': {
      A: row(111.16, 35.19, 186.3, 38.2),
      C: row(97.3, 116.14, 174.3, 69.4),
      D50: row(96.72, 81.45, 173.82, 58.13),
      D65: row(94.83, 107.38, 172.1, 66.7),
      F2: row(102.13, 69.37, 178.6, 53.6),
    },
  };

const fromChromaticity = (x: number, y: number): White => [
  (100 * x) / y,
  100,
  (100 * (1 - x - y)) / y,
];

export const CIELAB_WHITES: Readonly<Record<Observer, Readonly<Record<Illuminant, White>>>> = {
  '2-degree': {
    A: fromChromaticity(0.44757, 0.40745),
    C: [98.04, 100, 118.11],
    D50: fromChromaticity(0.3457, 0.3585),
    D65: fromChromaticity(0.3127, 0.329),
    F2: fromChromaticity(0.37208, 0.37529),
  },
  '10-degree': {
    A: fromChromaticity(0.45117, 0.40594),
    C: fromChromaticity(0.31039, 0.31905),
    D50: fromChromaticity(0.34773, 0.35952),
    D65: fromChromaticity(0.31382, 0.331),
    F2: fromChromaticity(0.37925, 0.36733),
  },
};
