// From a calculator's input to a snow roof: what belongs together, what excludes what, and where
// each factor comes from. Every fault is named at once.

import type { AsceEdition } from '../sources.js';
import { refused, result, TO_BE_CONFIRMED, type Fault, type Outcome } from '../check.js';
import { degrees, feet, pcf, per12, psf } from '../units.js';
import { SNOW_CLAUSES } from './clauses.js';
import type { RiskCategory, RoofExposure } from './factors.table.js';
import type { Terrain, ThermalCondition } from './factors.table.js';
import { exposureFactor, thermalFactor716, thermalFactor722 } from './flat-roof.js';
import { LEVEL, slopeOfDegrees, slopeOfRise, type Slope } from './slope.js';
import { needsW2, W2_MISSING, type Factor, type SnowRoof } from './snow-roof.js';
import type { SnowSurface } from './slope-factor.js';

/** As the calculator's input names it; fields and ranges are already checked. */
export interface SnowQuestion {
  readonly edition: AsceEdition;
  readonly pg_psf: number;
  readonly pg_basis: 'service-50yr' | 'strength';
  readonly risk_category: RiskCategory;
  readonly Ce?: number;
  readonly terrain?: Terrain;
  readonly roof_exposure?: RoofExposure;
  readonly Ct?: number;
  readonly thermal?: ThermalCondition;
  readonly R_roof?: number;
  readonly ventilated?: boolean;
  readonly surface: SnowSurface;
  readonly roof: {
    readonly shape: SnowRoof['shape'];
    readonly rise_per_12?: number;
    readonly theta_deg?: number;
    readonly W_ft: number;
  };
  readonly drift?: {
    readonly kind?: 'leeward' | 'windward' | 'parapet';
    readonly lu_ft?: number;
    readonly h_step_ft?: number;
    readonly parapet_ft?: number;
    readonly lower_roof_ft?: number;
    readonly W2?: number;
    readonly gamma_pcf?: number;
  };
  readonly sliding?: { readonly upper_W_ft: number };
}

export function readSnowRoof(ask: SnowQuestion): Outcome<SnowRoof> {
  const faults: Fault[] = [];
  const notes: string[] = [];
  basisFaults(ask, faults);
  driftFaults(ask, faults);
  const Ce = exposure(ask, faults, notes);
  const Ct = thermal(ask, faults);
  const slope = roofSlope(ask.roof, faults);
  const { drift } = ask;
  const clear = clearHeight(drift);
  const roof: SnowRoof = {
    edition: ask.edition,
    pg: psf(ask.pg_psf),
    riskCategory: ask.risk_category,
    Ce,
    Ct,
    surface: ask.surface,
    shape: ask.roof.shape,
    slope,
    W: feet(ask.roof.W_ft),
    ...(ask.R_roof !== undefined && { R: ask.R_roof }),
    ...(ask.ventilated !== undefined && { ventilated: ask.ventilated }),
    ...(drift?.W2 !== undefined && { W2: drift.W2 }),
    ...(drift?.gamma_pcf !== undefined && { gamma: pcf(drift.gamma_pcf) }),
    ...(drift?.lower_roof_ft !== undefined && { lowerRoof: feet(drift.lower_roof_ft) }),
    ...(drift?.kind !== undefined && {
      drift: {
        kind: drift.kind,
        lu: feet(drift.lu_ft ?? NaN),
        ...(clear !== undefined && { clear: feet(clear) }),
      },
    }),
    ...(ask.sliding !== undefined && { slidingFrom: feet(ask.sliding.upper_W_ft) }),
  };
  if (needsW2(roof) && roof.W2 === undefined) faults.push(W2_MISSING);
  return faults.length > 0 ? refused(...faults) : result(roof, [], notes);
}

function basisFaults(ask: SnowQuestion, faults: Fault[]): void {
  const fits = ask.edition === '7-22' ? 'strength' : 'service-50yr';
  if (ask.pg_basis === fits) return;
  const message =
    ask.edition === '7-22'
      ? '7-22 takes the strength-level ground snow of its own data for the risk category; ' +
        'a 50-year service value would be too low'
      : `${ask.edition} takes the 50-year service-level ground snow; ` +
        'a strength-level value belongs to 7-22';
  faults.push({ pointer: '/pg_basis', message });
}

function driftFaults({ edition, drift }: SnowQuestion, faults: Fault[]): void {
  if (drift === undefined) return;
  const wrong = (key: string, message: string): unknown =>
    faults.push({ pointer: `/drift/${key}`, message });
  if (drift.W2 !== undefined && edition !== '7-22') {
    wrong('W2', `belongs to 7-22; ${edition} has no winter wind parameter`);
  }
  if (drift.kind === undefined) {
    const placed = drift.lu_ft ?? drift.h_step_ft ?? drift.parapet_ft;
    if (placed !== undefined) wrong('kind', 'is missing: leeward, windward or parapet');
    return;
  }
  if (drift.lu_ft === undefined) wrong('lu_ft', 'is missing: the upwind fetch');
  if (drift.kind === 'parapet' && drift.h_step_ft !== undefined) {
    wrong('h_step_ft', 'belongs to a step; a parapet drift takes parapet_ft');
  }
}

/** A step counts with the parapet on the upper roof's edge; a parapet with its own height. */
function clearHeight(drift: SnowQuestion['drift']): number | undefined {
  if (drift?.kind === undefined) return undefined;
  if (drift.kind === 'parapet') return drift.parapet_ft;
  return drift.h_step_ft === undefined ? undefined : drift.h_step_ft + (drift.parapet_ft ?? 0);
}

const NONE: Factor = { value: NaN, from: '', cite: SNOW_CLAUSES['7-16'].flat };

function exposure(ask: SnowQuestion, faults: Fault[], notes: string[]): Factor {
  const cite = SNOW_CLAUSES[ask.edition].exposure;
  if (ask.Ce !== undefined) return { value: ask.Ce, from: 'entered', cite };
  if (ask.terrain === undefined || ask.roof_exposure === undefined) {
    faults.push({ pointer: '/Ce', message: 'is missing: give Ce, or terrain and roof_exposure' });
    return NONE;
  }
  const value = exposureFactor(ask.terrain, ask.roof_exposure);
  if (value === undefined) {
    const message = `the table has no factor for a sheltered roof ${ask.terrain}`;
    faults.push({ pointer: '/roof_exposure', message });
    return NONE;
  }
  if (ask.edition === '7-10') notes.push(`C_e of 7-10 is from memory; ${TO_BE_CONFIRMED}`);
  return { value, from: `terrain ${ask.terrain}, ${ask.roof_exposure} exposed`, cite };
}

const TABLE_716: readonly number[] = [0.85, 1, 1.1, 1.2, 1.3];

function thermal(ask: SnowQuestion, faults: Fault[]): Factor {
  const at = SNOW_CLAUSES[ask.edition];
  const wrong = (pointer: string, message: string): Factor => {
    faults.push({ pointer, message });
    return NONE;
  };
  if (ask.Ct !== undefined) {
    return ask.edition === '7-22' || TABLE_716.includes(ask.Ct)
      ? { value: ask.Ct, from: 'entered', cite: at.thermal }
      : wrong('/Ct', `must be one of the values of ${ask.edition}: ${TABLE_716.join(', ')}`);
  }
  const condition = ask.thermal;
  if (condition === undefined) return wrong('/Ct', 'is missing: give Ct, or thermal and R_roof');
  const R = ask.R_roof;
  if (condition === 'greenhouse' && R !== undefined && R >= 2) {
    return wrong('/R_roof', 'a greenhouse in the table has R under 2; enter it as heated');
  }
  if (ask.edition !== '7-22') {
    if (condition === 'cold-ventilated' && R === undefined) {
      return wrong('/R_roof', 'is missing: a cold ventilated roof goes by R over 25 or not');
    }
    return { value: thermalFactor716(condition, R), from: condition, cite: at.thermal };
  }
  if (condition !== 'heated') {
    return {
      value: thermalFactor722(condition, psf(ask.pg_psf), 0),
      from: condition,
      cite: at.thermal,
    };
  }
  if (R === undefined) return wrong('/R_roof', 'is missing: heated roofs of 7-22 go by R and pg');
  const value = thermalFactor722(condition, psf(ask.pg_psf), R);
  return { value, from: 'heated, by R and p_g, straight lines between', cite: at.thermalByR };
}

function roofSlope(roof: SnowQuestion['roof'], faults: Fault[]): Slope {
  const { rise_per_12: rise, theta_deg: theta } = roof;
  if (rise !== undefined && theta !== undefined) {
    faults.push({ pointer: '/roof', message: 'give rise_per_12 or theta_deg, not both' });
  } else if (rise !== undefined) {
    return slopeOfRise(per12(rise));
  } else if (theta !== undefined) {
    return slopeOfDegrees(degrees(theta));
  } else if (roof.shape !== 'flat') {
    faults.push({ pointer: '/roof/rise_per_12', message: 'is missing: or give theta_deg' });
  }
  return LEVEL;
}
