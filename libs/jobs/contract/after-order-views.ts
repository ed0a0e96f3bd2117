// What the pages show of a job after the gauge: orders, delivery, what was built, warranties, claims.

import type { ClaimKind, OrderLine, WarrantyKind } from './after-order.js';
import type {
  AfterOrderEvents,
  ClaimTest,
  LineDifference,
  OrderedSurface,
  OrderedTakeOff,
} from './after-order-events.js';

/** Where a job stands once it is ordered; before, its own stages say. */
export const AFTER_STAGES = ['order', 'delivery', 'installation', 'warranty', 'complete'] as const;
export type AfterStage = (typeof AFTER_STAGES)[number];

export interface AfterOrderView {
  /** null before the first order. */
  readonly stage: AfterStage | null;
  readonly orders: readonly OrderView[];
  readonly lots: readonly {
    readonly surface: string;
    readonly lots: readonly string[];
    readonly mixed: 'no' | 'accepted' | 'not accepted';
  }[];
  readonly as_built: readonly AfterOrderEvents['as-built-recorded/1'][];
  readonly inspection: { readonly on: string; readonly passed: boolean } | null;
  readonly punch: readonly {
    readonly id: string;
    readonly words: string;
    readonly open: boolean;
  }[];
  readonly completed_on: string | null;
  readonly registrations: readonly RegistrationView[];
  readonly warranties: readonly WarrantyView[];
  readonly claims: readonly ClaimView[];
}

export interface OrderView {
  readonly order: string;
  readonly revisions: readonly RevisionView[];
  readonly change_order: { readonly reason: string; readonly at: string } | null;
  /** Of the revision in force; null while nothing came back. */
  readonly acknowledgment: {
    readonly revision: number;
    readonly differences: readonly LineDifference[];
  } | null;
  readonly receipts: readonly AfterOrderEvents['receipt-recorded/1'][];
  /** What the revision in force still lacks, in words. */
  readonly short: readonly string[];
  readonly damaged: readonly string[];
}

export interface RevisionView {
  readonly revision: number;
  readonly standing: 'in force' | 'superseded';
  readonly supplier: string;
  readonly date: string;
  readonly issued: { readonly by: string; readonly at: string };
  readonly delivery: string | null;
  readonly landing_place: string | null;
  readonly surfaces: readonly OrderedSurface[];
  readonly lines: readonly OrderLine[];
  readonly lengths: AfterOrderEvents['order-issued/1']['lengths'];
  readonly difference: readonly LineDifference[];
  readonly take_offs: readonly OrderedTakeOff[];
}

export interface RegistrationView {
  readonly kind: WarrantyKind;
  readonly on: string;
  readonly due_by: string;
  readonly late_days: number;
  /** "registered 2026-06-22, filed 11 days late". */
  readonly words: string;
}

export interface WarrantyView {
  readonly document: string;
  readonly kind: WarrantyKind;
  readonly title: 'limited' | 'full';
  readonly warrantor: string;
  readonly surfaces: readonly string[];
  readonly start: string;
  readonly years: number;
  readonly ends: string;
  readonly exclusions_triggered: readonly string[];
  readonly transfers: readonly {
    readonly to: string;
    readonly on: string;
    readonly notice_given: boolean;
  }[];
  readonly issued_at: string;
}

export interface ClaimView {
  readonly claim: string;
  readonly surface: string;
  readonly kind: ClaimKind;
  readonly lot: string | null;
  readonly document: string | null;
  readonly notice: string;
  readonly words: string;
  readonly opened_at: string;
  readonly readings: readonly AfterOrderEvents['reading-recorded/1'][];
  /** As decided; before, as they compute today; null where no catalogue is at hand to compute them. */
  readonly tests: readonly ClaimTest[] | null;
  readonly decided: {
    readonly decision: string;
    readonly reason: string;
    readonly clause: string;
    readonly by: string;
    readonly at: string;
  } | null;
}
