// A weathered finish against a limit: color change in the limit's own scale, chalk by its rating.
// What the limit or the measurement leaves open is an open question and never a number.

import { step, type Step } from '../check.js';
import { cite } from '../sources.js';
import { colorDifference, inScale, type ColorReading } from './color-reading.js';
import type { ColorScale } from './color-difference.js';
import type { Viewing } from './color-space.js';

/** Limits as a warranty document or a specification states them, for one surface and color. */
export interface FinishTerm {
  /** Greatest color change, in the scale the text names; a text without a scale leaves it out. */
  readonly fade?: { readonly most: number; readonly scale?: ColorScale };
  /** Least rating by ASTM D4214, 10 to 0: 10 is no chalk. */
  readonly chalk?: { readonly least: number };
}

export interface ColorChange {
  /** The unexposed panel kept back, or the reading taken when new. */
  readonly retained: ColorReading;
  readonly weathered: ColorReading;
  readonly viewing: Viewing;
  /** Color is read after dirt and chalk are washed off. */
  readonly washed: boolean;
}

export interface ChalkRating {
  readonly rating: number;
  /** Chalk is rated before washing. */
  readonly ratedBeforeWashing: boolean;
}

export type TermOutcome =
  | {
      readonly outcome: 'within' | 'beyond';
      readonly measured: number;
      readonly limit: number;
      readonly says: string;
      readonly steps: readonly Step[];
    }
  | { readonly outcome: 'open'; readonly says: string };

const open = (says: string): TermOutcome => ({ outcome: 'open', says });

/** Color change against the term, in the term's scale. ASTM D2244-15a, 5.1 and 5.2. */
export function fadeAgainstTerm(term: FinishTerm, change: ColorChange): TermOutcome {
  if (term.fade === undefined) return open('The term sets no limit for color change.');
  const { most, scale } = term.fade;
  if (scale === undefined) {
    return open(
      'The term names no scale for its color change. Ask for it: ' +
        'the same change passes one scale and fails another.',
    );
  }
  if (!change.washed) return open('Color is compared on a washed surface. Wash it and read again.');
  const first = inScale(change.retained, scale, change.viewing);
  const second = inScale(change.weathered, scale, change.viewing);
  const measured = colorDifference(scale, first, second);
  if (!Number.isFinite(measured)) return open(`The readings do not stand for colors in ${scale}.`);
  const { illuminant, observer } = change.viewing;
  return {
    outcome: measured <= most ? 'within' : 'beyond',
    measured,
    limit: most,
    says:
      `Color change ${measured.toFixed(2)} ${scale} (${illuminant}, ${observer}) ` +
      `against at most ${most}.`,
    steps: [
      step(
        'dE',
        measured,
        scale,
        'retained panel against the washed surface',
        cite('astm-d2244', '5.1, 5.2'),
      ),
      step('limit', most, scale, 'the term', { source: 'practice', where: '' }),
    ],
  };
}

/** Chalk against the term: the rating must reach the limit. ASTM D4214: 10 is no chalk. */
export function chalkAgainstTerm(term: FinishTerm, chalk: ChalkRating): TermOutcome {
  if (term.chalk === undefined) return open('The term sets no limit for chalk.');
  if (!(chalk.rating >= 0 && chalk.rating <= 10)) {
    return open('A chalk rating is a number from 0 to 10, where 10 is no chalk.');
  }
  if (!chalk.ratedBeforeWashing)
    return open('Chalk is rated before washing; this surface was washed first.');
  const { least } = term.chalk;
  return {
    outcome: chalk.rating >= least ? 'within' : 'beyond',
    measured: chalk.rating,
    limit: least,
    says: `Chalk rating ${chalk.rating} against at least ${least} (10 is no chalk).`,
    steps: [step('chalk', chalk.rating, '', `rating >= ${least}`, cite('astm-d4214', 'rating'))],
  };
}
