// What another edition would have said to a decision, on the facts of that decision: a separate
// answer with its own label, never a correction of the old one.

import { findings, type Edition, type Finding } from '#rules';
import { questionAt, type Under } from '../choosing/asking.js';
import { rank } from '../choosing/rank.js';
import type { Answer } from '../contract/impact.js';
import type { OptionResult } from '../contract/evaluation.js';
import type { GaugeContent } from '../contract/events.js';
import { surfaceFacts } from '../reading.js';
import { chosenWords, sheetWords } from './chosen-words.js';
import { recordedIn, whereOf, type Decided, type Shelf } from './decided.js';
import { entriesChanged } from './difference.js';
import { judgedAgain, signOffAgain } from './judged-again.js';
import { underOf } from './replay.js';

export interface UnderAnother {
  readonly answer: Answer;
  readonly edition: number;
  readonly words: string;
  /** The same without its label, for a table that has one. */
  readonly why: string;
  /** What was decided, and what stood in the way of it. */
  readonly before: string;
  readonly after: string;
  /** Rules that stand in the way now and did not, or did and do not. */
  readonly rules: readonly string[];
}

export function underAnother(decided: Decided, other: Edition, shelf: Shelf): UnderAnother {
  const under = underOf(decided, shelf);
  const chosen = chosenWords(decided);
  if (typeof under === 'string')
    return answer('cannot-say', other, under.replace(/\.$/, ''), [], [chosen, 'cannot be said']);
  const { stays, asked, differs } = differenceOf(under.edition, other);
  if (!differs) return answer('same', other, 'no rule differs', [], [chosen, chosen]);
  const again: Under = { ...under, edition: asked };
  return decided.stage === 'gauge' && decided.evaluation
    ? gaugeUnder(decided, decided.evaluation.options, again, stays)
    : stageUnder(decided, again, stays);
}

interface Difference {
  readonly differs: boolean;
  /** Whether a rule says under the other edition what it said under the first. */
  readonly stays: (rule: string) => boolean;
  /** The other edition, with only those rules that speak differently. */
  readonly asked: Edition;
}
const known = new WeakMap<Edition, WeakMap<Edition, Difference>>();

/** Editions never change, so two of them are compared once. */
function differenceOf(own: Edition, other: Edition): Difference {
  const others = known.get(own) ?? new WeakMap<Edition, Difference>();
  known.set(own, others);
  const found = others.get(other) ?? compare(own, other);
  others.set(other, found);
  return found;
}

function compare(own: Edition, other: Edition): Difference {
  const changed = entriesChanged(own, other);
  const gone = own.entries.filter(({ rule }) => !other.entries.some((each) => each.rule === rule));
  const moved = new Set([...changed, ...gone].map(({ rule }) => rule));
  return {
    differs: moved.size > 0,
    stays: (rule) => !moved.has(rule),
    asked: { ...other, entries: changed },
  };
}

const answer = (
  said: Answer,
  { number }: Pick<Edition, 'number'>,
  words: string,
  rules: readonly string[],
  [before, after]: readonly [before: string, after: string],
): UnderAnother => ({
  answer: said,
  edition: number,
  words: `Under edition ${number}, which is not the edition of the decision: ${words}.`,
  why: words,
  before,
  after,
  rules,
});

/** Whether a finding stands between the decision and the order. */
const obstructs = ({ severity, outcome }: Finding): boolean =>
  (severity === 'refuse' || severity === 'require') &&
  (outcome === 'fail' || outcome === 'not-evaluated');
const obstacles = (said: readonly Finding[]): readonly string[] =>
  said.filter(obstructs).map(({ rule }) => rule);

function stageUnder(
  decided: Decided,
  under: Under,
  stays: (rule: string) => boolean,
): UnderAnother {
  const facts = surfaceFacts(recordedIn(decided), whereOf(decided), under.catalogue);
  const fresh = findings(under.edition, under.book, decided.stage, facts);
  const was = obstacles(decided.findings);
  return compared(
    decided,
    was,
    obstacles([...decided.findings.filter(({ rule }) => stays(rule)), ...fresh]),
    fresh,
    under.edition,
  );
}

function compared(
  decided: Decided,
  was: readonly string[],
  now: readonly string[],
  fresh: readonly Finding[],
  edition: Edition,
): UnderAnother {
  const chosen = chosenWords(decided);
  const sides = [standing(chosen, was), standing(chosen, now)] as const;
  const added = now.filter((rule) => !was.includes(rule));
  if (added.length > 0) {
    const said = fresh.filter((each) => obstructs(each) && added.includes(each.rule));
    const why = said.map(({ rule, words }) => `${rule}: ${words}`).join('; ');
    if (!asks(decided, said)) return answer('now-blocked', edition, why, added, sides);
    const after = `${chosen}; not recorded then: what ${added.join(', ')} ask`;
    return answer('cannot-say', edition, why, added, [sides[0], after]);
  }
  if (was.length > now.length) {
    const lifted = was.filter((rule) => !now.includes(rule));
    const words = `${lifted.join(', ')} no longer in the way`;
    return answer(now.length === 0 ? 'now-free' : 'same', edition, words, lifted, sides);
  }
  return answer('same', edition, 'the same outcome', [], sides);
}

/** Only facts are missing that an old decision did not record; of an open surface they are due. */
const asks = ({ known }: Decided, said: readonly Finding[]): boolean =>
  known === undefined && said.every(({ outcome }) => outcome === 'not-evaluated');

const standing = (chosen: string, obstacles: readonly string[]): string =>
  obstacles.length === 0 ? chosen : `${chosen}; in the way: ${obstacles.join(', ')}`;

function gaugeUnder(
  decided: Decided,
  options: readonly OptionResult[],
  under: Under,
  stays: (rule: string) => boolean,
): UnderAnother {
  const { edition } = under;
  const { attachment, option: picked } = decided.content as GaugeContent;
  const chosen = chosenWords(decided);
  const question = questionAt(recordedIn(decided), whereOf(decided), attachment, under);
  if (!question) {
    const gone = `the profile is not in catalogue edition ${under.catalogue.edition}`;
    return answer('cannot-say', edition, gone, [], [chosen, 'cannot be said']);
  }
  const judged = judgedAgain(question, options, stays);
  const signedBefore = (decided.evaluation?.sign_off_required ?? []).map(
    (words) => words.split(':')[0] ?? '',
  );
  const signOff = signOffAgain(question, picked);
  const before = options.find(({ id }) => id === picked)?.findings ?? [];
  const now = judged.find(({ option }) => option.id === picked)?.findings ?? [];
  const result = compared(
    decided,
    [...new Set([...obstacles(before), ...signedBefore])],
    [...new Set([...obstacles(now), ...signedBefore.filter(stays), ...obstacles(signOff)])],
    [...now, ...signOff],
    edition,
  );
  if (result.answer !== 'same') return result;
  const order = rank(
    judged.filter(({ admissible }) => admissible),
    question.facts.priorities ?? [],
  );
  const first = order[0]?.option.id ?? null;
  const recommended = decided.evaluation?.recommendation.option ?? null;
  if (first === recommended) return result;
  const [was, becomes] = [optionWordsOf(options, recommended), optionWordsOf(options, first)];
  return answer(
    'other-option',
    edition,
    `${becomes} would be recommended instead of ${was}`,
    edition.entries.map(({ rule }) => rule),
    [`${chosen}; ${was} recommended`, `${becomes} recommended`],
  );
}

const optionWordsOf = (options: readonly OptionResult[], id: string | null): string => {
  const option = options.find((each) => each.id === id);
  return option ? sheetWords(option.gauge, option.thickness.v) : 'nothing';
};
