// What the service answers and the pages show. Views are folds of one job's events, or rows of a
// list; they carry words for every state.

import type { Cause } from './cause.js';
import type { FactDefinition } from './fact-dictionary.js';
import type { Finding, Priority, Stage, SurfaceKind } from '#rules';
import type { License } from './commands.js';
import type { ConfirmedStage, Difference, StageContents } from './events.js';
import type { Evaluation } from './evaluation.js';
import type { AfterOrderView } from './after-order-views.js';
import type { OrderLine } from './after-order.js';
import type { TakeOffResult, TakeOffView } from './take-off.js';

export type StageStatus =
  'not-started' | 'confirmed' | 'needs-recheck' | 'not-needed' | 'waiting' | 'declined';

export interface StageView<S extends ConfirmedStage = ConfirmedStage> {
  readonly stage: S;
  readonly status: StageStatus;
  readonly content: StageContents[S] | null;
  readonly findings: readonly Finding[];
  readonly overrides: readonly {
    readonly rule: string;
    readonly reason: string;
    readonly says: string;
  }[];
  readonly acknowledged: readonly string[];
  readonly causes: readonly Cause[];
  readonly confirmed: { readonly by: string; readonly role: string; readonly at: string } | null;
  readonly rules_edition: { readonly number: number; readonly digest: string } | null;
  readonly catalogue_edition: { readonly number: number; readonly digest: string } | null;
  readonly evaluation?: Evaluation;
}

export interface SignOffView {
  readonly stage: 'sign-off';
  readonly status: StageStatus;
  /** Why an engineer is required, in words; empty where none is. */
  readonly required: readonly string[];
  readonly request: string | null;
  readonly standing: string | null;
  readonly license: License | null;
  readonly conditions: string | null;
  readonly differences: readonly Difference[];
}

export interface FactView {
  readonly path: string;
  readonly name: string;
  readonly definition: FactDefinition;
  readonly value: unknown;
  readonly how: string;
  readonly source: string | null;
  readonly by: string;
  readonly at: string;
  readonly effectiveAt: string;
  /** Every earlier value: nothing recorded is obscured. */
  readonly earlier: readonly {
    readonly value: unknown;
    readonly how: string;
    readonly by: string;
    readonly at: string;
  }[];
}

export interface SurfaceView {
  readonly id: string;
  readonly building: string;
  readonly name: string;
  readonly kind: SurfaceKind;
  readonly withdrawn: string | null;
  readonly stage: Stage | 'done';
  readonly tear_off: 'not-needed' | 'due' | 'confirmed';
  /** True while panel laying is on hold after a tear-off that differed. */
  readonly on_hold: boolean;
  readonly stages: { readonly [S in ConfirmedStage]: StageView<S> };
  readonly sign_off: SignOffView;
}

export interface RequestView {
  readonly request: string;
  readonly surfaces: readonly string[];
  readonly engineer: string;
  readonly scope: string;
  readonly exclusions: string;
  readonly asked: { readonly by: string; readonly at: string };
  readonly expires: string;
  readonly standing:
    | 'waiting'
    | 'approved'
    | 'approved with conditions'
    | 'declined'
    | 'revoked'
    | 'design received';
  readonly license: License | null;
  readonly words: string | null;
}

export interface JobView {
  readonly id: string;
  readonly version: number;
  readonly number: string;
  readonly name: string;
  readonly site: string;
  readonly parties: Readonly<Record<string, string>>;
  readonly priorities: readonly Priority[];
  readonly due: string | null;
  readonly jurisdiction: string | null;
  readonly assigned: string | null;
  /** The earliest stage that any surface has not confirmed. */
  readonly stage: Stage | 'done' | 'no-surfaces';
  readonly surfaces_done: number;
  readonly buildings: readonly { readonly id: string; readonly name: string }[];
  readonly surfaces: readonly SurfaceView[];
  readonly facts: readonly FactView[];
  readonly requests: readonly RequestView[];
  readonly take_offs: readonly TakeOffView[];
  readonly after: AfterOrderView;
  readonly notes: readonly {
    readonly about: string | null;
    readonly words: string;
    readonly by: string;
    readonly at: string;
  }[];
}

/** One line of the job list. */
export interface JobRow {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  readonly customer: string;
  readonly site: string;
  readonly stage: string;
  /** "4/6 Substrate". */
  readonly stage_words: string;
  readonly state: 'Ready' | 'Blocked' | 'Waiting' | 'Done';
  readonly surfaces_done: number;
  readonly surfaces: number;
  readonly next_action: string;
  readonly on: string;
  readonly due: string | null;
  readonly assigned: string | null;
  readonly updated_at: string;
}

/** What a stage's rules say before it is confirmed: a rehearsal, nothing is recorded. */
export interface Rehearsal {
  readonly surface: string;
  readonly stage: Stage;
  readonly findings: readonly Finding[];
  readonly refusals: readonly RefusalView[];
  /** Later stages that confirming this would put up for re-check. */
  readonly reopens: readonly {
    readonly surface: string;
    readonly stage: Stage;
    readonly because: readonly string[];
  }[];
  readonly evaluation?: Evaluation;
  /** What a take-off would record, and the lines of an order that it makes. */
  readonly take_off?: { readonly result: TakeOffResult; readonly lines: readonly OrderLine[] };
}

export interface RefusalView {
  readonly kind:
    'refused-by-rules' | 'wrong-stage' | 'stale' | 'not-found' | 'forbidden' | 'invalid-request';
  /** A rule id: of the rulebook, or MOVE-.. for rules of movement. */
  readonly code: string;
  readonly words: string;
  readonly cites: readonly string[];
  readonly figures: readonly { readonly name: string; readonly v: string; readonly u: string }[];
  readonly pointer?: string;
}
