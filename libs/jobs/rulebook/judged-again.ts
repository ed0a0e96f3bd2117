// The options of an old evaluation under those rules of another edition that speak differently, on
// the zones of the same question.

import { bookKey, findings, type Finding, type Gate, type Rule, type ZoneFacts } from '#rules';
import { zonesOf } from '../choosing/demand.js';
import { checkedIn, optionFacts } from '../choosing/evaluate.js';
import { optionsOf, type Option } from '../choosing/options.js';
import type { Question } from '../choosing/question.js';
import { refuses } from '../choosing/why-not.js';
import type { OptionResult } from '../contract/evaluation.js';

/** Only what differs is asked again; what the other rules said stands in the record. */
export function judgedAgain(
  question: Question,
  options: readonly OptionResult[],
  stays: (rule: string) => boolean,
) {
  const { book, edition } = question;
  const here = optionsOf(question);
  const zoned = readsZones(question, 'gauge');
  return options.flatMap(({ id, findings: recorded }) => {
    const option = here.find((each) => each.id === id);
    if (!option) return [];
    const facts = optionFacts(question, option, here, zoned ? zoneFactsOf(question, option) : []);
    const said = [
      ...recorded.filter(({ rule }) => stays(rule)),
      ...findings(edition, book, 'gauge', facts),
    ];
    return [{ option, findings: said, admissible: !said.some(refuses) }];
  });
}

export function signOffAgain(question: Question, picked: string): readonly Finding[] {
  const { book, edition, facts } = question;
  if (!asksAt(question, 'sign-off')) return [];
  const option = optionsOf(question).find(({ id }) => id === picked);
  const zones = option && readsZones(question, 'sign-off') ? zoneFactsOf(question, option) : [];
  return findings(edition, book, 'sign-off', { ...facts, zones });
}

const zoneFactsOf = (question: Question, option: Option): readonly ZoneFacts[] =>
  zonesOf(question).map((zone) => checkedIn(question, option, zone).facts);

const rulesAt = ({ book, edition }: Question, stage: Gate): readonly Rule[] =>
  edition.entries.flatMap(({ rule, version }) => {
    const known = book.get(bookKey(rule, version));
    return known?.stage === stage ? [known] : [];
  });
const asksAt = (question: Question, stage: Gate): boolean => rulesAt(question, stage).length > 0;
const readsZones = (question: Question, stage: Gate): boolean =>
  rulesAt(question, stage).some(({ reads }) => reads.includes('zones'));
