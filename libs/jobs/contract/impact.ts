// What a drafted edition would change, in words: shared by the service, the pages and the command
// line, so that one sentence says the same everywhere.

export const ANSWERS = ['same', 'other-option', 'now-blocked', 'now-free', 'cannot-say'] as const;
export type Answer = (typeof ANSWERS)[number];
export type Counts = Readonly<Record<Answer, number>>;

export const ANSWER_WORDS: Readonly<Record<Answer, string>> = {
  same: 'same',
  'other-option': 'other gauge',
  'now-blocked': 'now blocked',
  'now-free': 'now free',
  'cannot-say': 'cannot be said',
};

/** The surfaces not ordered yet as they stand, or every decision ever recorded. */
export const IMPACT_SCOPES = ['open', 'all'] as const;
export type ImpactScope = (typeof IMPACT_SCOPES)[number];
const UNIT: Readonly<Record<ImpactScope, readonly [one: string, many: string]>> = {
  open: ['open surface', 'open surfaces'],
  all: ['past decision', 'past decisions'],
};

/** "212 open surfaces checked: 197 same, 11 other gauge, 4 now blocked". */
export function impactSentence(scope: ImpactScope, done: number, counts: Counts): string {
  const [one, many] = UNIT[scope];
  const parts = ANSWERS.filter((each) => each === 'same' || counts[each] > 0).map(
    (each) => `${grouped(counts[each])} ${ANSWER_WORDS[each]}`,
  );
  return `${grouped(done)} ${done === 1 ? one : many} checked: ${parts.join(', ')}`;
}

const grouped = (count: number): string => count.toLocaleString('en-US');

/** One surface or decision that would differ. */
export interface Affected {
  readonly job: string;
  readonly surface: string;
  /** The stage, or those of the surface that differ. */
  readonly stage: string;
  readonly answer: Answer;
  readonly before: string;
  readonly after: string;
  readonly words: string;
  readonly rules: readonly string[];
}
