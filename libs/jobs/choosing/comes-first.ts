// What would put an option first that passes but is not recommended: one other choice of make, or
// another first priority of the owner. Ranked by the same declared rule.

import { label, PRIORITIES } from '#rules';
import type { WhatWould } from '../contract/evaluation.js';
import type { Cells } from './cells.js';
import type { Frame, Frames } from './choices.js';
import { zonesOf } from './demand.js';
import { judge } from './evaluate.js';
import { optionsOf, optionWords, type Option } from './options.js';
import type { Question } from './question.js';
import { rank } from './rank.js';

/** One change of each kind that does it, the first found. */
export function whatPutsFirst(
  cells: Cells,
  frames: Frames,
  question: Question,
  option: Option,
): readonly WhatWould[] {
  const found = new Map<string, WhatWould>();
  for (const frame of [
    ...preferring(question, option),
    ...frames(option, (keys) => keys.length > 1),
  ]) {
    const [change] = frame.changes.filter(({ key }) => key !== 'grade');
    if (!change || found.has(change.key)) continue;
    if (!cells.spend(0)) break;
    if (firstOf(cells, frame)?.id === frame.option.id)
      found.set(change.key, wordsOf(option, frame));
  }
  return [...found.values()];
}

function preferring(question: Question, option: Option): readonly Frame[] {
  const now = question.facts.priorities ?? [];
  const options = optionsOf(question);
  return PRIORITIES.filter((each) => each !== now[0]).map((first) => ({
    question: {
      ...question,
      facts: { ...question.facts, priorities: [first, ...now.filter((each) => each !== first)] },
    },
    option,
    options,
    changes: [
      {
        key: 'priority',
        what: 'first priority',
        from: now[0] ? label(now[0]) : 'none',
        to: label(first),
      },
    ],
  }));
}

function firstOf(cells: Cells, { question, options }: Frame): Option | undefined {
  const zones = zonesOf(question);
  cells.spend(zones.length * options.length);
  const judged = options.map((each) => judge(question, each, options, zones, cells.check));
  return rank(
    judged.filter(({ admissible }) => admissible),
    question.facts.priorities ?? [],
  )[0]?.option;
}

function wordsOf(option: Option, { option: there, changes }: Frame): WhatWould {
  const [change] = changes;
  return {
    option: option.id,
    becomes: 'comes-first',
    changes: changes.map(({ what, from, to }) => ({ what, from, to })),
    words: `${optionWords(there)} would come first with ${change?.what} ${change?.to}.`,
    site_fact: false,
  };
}
