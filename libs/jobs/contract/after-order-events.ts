// Events after the gauge: order, delivery, installation, warranty, claims.

import type { Finding } from '#rules';
import type { WarrantyKind } from './after-order.js';
import type { CommandOf } from './commands.js';
import type { Attachment } from './commands.js';

/** What differs between two lists of lines, by piece. */
export interface LineDifference {
  readonly line: string;
  readonly what: 'added' | 'removed' | 'changed';
  readonly from: string | null;
  readonly to: string | null;
}

/** What the gate's rules said, kept with the event. */
export interface Gated {
  readonly findings: readonly Finding[];
  readonly overrides: readonly {
    readonly rule: string;
    readonly reason: string;
    readonly says: string;
  }[];
  readonly acknowledged: readonly string[];
  readonly rules_edition: { readonly number: number; readonly digest: string };
}

/** A surface as it was ordered: what its stages had settled. */
export interface OrderedSurface {
  readonly surface: string;
  readonly name: string;
  readonly profile: string;
  readonly width_in: string;
  readonly gauge: string | null;
  readonly thickness_in: string;
  readonly grade: string;
  readonly metal: string;
  readonly metallic_coating: string;
  readonly paint_system: string;
  readonly color_group: string;
  readonly color: string | null;
  readonly substrate: string;
  readonly attachment: Attachment;
  /** As the catalogue names it; orders before names have the id alone. */
  readonly fastener_name?: string;
}

/** The take-off that an order's lengths came from. */
export interface OrderedTakeOff {
  readonly surface: string;
  readonly number: number;
  readonly measured_from: string;
  readonly by: string;
  readonly at: string;
}

export interface ClaimTest {
  readonly test: string;
  readonly outcome: 'met' | 'not met' | 'open';
  readonly words: string;
}

type Said<
  T extends
    | 'issue-order'
    | 'record-acknowledgment'
    | 'record-receipt'
    | 'accept-mixed-lots'
    | 'settle-receipt'
    | 'record-as-built'
    | 'record-inspection'
    | 'close-punch-item'
    | 'record-completion'
    | 'file-registration'
    | 'issue-warranty'
    | 'transfer-warranty'
    | 'open-claim'
    | 'record-reading'
    | 'decide-claim',
> = Omit<CommandOf<T>, 'type' | 'overrides' | 'acknowledges'>;

export interface AfterOrderEvents {
  'order-issued/1': Said<'issue-order'> &
    Gated & {
      readonly revision: number;
      readonly surfaces: readonly OrderedSurface[];
      readonly difference: readonly LineDifference[];
      /** The take-offs whose lengths were ordered, by surface; events before take-offs have none. */
      readonly take_offs?: readonly OrderedTakeOff[];
    };
  'change-order-opened/1': { readonly order: string; readonly reason: string };
  'change-order-withdrawn/1': { readonly order: string; readonly reason: string };
  'acknowledgment-recorded/1': Said<'record-acknowledgment'> & {
    readonly revision: number;
    readonly differences: readonly LineDifference[];
  };
  'receipt-recorded/1': Said<'record-receipt'> & {
    readonly revision: number;
    readonly differences: readonly string[];
  };
  'mixed-lots-accepted/1': Said<'accept-mixed-lots'>;
  'receipt-settled/1': Said<'settle-receipt'>;
  'as-built-recorded/1': Said<'record-as-built'> & { readonly differences: readonly string[] };
  'inspection-recorded/1': Said<'record-inspection'>;
  'punch-item-closed/1': Said<'close-punch-item'>;
  'completion-recorded/1': Said<'record-completion'> &
    Gated & {
      /** Last day of each window that the catalogue knew; null where it knew that none is asked for. */
      readonly registration_due?: Readonly<Partial<Record<WarrantyKind, string | null>>>;
    };
  'registration-filed/1': Said<'file-registration'> & {
    readonly due_by: string;
    readonly late_days: number;
  };
  'warranty-issued/1': Said<'issue-warranty'> &
    Gated & {
      readonly exclusions_triggered: readonly string[];
      /** Of the text attached, as the catalogue names it. */
      readonly terms_version?: string;
    };
  'warranty-transferred/1': Said<'transfer-warranty'>;
  'claim-opened/1': Said<'open-claim'>;
  'reading-recorded/1': Said<'record-reading'>;
  'claim-decided/1': Said<'decide-claim'> & {
    readonly tests: readonly ClaimTest[];
    readonly findings: readonly Finding[];
  };
}
