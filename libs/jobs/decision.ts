// What a decision rests on, and what it gives: events, or every refusal at once.

import type { SolveStock } from '#engineering';
import type { Edition, Role, RuleBook } from '#rules';
import type { Catalogue } from './contract/catalogue.js';
import type { JobEvent } from './contract/events.js';
import type { Refusal } from './refusal.js';

/** Who may set aside a finding of these classes, and other settings of the company. */
export interface Policy {
  readonly overrides: {
    readonly guidance: readonly Role[];
    readonly 'house-policy': readonly Role[];
  };
}
export const DEFAULT_POLICY: Policy = {
  overrides: { guidance: ['project-manager'], 'house-policy': ['project-manager'] },
};

/** What a decision rests on besides the job: person, time, and the editions in force. */
export interface Context {
  readonly by: { readonly person: string; readonly roles: readonly Role[] };
  /** Now, RFC 3339 UTC; it comes with the command, never from a clock here. */
  readonly at: string;
  readonly book: RuleBook;
  readonly edition: Edition;
  readonly editionDigest: string;
  readonly catalogue: Catalogue;
  readonly catalogueDigest: string;
  readonly policy: Policy;
  /** Cuts trims from stock lengths where the own search gives up; what it gives is checked. */
  readonly cutStock?: SolveStock;
}

export type Decision =
  | { readonly ok: true; readonly events: readonly [JobEvent, ...JobEvent[]] }
  | { readonly ok: false; readonly refusals: readonly Refusal[] };

export const accept = (first: JobEvent, ...rest: readonly JobEvent[]): Decision => ({
  ok: true,
  events: [first, ...rest],
});
export const decline = (...refusals: readonly Refusal[]): Decision => ({ ok: false, refusals });
