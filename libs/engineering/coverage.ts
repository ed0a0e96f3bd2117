// What each topic covers, clause by clause, for the generated coverage page.

import { coatingCoverage, colorCoverage } from './coating/coverage.js';

export interface Covered {
  readonly clause: string;
  readonly does: string;
  readonly function: string;
  /** What the clause also asks and is knowingly not done. */
  readonly left_out?: string;
  /** What has not been confirmed against the standard's own text. */
  readonly unconfirmed?: string;
}

/** By topic; a topic's cases stand in tests/standards/cases/<topic>.json. */
export const coverage: Readonly<Record<string, readonly Covered[]>> = {
  color: colorCoverage,
  coating: coatingCoverage,
};
