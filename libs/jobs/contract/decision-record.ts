// The decision record as it is given: what was chosen, by whom, on which facts, and why.

import type { Stage } from '#rules';
import type { Evaluation, FactUse } from './evaluation.js';
import type { Cause } from './cause.js';
import type { SignOffView, StageStatus } from './views.js';

export interface DecisionRecord {
  readonly document: 'decision-record';
  readonly job: {
    readonly id: string;
    readonly number: string;
    readonly name: string;
    readonly customer: string;
    readonly site: string;
    readonly jurisdiction: string | null;
  };
  /** The moments the record speaks of, and the job's version then. */
  readonly as_of: { readonly recorded: string; readonly version: number };
  readonly stands_at: string;
  readonly surfaces: readonly RecordedSurface[];
  readonly timeline: readonly {
    readonly version: number;
    readonly at: string;
    readonly effective: string;
    readonly by: string;
    readonly role: string;
    readonly words: string;
  }[];
  readonly cautions: readonly string[];
}

export interface RecordedSurface {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly stages: readonly RecordedStage[];
  readonly gauge: Evaluation | null;
  readonly why: readonly string[];
  readonly sign_off: SignOffView;
}

/** A fact as it stood when the stage was confirmed. */
export interface ReadFact extends FactUse {
  /** Who recorded or decided it, and when; null of what the job was opened with. */
  readonly by: string | null;
  /** RFC 3339. */
  readonly at: string | null;
}

export interface RecordedStage {
  readonly stage: Stage;
  readonly status: StageStatus;
  readonly chosen: readonly { readonly what: string; readonly value: string }[];
  readonly facts: readonly ReadFact[];
  readonly said: readonly {
    readonly rule: string;
    readonly severity: string;
    readonly outcome: string;
    readonly words: string;
    readonly cites: readonly string[];
  }[];
  readonly overrides: readonly {
    readonly rule: string;
    readonly reason: string;
    readonly says: string;
  }[];
  readonly by: string;
  readonly role: string;
  readonly at: string;
  readonly rules_edition: number;
  readonly catalogue_edition: number;
  readonly causes: readonly Cause[];
}
