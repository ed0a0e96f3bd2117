// The decision record as the service gives it: what was chosen, by whom, on which facts, and why.

import type { Evaluation, FactUse, SignOffView, Stage, StageStatus } from '#jobs/contract';

export interface RecordedStage {
  readonly stage: Stage;
  readonly status: StageStatus;
  readonly chosen: readonly { readonly what: string; readonly value: string }[];
  readonly facts: readonly FactUse[];
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

export interface DecisionRecord {
  readonly job: {
    readonly id: string;
    readonly number: string;
    readonly name: string;
    readonly customer: string;
    readonly site: string;
    readonly jurisdiction: string | null;
  };
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
