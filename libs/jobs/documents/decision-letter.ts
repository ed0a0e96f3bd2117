// The letter on a decided claim as a fold: what was claimed, the computed tests as they stood, and what
// a person decided on which clause.

import type { ClaimTest } from '../contract/after-order-events.js';
import type { EventData, PastEvent } from '../contract/events.js';
import { shareLeft } from '../after-order/share.js';
import type { Warranty } from '../after-order/state.js';
import type { Names } from './moment.js';
import { jobUpTo, naming } from './moment.js';

export interface DecisionLetter {
  readonly document: 'decision-letter';
  readonly job: { readonly number: string; readonly name: string };
  readonly claim: string;
  /** "fade". */
  readonly kind: string;
  readonly surface: string;
  readonly lot: string | null;
  readonly notice: string;
  readonly to: { readonly name: string; readonly address: readonly string[] };
  readonly from: { readonly name: string; readonly address: readonly string[] };
  /** RFC 3339. */
  readonly decided_at: string;
  readonly decided_by: { readonly name: string; readonly role: string };
  readonly decision: 'accepted' | 'accepted-in-part' | 'declined';
  readonly reason: string;
  readonly clause: string;
  /** The document claimed under; null where none covers the claim. */
  readonly warranty: string | null;
  /** What was read, and in which scale. */
  readonly readings: readonly { readonly on: string; readonly words: string }[];
  readonly tests: readonly ClaimTest[];
  readonly findings: readonly {
    readonly rule: string;
    readonly outcome: string;
    readonly words: string;
  }[];
  readonly exclusions_triggered: readonly string[];
  /** Share of the term's cover left, in words with its arithmetic; null where the term has none. */
  readonly share_left: string | null;
  /** How to answer. */
  readonly reply: string;
  readonly cautions: readonly string[];
}

/** undefined where the claim is not decided. */
export function decisionLetter(
  events: readonly PastEvent[],
  claim: string,
  names: Names = {},
): DecisionLetter | undefined {
  const at = events.findIndex(
    (event) => event.type === 'claim-decided/1' && event.data.claim === claim,
  );
  const decided = events[at];
  if (decided?.type !== 'claim-decided/1') return undefined;
  const { data } = decided;
  const job = jobUpTo(events, at);
  const opened = job.after.claims[claim];
  if (!opened) throw new Error(`claim ${claim} was decided and never opened`);
  const name = naming(names);
  const warranty = opened.document === null ? undefined : job.after.warranties[opened.document];
  const owner = name((job.parties['owner'] ?? job.parties['customer'])?.id ?? '');
  const office = names['company'] ?? 'The office';
  return {
    document: 'decision-letter',
    job: { number: job.number, name: job.name },
    claim,
    kind: opened.kind,
    surface: job.surfaces[opened.surface]?.name ?? opened.surface,
    lot: opened.lot,
    notice: opened.notice,
    to: { name: warranty?.transfers.at(-1)?.to ?? owner, address: [name(job.site?.id ?? '')] },
    from: { name: office, address: [names['company-address'] ?? ''].filter((each) => each) },
    decided_at: decided.recordedAt,
    decided_by: { name: name(decided.by.person), role: decided.by.role },
    decision: data.decision,
    reason: data.reason,
    clause: data.clause,
    warranty: warranty ? warrantyWords(warranty) : null,
    readings: opened.readings.map(readingWords),
    tests: data.tests,
    findings: data.findings
      .filter(({ outcome }) => outcome !== 'not-applicable')
      .map(({ rule, outcome, words }) => ({ rule, outcome, words })),
    exclusions_triggered: data.tests
      .filter(({ test, outcome }) => test === 'exclusions' && outcome === 'not met')
      .map(({ words }) => words),
    share_left: (warranty && shareLeft(warranty, opened.notice)?.words) ?? null,
    reply: `${office} answers questions about this letter. New facts open a new claim.`,
    cautions: CAUTIONS,
  };
}

function readingWords(reading: EventData['reading-recorded/1']) {
  const { what, on, scale, illuminant, observer, rating, washed, instrument } = reading;
  const said =
    what === 'color'
      ? `in ${scale}, illuminant ${illuminant}, ${observer}-degree observer`
      : `rating ${rating}`;
  const with_ = instrument ? `, by ${instrument}` : '';
  return { on, words: `${what} ${said}${with_}, ${washed ? 'after' : 'before'} washing` };
}

const warrantyWords = ({ document, kind, title, warrantor, start, years }: Warranty): string =>
  `document ${document}: ${title} warranty, ${kind}, by ${warrantor}, from ${start} for ${years} years`;

const CAUTIONS = [
  'The tests are computed from what was recorded; a person decided. An open test is an open question, never assumed either way.',
  'Photograph from the ground: a roof is not to be walked for a claim.',
] as const;
