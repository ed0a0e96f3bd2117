// GC_p that stay the same through ASCE/SEI 7-10, 7-16 and 7-22: walls (Fig. 30.4-1, then 30.3-1)
// and monoslope roofs over 3 degrees (Fig. 30.4-5A and 5B, then 30.3-5A and 5B; those of 7-10 from
// memory).

import type { AsceEdition } from '../sources.js';
import { curves, type Curve, type Figure, type ZoneCurve } from './curves.js';

// prettier-ignore
export const WALL_POSITIVE: Curve = [[10, 1.0], [500, 0.7]];
// prettier-ignore
export const WALL_NEGATIVE: readonly ZoneCurve[] = curves(
  ['4', [[10, -1.1], [500, -0.8]]],
  ['5', [[10, -1.4], [500, -0.8]]],
);

export const wallFigureName = (edition: AsceEdition): string =>
  edition === '7-10' ? 'Fig. 30.4-1' : 'Fig. 30.3-1';

const NO_OVERHANG_CURVE =
  'the monoslope figure has no overhang curve; roof zone minus wall, as in 7-22';
const FROM_MEMORY = 'monoslope curves of 7-10 are from memory';

/** Over 3 to 10 degrees. */
export function fig_5A(edition: AsceEdition): Figure {
  // prettier-ignore
  return monoslope(edition, {
    name: edition === '7-10' ? 'Fig. 30.4-5A' : 'Fig. 30.3-5A',
    positive: [[10, 0.3], [100, 0.2]],
    negative: curves(
      ['1', [[10, -1.1]]],
      ['2', [[10, -1.3], [100, -1.2]]],
      ["2'", [[10, -1.6], [100, -1.5]]],
      ['3', [[10, -1.8], [100, -1.2]]],
      ["3'", [[10, -2.6], [100, -1.6]]],
    ),
    overhang: 'roof-minus-wall',
  });
}

/** Over 10 to 30 degrees. */
export function fig_5B(edition: AsceEdition): Figure {
  // prettier-ignore
  return monoslope(edition, {
    name: edition === '7-10' ? 'Fig. 30.4-5B' : 'Fig. 30.3-5B',
    positive: [[10, 0.4], [100, 0.3]],
    negative: curves(
      ['1', [[10, -1.3], [100, -1.1]]],
      ['2', [[10, -1.6], [100, -1.2]]],
      ['3', [[10, -2.9], [100, -2.0]]],
    ),
    overhang: 'roof-minus-wall',
  });
}

const monoslope = (edition: AsceEdition, figure: Figure): Figure => ({
  ...figure,
  ...(edition === '7-10' ? { unconfirmed: FROM_MEMORY } : {}),
  ...(edition === '7-22' ? {} : { overhangUnconfirmed: NO_OVERHANG_CURVE }),
});
