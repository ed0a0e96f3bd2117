// What each topic covers, clause by clause, for the generated coverage page.

import type { Covered } from './calculator.js';
import { coatingCoverage, colorCoverage } from './coating/coverage.js';
import { combinationsCoverage } from './combinations/coverage.js';
import { fastenersCoverage } from './fasteners/coverage.js';
import { hailCoverage } from './hail/coverage.js';
import { panelCoverage } from './panel/coverage.js';
import { snowCoverage } from './snow/coverage.js';
import { takeOffCoverage } from './takeoff/coverage.js';
import { thermalCoverage } from './thermal/coverage.js';
import { windCoverage } from './wind/coverage.js';

/** By topic; a topic's cases stand in tests/standards/cases/<topic>.json. */
export const coverage: Readonly<Record<string, readonly Covered[]>> = {
  wind: windCoverage,
  snow: snowCoverage,
  combinations: combinationsCoverage,
  steel: [...panelCoverage, ...fastenersCoverage],
  thermal: thermalCoverage,
  hail: hailCoverage,
  color: colorCoverage,
  coating: coatingCoverage,
  takeoff: takeOffCoverage,
};
