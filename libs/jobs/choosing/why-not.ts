// Why an option was not taken: one class each, in fixed words made from the findings.

import type { Finding } from '#rules';
import type { WhyNot } from '../contract/evaluation.js';
import { optionWords } from './options.js';
import { advantage, type Judged } from './rank.js';

/** Rules that say "no test", by id. */
const NO_TEST = 'GAUGE-03';

export function whyNot(each: Judged, pick: Judged | null): WhyNot {
  const { option } = each;
  const what = optionWords(option);
  if (option.availability === 'not-made') {
    return {
      class: 'not-made',
      rules: refusing(each),
      words: `${what} is not made in this system and color group.`,
    };
  }
  if (option.availability === 'not-stocked') {
    return {
      class: 'not-stocked',
      rules: refusing(each),
      words: `${what} is made, but this office does not stock it.`,
    };
  }
  const refused = each.findings.filter(refuses);
  const noTest = refused.find(({ rule }) => rule === NO_TEST);
  if (
    noTest &&
    refused.every(({ rule, outcome }) => rule === NO_TEST || outcome === 'not-evaluated')
  ) {
    return { class: 'no-test', rules: [NO_TEST], words: noTest.words };
  }
  if (refused.length > 0) {
    return {
      class: 'ruled-out',
      rules: refusing(each),
      words: refused.map(({ rule, words }) => `${rule}: ${words}`).join('; '),
    };
  }
  const better = pick ? advantageWords(pick, each) : 'nothing was picked';
  return { class: 'dominated', rules: [], words: `${what} would pass; ${better}.` };
}

function advantageWords(pick: Judged, each: Judged): string {
  return `${optionWords(pick.option)} ${advantage(pick, each)}`;
}

/** Whether a finding keeps an option from being taken. */
export const refuses = ({ severity, outcome }: Finding): boolean =>
  severity === 'refuse' && (outcome === 'fail' || outcome === 'not-evaluated');
const refusing = (each: Judged): readonly string[] =>
  each.findings.filter(refuses).map(({ rule }) => rule);
