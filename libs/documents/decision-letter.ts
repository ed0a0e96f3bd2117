// The letter on a claim: what a person decided and why, on which clause, with every computed test laid
// out, and what today's rules would say kept apart.

import type { DecisionLetter } from '#jobs';
import { issuePaper, type PaperOptions } from './pdf.js';
import { column, type Section } from './print.js';
import { capital, dayWords, personWords, spaced } from './words.js';

const OUTCOME: Readonly<Record<DecisionLetter['decision'], string>> = {
  accepted: 'The claim is accepted.',
  'accepted-in-part': 'The claim is accepted in part.',
  declined: 'The claim is declined.',
};

/** Throws PdfRefused. */
export async function renderDecisionLetter(
  letter: DecisionLetter,
  options: PaperOptions,
): Promise<Uint8Array> {
  const { from, to, decided_by } = letter;
  const about = {
    kind: 'Decision on a claim',
    about: `Claim ${letter.claim}; job ${letter.job.number}, ${letter.job.name}`,
    at: letter.decided_at,
    cautions: letter.cautions,
  };
  const body = {
    address: [
      [from.name, ...from.address],
      [dayWords(letter.decided_at)],
      [to.name, ...to.address],
    ],
    outcome: OUTCOME[letter.decision],
    letter: opening(letter),
    sections: sections(letter),
    close: [
      letter.reply,
      `Decided by ${personWords(decided_by.name, decided_by.role)} on ${dayWords(letter.decided_at)}.`,
    ],
    sign: [`For ${from.name}`],
  };
  return issuePaper('decision-letter', about, body, options);
}

function opening(letter: DecisionLetter): readonly string[] {
  const lot = letter.lot === null ? '' : `, lot ${letter.lot}`;
  const under =
    letter.warranty === null
      ? 'No warranty document covers it.'
      : `It is judged under ${letter.warranty}.`;
  return [
    `Your claim of ${dayWords(letter.notice)}: ${spaced(letter.kind)}, ${letter.surface}${lot}. ${under}`,
    `Reason: ${letter.reason}`,
    `Clause: ${letter.clause}`,
    ...(letter.share_left === null ? [] : [`Cover left: ${letter.share_left}`]),
  ];
}

function sections(letter: DecisionLetter): readonly Section[] {
  const parts: readonly Section[] = [
    {
      name: 'What was read',
      list: (letter.readings ?? []).map(({ on, words }) => `${dayWords(on)}: ${words}`),
    },
    {
      name: 'What was measured and computed',
      tables: [
        {
          caption: 'Tests',
          columns: [column('Test'), column('Outcome'), column('In words', 1)],
          rows: letter.tests.map(({ test, outcome, words }) => [
            capital(test),
            outcome === 'open' ? 'open question' : outcome,
            words,
          ]),
        },
        {
          caption: 'Rules',
          columns: [column('Rule'), column('Outcome'), column('Words', 1)],
          rows: letter.findings.map(({ rule, outcome, words }) => [rule, spaced(outcome), words]),
        },
      ].filter(({ rows }) => rows.length > 0),
    },
    { name: 'Exclusions that recorded facts trigger', list: letter.exclusions_triggered },
  ];
  return parts.filter(({ tables = [], list = [] }) => tables.length + list.length > 0);
}
