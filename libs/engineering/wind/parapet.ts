// Wind pressure on a parapet itself, with cladding on both faces.

import { asce, type AsceEdition } from '../sources.js';
import { result, step, type Outcome } from '../check.js';
import { psf, type Psf, type SquareFeet } from '../units.js';
import { negativeOf, onCurve } from './curves.js';
import { CLAUSES } from './exposure.table.js';
import { WALL_NEGATIVE, WALL_POSITIVE } from './figures-all-editions.table.js';
import { negativeAt, zonesOf, type Coefficients } from './roof-figure.js';
import { KD } from './velocity-pressure.js';

export interface ParapetPressure {
  /** Wall zone beside the parapet: 4 along the edge, 5 at the corner. */
  readonly zone: '4' | '5';
  /** Case A, windward: wall positive outside, negative of roof edge or corner inside. */
  readonly caseA: Psf;
  /** Case B, leeward: wall positive on the inner face, wall negative on the outer. */
  readonly caseB: Psf;
}

/**
 * Magnitudes in psf, strength level, of the two load cases: q_p taken at the top of the parapet,
 * no internal pressure (a parapet tight against the building's inside). The 16 psf minimum is for
 * the sum of both faces. Low roofs only (theta <= 7): zones 2 and 3. 7-10 30.9, 7-16 30.8,
 * 7-22 30.6.
 */
export function parapetPressure(
  edition: AsceEdition,
  qp: Psf,
  coefficients: Coefficients,
  area: SquareFeet,
): Outcome<readonly ParapetPressure[]> {
  const q = edition === '7-22' ? qp * KD : qp;
  const positive = onCurve(WALL_POSITIVE, area);
  const roofZones = zonesOf(coefficients.low, 'negative');
  const zones = (
    [
      ['4', '2'],
      ['5', '3'],
    ] as const
  ).map(([zone, roofZone], i): ParapetPressure => {
    const edge = roofZones.findIndex((each) => each.zone === roofZone);
    if (edge < 0) throw new Error(`${coefficients.name} has no zone ${roofZone}`);
    const roof = negativeAt(coefficients, 'negative', edge, area);
    return {
      zone,
      caseA: psf(Math.max(16, q * (positive - roof))),
      caseB: psf(Math.max(16, q * (positive - negativeOf(WALL_NEGATIVE[i]!, area)))),
    };
  });
  const cite = asce(edition, CLAUSES[edition].parapet);
  const steps = zones.flatMap(({ zone, caseA, caseB }) => [
    step(`p case A (zone ${zone})`, caseA, 'psf', 'q_p [wall positive - roof edge negative]', cite),
    step(`p case B (zone ${zone})`, caseB, 'psf', 'q_p [wall positive - wall negative]', cite),
  ]);
  return result(zones, steps, ['q_p is taken at the top of the parapet.']);
}
