// An old decision asked again on its recorded facts, under the editions it names. The same question
// gives the same bytes; where it does not, the first difference is named.

import { findings } from '#rules';
import { questionAt, type Under } from '../choosing/asking.js';
import { ENGINE, evaluate } from '../choosing/evaluate.js';
import { withExplanation } from '../choosing/what-would.js';
import type { GaugeContent } from '../contract/events.js';
import { surfaceFacts } from '../reading.js';
import { recordedIn, whereOf, type Decided, type Shelf } from './decided.js';

export type Replay =
  | { readonly outcome: 'equal' }
  /** `at` is a JSON pointer into the recorded answer. */
  | { readonly outcome: 'differs'; readonly at: string; readonly words: string }
  | { readonly outcome: 'cannot'; readonly words: string };

/** `canonical` gives the one text of a value (RFC 8785); equal texts are equal bytes. */
export function replay(
  decided: Decided,
  shelf: Shelf,
  canonical: (value: unknown) => string,
): Replay {
  const under = underOf(decided, shelf);
  if (typeof under === 'string') return { outcome: 'cannot', words: under };
  const again = answerAgain(decided, under);
  if (typeof again === 'string') return { outcome: 'cannot', words: again };
  const recorded = {
    findings: decided.findings,
    ...(decided.evaluation ? { evaluation: decided.evaluation } : {}),
  };
  if (canonical(recorded) === canonical(again)) return { outcome: 'equal' };
  const at = firstDifference(recorded, again, canonical);
  const engine = decided.evaluation?.engine ?? ENGINE;
  const made =
    engine === ENGINE ? '' : `; it was recorded by engine "${engine}", this is "${ENGINE}"`;
  return { outcome: 'differs', at, words: `The answer differs first at ${at}${made}.` };
}

/** The editions the decision names, as they stand on the shelf; or why they cannot be used. */
export function underOf(
  { rules_edition, catalogue_edition, evaluation }: Decided,
  { rules, catalogue, book }: Shelf,
): Under | string {
  const edition = rules(rules_edition.number);
  const made = catalogue(catalogue_edition.number);
  if (!edition) return `Rules edition ${rules_edition.number} is not known.`;
  if (!made) return `Catalogue edition ${catalogue_edition.number} is not known.`;
  if (edition.digest !== rules_edition.digest)
    return notTheOne(`Rules edition ${rules_edition.number}`);
  if (made.digest !== catalogue_edition.digest)
    return notTheOne(`Catalogue edition ${catalogue_edition.number}`);
  return {
    book,
    edition: edition.edition,
    editionDigest: edition.digest,
    catalogue: made.edition,
    catalogueDigest: made.digest,
    day: evaluation?.day ?? '',
  };
}

const notTheOne = (which: string): string =>
  `${which} is not the one recorded: its digest differs.`;

function answerAgain(decided: Decided, under: Under) {
  const { stage, evaluation } = decided;
  const at = recordedIn({ ...decided, known: undefined });
  const where = whereOf({ ...decided, known: undefined });
  if (stage !== 'gauge')
    return {
      findings: findings(
        under.edition,
        under.book,
        stage,
        surfaceFacts(at, where, under.catalogue),
      ),
    };
  const { attachment, option } = decided.content as GaugeContent;
  const question = questionAt(at, where, attachment, under);
  if (!question) return `The profile is not in catalogue edition ${under.catalogue.edition}.`;
  const again = withExplanation(question, evaluate(question, evaluation?.facts ?? [], option));
  return {
    findings: again.options.find(({ id }) => id === option)?.findings ?? [],
    evaluation: again,
  };
}

function firstDifference(
  a: unknown,
  b: unknown,
  canonical: (value: unknown) => string,
  at = '',
): string {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return at;
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = [...new Set([...Object.keys(left), ...Object.keys(right)])];
  const differing = keys.find(
    (key) => !(key in left) || !(key in right) || canonical(left[key]) !== canonical(right[key]),
  );
  return differing === undefined
    ? at
    : firstDifference(left[differing], right[differing], canonical, `${at}/${differing}`);
}
