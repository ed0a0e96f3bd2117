// What would change it: for every option of an evaluation the changes of design that would turn its
// outcome, why it stands, and what-ifs of the site. Pure: the same question gives the same bytes.

import type {
  Evaluation,
  OptionResult,
  Searched,
  SufficientReason,
  WhatWould,
} from '../contract/evaluation.js';
import { catalogueOf } from './catalogue-of.js';
import { cellsOf, type Cells } from './cells.js';
import { framesOf, type Frames } from './choices.js';
import { changeSets, keysOf, reproduces, type ChangeSet } from './change-sets.js';
import { whatPutsFirst } from './comes-first.js';
import { changeSetWords, reasonWords } from './explain-words.js';
import { hittingSets } from './minimal-sets.js';
import { optionsOf, optionWords, type Option } from './options.js';
import type { Question } from './question.js';
import type { Target } from './spacings.js';
import { whatIfs } from './what-if.js';

/** Judgements of one option in one zone that one explanation may take. */
export const BUDGET = 10_000;
/** Sufficient reasons on the way, and kept for one option. */
const MOST_REASONS = 500;
const KEPT_REASONS = 3;

export interface Explanation {
  readonly what_would_change: readonly WhatWould[];
  readonly reasons: readonly SufficientReason[];
  readonly searched: Searched;
  readonly budget_reached: boolean;
}

/** `evaluation` must be that of the same question. */
export function explain(question: Question, evaluation: Evaluation, budget = BUDGET): Explanation {
  const cells = cellsOf(question, budget);
  const options = optionsOf(ownQuestion(question));
  const frames = framesOf(question);
  const parts = evaluation.options.flatMap((result) => {
    const option = options.find(({ id }) => id === result.id);
    return option ? [explained(cells, frames, ownQuestion(question), option, result)] : [];
  });
  const { judgements, reached } = cells.spent();
  return {
    what_would_change: parts.flatMap(({ changes }) => changes),
    reasons: parts.flatMap(({ reasons }) => reasons),
    searched: {
      judgements,
      budget,
      not_reproduced: parts.reduce((sum, each) => sum + each.dropped, 0),
    },
    budget_reached: reached || parts.some(({ whole }) => !whole),
  };
}

/** The evaluation with its explanation in it, as it goes into the record. */
export const withExplanation = (question: Question, evaluation: Evaluation): Evaluation => ({
  ...evaluation,
  ...explain(question, evaluation),
});

interface Part {
  readonly changes: readonly WhatWould[];
  readonly reasons: readonly SufficientReason[];
  readonly whole: boolean;
  readonly dropped: number;
}

function explained(
  cells: Cells,
  frames: Frames,
  question: Question,
  option: Option,
  { admissible, why_not, rank }: OptionResult,
): Part {
  const target: Target = admissible ? 'fails' : 'passes';
  const passesOnly = admissible && why_not !== null;
  if (passesOnly) {
    const changes = rank === 1 ? [] : whatPutsFirst(cells, frames, question, option);
    return { changes, reasons: [], whole: true, dropped: 0 };
  }
  const { sets, whole } = changeSets(cells, frames, option, target);
  const shown = sets.filter((set) => reproduces(cells, set, target));
  const reasons = whole ? reasonsOf(option, shown, target) : [];
  return {
    changes: [
      ...inOrder(shown).map((set) => changeSetWords(option.id, set, target)),
      ...whatIfs(cells, question, option, target),
    ],
    reasons: reasons ?? [],
    whole: whole && reasons !== undefined,
    dropped: sets.length - shown.length,
  };
}

const ownQuestion = (question: Question): Question => ({
  ...question,
  catalogue: catalogueOf(question.catalogue, question.profile.id),
});

/** Fewest changes first; attachment before supports before other choices of make. */
const ORDER = [
  'spacing',
  'rows',
  'supports',
  'fastener',
  'color_group',
  'paint_system',
  'metallic_coating',
  'profile',
];
function inOrder(sets: readonly ChangeSet[]): readonly ChangeSet[] {
  const weight = (set: ChangeSet): number =>
    keysOf(set).reduce((sum, key) => sum + 100 + ORDER.indexOf(key.split(' ')[0] ?? ''), 0);
  return [...sets].sort((a, b) => weight(a) - weight(b));
}

function reasonsOf(
  option: Option,
  sets: readonly ChangeSet[],
  target: Target,
): readonly SufficientReason[] | undefined {
  const all = hittingSets(sets.map(keysOf), MOST_REASONS);
  return all
    ?.slice(0, KEPT_REASONS)
    .map((keys) => reasonWords(option.id, optionWords(option), target, keys, sets));
}
