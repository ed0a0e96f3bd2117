// The letter on a decided claim as a fold: what was claimed, the computed tests as they stood, and what
// a person decided on which clause.

import type { ClaimKind } from '../contract/after-order.js';
import type { ClaimTest } from '../contract/after-order-events.js';
import type { EventData, PastEvent } from '../contract/events.js';
import type { Names } from './decision-record.js';
import { jobUpTo, naming } from './moment.js';

export interface DecisionLetter {
  readonly document: 'decision-letter';
  readonly job: { readonly number: string; readonly name: string };
  readonly claim: string;
  readonly kind: ClaimKind;
  readonly surface: string;
  readonly lot: string | null;
  /** Whom the letter is for: the owner named on the warranty after the last transfer. */
  readonly claimant: string;
  readonly site: string;
  readonly notice: string;
  readonly claimed: string;
  readonly warranty: {
    readonly document: string; readonly kind: string; readonly warrantor: string; readonly start: string; readonly years: number;
  } | null;
  readonly readings: readonly EventData['reading-recorded/1'][];
  readonly tests: readonly ClaimTest[];
  readonly decision: 'accepted' | 'accepted-in-part' | 'declined';
  readonly reason: string;
  readonly clause: string;
  readonly decided_by: string;
  /** RFC 3339. */
  readonly decided_at: string;
  readonly cautions: readonly string[];
}

/** undefined where the claim is not decided. */
export function decisionLetter(events: readonly PastEvent[], claim: string, names: Names = {}): DecisionLetter | undefined {
  const at = events.findIndex((event) => event.type === 'claim-decided/1' && event.data.claim === claim);
  const decided = events[at];
  if (decided?.type !== 'claim-decided/1') return undefined;
  const job = jobUpTo(events, at);
  const opened = job.after.claims[claim];
  if (!opened) throw new Error(`claim ${claim} was decided and never opened`);
  const name = naming(names);
  const warranty = opened.document === null ? undefined : job.after.warranties[opened.document];
  const owner = name((job.parties['owner'] ?? job.parties['customer'])?.id ?? '');
  return {
    document: 'decision-letter',
    job: { number: job.number, name: job.name },
    claim,
    kind: opened.kind,
    surface: job.surfaces[opened.surface]?.name ?? opened.surface,
    lot: opened.lot,
    claimant: warranty?.transfers.at(-1)?.to ?? owner,
    site: name(job.site?.id ?? ''),
    notice: opened.notice,
    claimed: opened.words,
    warranty: warranty
      ? { document: warranty.document, kind: warranty.kind, warrantor: warranty.warrantor, start: warranty.start, years: warranty.years }
      : null,
    readings: opened.readings,
    tests: decided.data.tests,
    decision: decided.data.decision,
    reason: decided.data.reason,
    clause: decided.data.clause,
    decided_by: name(decided.by.person),
    decided_at: decided.recordedAt,
    cautions: CAUTIONS,
  };
}

const CAUTIONS = [
  'The tests are computed from what was recorded; a person decided. An open test is an open question, never assumed either way.',
  'Photograph from the ground: a roof is not to be walked for a claim.',
] as const;
