// The impact of a drafted edition before it is published: decision by decision, with progress, in
// bounded memory. Stop asking for more and it is cancelled.

import type { Edition } from '#rules';
import { ANSWERS, underAnother, type Answer, type UnderAnother } from './under-another.js';
import type { Decided, Shelf } from './decided.js';

export type Counts = Readonly<Record<Answer, number>>;
export interface Affected {
  readonly job: string;
  readonly surface: string;
  readonly stage: string;
  readonly answer: Answer;
  readonly words: string;
  readonly rules: readonly string[];
}
export interface Progress {
  readonly done: number;
  readonly counts: Counts;
}
export interface Impact extends Progress {
  readonly edition: number;
  /** Different questions among the decisions; the same one is asked once. */
  readonly asked: number;
  readonly affected: readonly Affected[];
  /** Affected decisions that are counted and not listed. */
  readonly unlisted: number;
}

const MOST_LISTED = 2000;
const MOST_REMEMBERED = 5000;
const EVERY = 100;

/**
 * Yields progress every hundred decisions; returns the impact. `decisions` may be read from a
 * stream.
 */
export function* preview(
  decisions: Iterable<Decided>,
  other: Edition,
  shelf: Shelf,
): Generator<Progress, Impact, void> {
  const counts = Object.fromEntries(ANSWERS.map((each) => [each, 0])) as Record<Answer, number>;
  const known = new Map<string, UnderAnother>();
  const affected: Affected[] = [];
  let [done, asked, unlisted] = [0, 0, 0];
  for (const decided of decisions) {
    const key = questionKey(decided);
    let said = known.get(key);
    if (!said) {
      said = underAnother(decided, other, shelf);
      asked += 1;
      if (known.size >= MOST_REMEMBERED) known.clear();
      known.set(key, said);
    }
    counts[said.answer] += 1;
    if (said.answer !== 'same') {
      const { answer, words, rules } = said;
      if (affected.length < MOST_LISTED)
        affected.push({
          job: decided.job,
          surface: decided.surface,
          stage: decided.stage,
          answer,
          words,
          rules,
        });
      else unlisted += 1;
    }
    done += 1;
    if (done % EVERY === 0) yield { done, counts: { ...counts } };
  }
  return { edition: other.number, done, asked, counts, affected, unlisted };
}

/** The impact of two parts of the decisions together, as two workers found them. */
export function together(a: Impact, b: Impact): Impact {
  const affected = [...a.affected, ...b.affected];
  return {
    edition: a.edition,
    done: a.done + b.done,
    asked: a.asked + b.asked,
    counts: Object.fromEntries(
      ANSWERS.map((each) => [each, a.counts[each] + b.counts[each]]),
    ) as Counts,
    affected: affected.slice(0, MOST_LISTED),
    unlisted: a.unlisted + b.unlisted + Math.max(0, affected.length - MOST_LISTED),
  };
}

/**
 * All that an answer rests on: what the rules said follows from what was read. Decisions with facts
 * of their own beside what they read are not shared.
 */
function questionKey({
  job,
  surface,
  stage,
  content,
  reads,
  evaluation,
  rules_edition,
  catalogue_edition,
  known,
}: Decided): string {
  const beside = evaluation?.facts.filter(({ path }) => !(path in reads)).map(({ value }) => value);
  return JSON.stringify(
    [
      stage,
      rules_edition.number,
      catalogue_edition.number,
      evaluation?.day,
      evaluation?.recommendation.option,
      content,
      Object.values(reads),
      known ? [job, surface] : beside,
    ],
    (name, value: unknown) => (name === 'steps' ? undefined : value),
  );
}
