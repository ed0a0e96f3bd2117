// The impact of a drafted edition before it is published: decision by decision, with progress, in
// bounded memory. Stop asking for more and it is cancelled.

import { label, type Edition } from '#rules';
import { ANSWERS, type Affected, type Answer, type Counts } from '../contract/impact.js';
import { underAnother, type UnderAnother } from './under-another.js';
import type { Decided, Shelf } from './decided.js';

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
/** One decision, or all of a surface that stand: those count as one. */
export type Previewed = Decided | readonly Decided[];
export interface Preview {
  add(previewed: Previewed): void;
  progress(): Progress;
  impact(): Impact;
}

const MOST_LISTED = 20_000;
const MOST_REMEMBERED = 5000;
const EVERY = 100;

export function createPreview(other: Edition, shelf: Shelf): Preview {
  const counts = Object.fromEntries(ANSWERS.map((each) => [each, 0])) as Record<Answer, number>;
  const ask = remembering((decided) => underAnother(decided, other, shelf));
  const affected: Affected[] = [];
  let [done, unlisted] = [0, 0];
  return {
    add: (previewed) => {
      const row = Array.isArray(previewed)
        ? surfaceRow(previewed as readonly Decided[], ask.said)
        : rowOf(previewed as Decided, ask.said(previewed as Decided));
      done += 1;
      counts[row.answer] += 1;
      if (row.answer === 'same') return;
      if (affected.length < MOST_LISTED) affected.push(row);
      else unlisted += 1;
    },
    progress: () => ({ done, counts: { ...counts } }),
    impact: () => ({
      edition: other.number,
      done,
      asked: ask.asked(),
      counts: { ...counts },
      affected,
      unlisted,
    }),
  };
}

/**
 * Yields progress every hundred decisions; returns the impact. `decisions` may be read from a
 * stream.
 */
export function* preview(
  decisions: Iterable<Previewed>,
  other: Edition,
  shelf: Shelf,
): Generator<Progress, Impact, void> {
  const running = createPreview(other, shelf);
  let done = 0;
  for (const decided of decisions) {
    running.add(decided);
    done += 1;
    if (done % EVERY === 0) yield running.progress();
  }
  return running.impact();
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

function remembering(ask: (decided: Decided) => UnderAnother) {
  const known = new Map<string, UnderAnother>();
  let asked = 0;
  return {
    asked: () => asked,
    said: (decided: Decided): UnderAnother => {
      const key = questionKey(decided);
      const before = known.get(key);
      if (before) return before;
      const said = ask(decided);
      asked += 1;
      if (known.size >= MOST_REMEMBERED) known.clear();
      known.set(key, said);
      return said;
    },
  };
}

const rowOf = ({ job, surface, stage }: Decided, said: UnderAnother): Affected => {
  const { answer, why: words, before, after, rules } = said;
  return { job, surface, stage, answer, before, after, words, rules };
};

/** Worst first: what a surface comes to is the worst that any of its stages comes to. */
const WORST: readonly Answer[] = ['now-blocked', 'other-option', 'cannot-say', 'now-free', 'same'];

function surfaceRow(
  stages: readonly Decided[],
  said: (decided: Decided) => UnderAnother,
): Affected {
  const rows = stages.map((each) => rowOf(each, said(each)));
  const differing = rows.filter(({ answer }) => answer !== 'same');
  const shown = differing.length > 0 ? differing : rows.slice(0, 1);
  const of = (side: 'before' | 'after'): string =>
    shown.length === 1
      ? (shown[0]?.[side] ?? '')
      : shown.map((each) => `${label(each.stage)}: ${each[side]}`).join('; ');
  return {
    job: rows[0]?.job ?? '',
    surface: rows[0]?.surface ?? '',
    stage: shown.map(({ stage }) => stage).join(', '),
    answer: WORST.find((answer) => rows.some((each) => each.answer === answer)) ?? 'same',
    before: of('before'),
    after: of('after'),
    words: shown.map(({ words }) => words).join('; '),
    rules: [...new Set(shown.flatMap(({ rules }) => rules))],
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
