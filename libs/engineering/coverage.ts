// What each topic covers, clause by clause, for the generated coverage page.

import { coatingCoverage, colorCoverage } from './coating/coverage.js';
import { combinationsCoverage } from './combinations/coverage.js';
import { hailCoverage } from './hail/coverage.js';
import { snowCoverage } from './snow/coverage.js';
import { thermalCoverage } from './thermal/coverage.js';
import { windCoverage } from './wind/coverage.js';

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
  wind: windCoverage,
  snow: snowCoverage,
  combinations: combinationsCoverage,
  thermal: thermalCoverage,
  hail: hailCoverage,
  color: colorCoverage,
  coating: coatingCoverage,
};
