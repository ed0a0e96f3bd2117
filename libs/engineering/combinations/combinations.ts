// Allowable stress combinations for a panel: what acts normal to it, inward and outward.

import { result, step, TO_BE_CONFIRMED, type Outcome, type Step } from '../check.js';
import { asce, citationText, type AsceEdition, type Citation } from '../sources.js';
import { psf, type Psf } from '../units.js';
import { ASD, SNOW_FACTOR, UPLIFT, type Factors } from './factors.table.js';

/** Loads normal to the surface, psf. Wind at strength level, inward >= 0, outward <= 0. */
export interface PanelLoads {
  readonly edition: AsceEdition;
  /** 0 for a wall panel: its weight acts along it. */
  readonly dead: Psf;
  readonly roofLive: Psf;
  /** 7-10 and 7-16 service level, 7-22 strength level. */
  readonly snow: Psf;
  readonly windInward: Psf;
  readonly windOutward: Psf;
}

export interface Combination {
  readonly number: string;
  /** "D + 0.75 (0.6 W) + 0.75 (0.7 S)". */
  readonly formula: string;
  readonly cite: Citation;
  /** Positive toward the surface. */
  readonly total: Psf;
}

export interface PanelDemand {
  readonly inward: Psf;
  readonly inwardBy: Combination;
  /** Negative, or 0 where the dead load exceeds the uplift. */
  readonly outward: Psf;
  readonly outwardBy: Combination;
  readonly all: readonly Combination[];
}

/** The two demands without what they come from. */
export type DemandBothWays = Pick<PanelDemand, 'inward' | 'outward'>;

/**
 * The governing inward and outward demand in psf by 2.4.1. Of roof live load and snow one is
 * taken, never the sum. Left out: rain, floor live load, tornado, seismic, flood and self-straining
 * loads, and wind on ice.
 */
export function panelDemand(loads: PanelLoads): Outcome<PanelDemand> {
  const value = allCombined(loads);
  const steps: Step[] = value.all.map((each) =>
    step(`combination ${each.number}`, each.total, 'psf', each.formula, each.cite),
  );
  const notes = [`Combination numbers from memory except 3a and 6a of 7-22: ${TO_BE_CONFIRMED}.`];
  if (value.outwardBy.total >= 0)
    notes.push('No net uplift: the dead load exceeds the outward wind.');
  return result(value, steps, notes);
}

/** The two demands alone, for whoever compares many and prints one. */
export function governingDemand(loads: PanelLoads): DemandBothWays {
  const first = totalOf(ASD[0]!, loads);
  let inward = first;
  let outward = Math.min(0, first);
  for (const factors of ASD) {
    const total = totalOf(factors, loads);
    inward = Math.max(inward, total);
    outward = Math.min(outward, total);
  }
  return { inward: psf(inward), outward: psf(outward) };
}

function allCombined(loads: PanelLoads): PanelDemand {
  const all = ASD.map((factors, i) => combined(factors, i, loads));
  let inwardBy = all[0]!;
  let outwardBy = all[0]!;
  for (const each of all) {
    if (each.total > inwardBy.total) inwardBy = each;
    if (each.total < outwardBy.total) outwardBy = each;
  }
  const outward = psf(Math.min(0, outwardBy.total));
  return { inward: inwardBy.total, inwardBy, outward, outwardBy, all };
}

function totalOf(factors: Factors, loads: PanelLoads): number {
  const snow = SNOW_FACTOR[loads.edition] * loads.snow;
  const roof = factors.with === undefined ? 0 : factors.with === 'S' ? snow : loads.roofLive;
  const wind =
    factors.wind === 'none' ? 0 : factors.wind === 'inward' ? loads.windInward : loads.windOutward;
  return factors.D * loads.dead + factors.roof * roof + factors.W * wind;
}

const combined = (factors: Factors, i: number, loads: PanelLoads): Combination => ({
  number: factors.number[loads.edition],
  formula: FORMULAS[loads.edition][i]!,
  cite: CITES[loads.edition][i]!,
  total: psf(totalOf(factors, loads)),
});

const perEdition = <T>(make: (edition: AsceEdition) => T): Record<AsceEdition, T> => ({
  '7-10': make('7-10'),
  '7-16': make('7-16'),
  '7-22': make('7-22'),
});

const CITES = perEdition((edition) =>
  ASD.map((factors) => asce(edition, `2.4.1 combination ${factors.number[edition]}`)),
);

const FORMULAS = perEdition((edition) => ASD.map((factors) => formulaOf(factors, edition)));

function formulaOf(factors: Factors, edition: AsceEdition): string {
  const dead = factors.D === 1 ? 'D' : `${factors.D} D`;
  const load = factors.with === 'S' && SNOW_FACTOR[edition] !== 1 ? '0.7 S' : (factors.with ?? '');
  const roof = factors.roof === 0 ? '' : factors.roof === 1 ? ` + ${load}` : ` + 0.75 (${load})`;
  const wind = factors.W === 0 ? '' : factors.W === 0.6 ? ' + 0.6 W' : ' + 0.75 (0.6 W)';
  const way = factors.wind === 'none' ? '' : ` (${factors.wind})`;
  return `${dead}${wind}${way}${roof}`;
}

/** "ASCE/SEI 7-16, 2.4.1 combination 7". */
export const clauseOf = (combination: Combination): string => citationText(combination.cite);

/**
 * Dead and wind load together, psf, the factors of combination 7 (ASD, 0.6 D + 0.6 W) or of the
 * strength method (0.9 D + 1.0 W); W with its sign, uplift negative. 2.4.1 and 2.3.1.
 */
export function deadAndWind(method: keyof typeof UPLIFT, dead: Psf, wind: Psf): Psf {
  return psf(UPLIFT[method].D * dead + UPLIFT[method].W * wind);
}

/** Snow as it counts in allowable stress combinations, psf: 0.7 S in 7-22, S before. */
export const asdSnow = (edition: AsceEdition, snow: Psf): Psf => psf(SNOW_FACTOR[edition] * snow);
