// The whole of one choosing: every option of the catalogue, every rule, every zone's panel and
// attachment. It goes into the event as it stands; pages and papers only render it.

import type { Citation } from '#engineering';
import type { Availability, Finding } from '#rules';
import type { Amount } from './amounts.js';
import type { Attachment } from './commands.js';

/** One step of a calculation as it is kept and printed. */
export interface StepRecord {
  readonly symbol: string;
  readonly value: string;
  readonly unit: string;
  readonly formula: string;
  readonly cite: Citation;
}

/** Demand against capacity. `utilization` has four decimals for reading; `passes` is exact. */
export interface CheckRecord {
  readonly limit_state: string;
  readonly direction: 'inward' | 'outward';
  readonly demand: Amount;
  readonly capacity: Amount;
  readonly utilization: string;
  readonly passes: boolean;
  /** "load chart C-12, edition 3, span 30 in", "test T-101", "calculated". */
  readonly source: string;
  readonly calculated: boolean;
  readonly steps: readonly StepRecord[];
}

export interface ZoneDemand {
  readonly zone: string;
  readonly part: 'roof' | 'overhang' | 'wall';
  /** Governing service-level (ASD) loads normal to the panel. */
  readonly inward: Amount;
  readonly outward: Amount;
  readonly support_spacing: Amount | null;
  readonly source: string;
  readonly steps: readonly StepRecord[];
}

export interface ZoneResult {
  readonly zone: string;
  readonly panel: readonly CheckRecord[];
  readonly attachment: readonly CheckRecord[];
  /** Why there is no number, where there is none. */
  readonly missing: readonly string[];
}

export type WhyNotClass = 'ruled-out' | 'dominated' | 'not-stocked' | 'not-made' | 'no-test';
export interface WhyNot {
  readonly class: WhyNotClass;
  readonly words: string;
  readonly rules: readonly string[];
}

export interface OptionResult {
  /** "steel-0.0236-33", metal, base thickness, grade. */
  readonly id: string;
  readonly gauge: string | null;
  readonly thickness: Amount;
  readonly grade: string;
  readonly availability: Availability;
  readonly lead_days: number | null;
  readonly least_order: Amount | null;
  readonly weight: Amount;
  readonly price: Amount | null;
  readonly zones: readonly ZoneResult[];
  readonly findings: readonly Finding[];
  readonly admissible: boolean;
  /** 1 is best; null where not admissible. */
  readonly rank: number | null;
  readonly governs: {
    readonly zone: string;
    readonly limit_state: string;
    readonly utilization: string;
  } | null;
  readonly why_not: WhyNot | null;
}

export interface FactUse {
  readonly path: string;
  readonly value: unknown;
  readonly how: string | null;
  readonly source: string | null;
}

/**
 * Changes that together would turn an option, and no fewer of them; each was run under the same
 * rules and editions before it was shown. With `site_fact` it is a what-if and never a choice.
 */
export interface WhatWould {
  readonly option: string;
  readonly becomes: 'passes' | 'fails' | 'comes-first';
  readonly changes: readonly {
    readonly what: string;
    readonly from: string;
    readonly to: string;
  }[];
  readonly words: string;
  readonly site_fact: boolean;
}

/** Choices as they are today that settle an option's outcome whatever else is chosen. */
export interface SufficientReason {
  readonly option: string;
  readonly because: readonly { readonly what: string; readonly value: string }[];
  readonly words: string;
}

/** How far the search for changes went: judgements of one option in one zone. */
export interface Searched {
  readonly judgements: number;
  readonly budget: number;
  /** Found but not shown, since the whole evaluation did not bear it out. */
  readonly not_reproduced: number;
}

export interface Evaluation {
  readonly engine: string;
  /** The day of the decision: tests that had expired by then did not count. */
  readonly day: string;
  readonly rules_edition: { readonly number: number; readonly digest: string };
  readonly catalogue_edition: { readonly number: number; readonly digest: string };
  readonly facts: readonly FactUse[];
  readonly attachment: Attachment;
  readonly demands: readonly ZoneDemand[];
  readonly options: readonly OptionResult[];
  readonly ranking: { readonly by: string; readonly order: readonly string[] };
  readonly recommendation: { readonly option: string | null; readonly sentence: string };
  readonly what_would_change: readonly WhatWould[];
  /** The smallest sufficient reasons of each option. */
  readonly reasons: readonly SufficientReason[];
  /** Null where no search was made. */
  readonly searched: Searched | null;
  /** True where the search ended early: there may be more changes than are listed. */
  readonly budget_reached: boolean;
  readonly sign_off_required: readonly string[];
  readonly cautions: readonly string[];
}
