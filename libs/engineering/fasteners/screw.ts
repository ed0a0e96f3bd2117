// Screws through sheet steel: pull-out of the support, pull-over of the sheet, shear of the joint,
// by edition of AISI S100. Forces in pounds, thickness and diameter in inches, F_u in ksi.

import {
  refused,
  result,
  step,
  TO_BE_CONFIRMED,
  type Fault,
  type Outcome,
  type Step,
} from '../check.js';
import { cite } from '../sources.js';
import { inches, pounds, type Inches, type Ksi, type Pounds } from '../units.js';

export type ScrewEdition = 'S100-16' | 'S100-24';
export const SCREW_EDITIONS = ['S100-16', 'S100-24'] as const;

/** Range of nominal diameter of AISI S100-16 J4 (from memory). */
export const SCREW_DIAMETER = { least: 0.08, most: 0.25 } as const;
/** Largest pull-over diameter that counts (AISI S100-16 J4.4.2, from memory). */
export const PULLOVER_DIAMETER_MOST = inches(0.75);

export interface ScrewJoint {
  readonly edition: ScrewEdition;
  /** Nominal diameter. */
  readonly d: Inches;
  /** Sheet beneath the head, and the member that is not. */
  readonly t1: Inches;
  readonly t2: Inches;
  /** Tensile strength for design: a Grade 80 sheet counts with its reduced F_u here too. */
  readonly Fu1: Ksi;
  readonly Fu2: Ksi;
  /** Larger of head and washer. */
  readonly dw: Inches;
  /** Lesser of penetration and t2; t2 unless given. */
  readonly tc?: Inches;
}

export interface ScrewLimit {
  readonly nominal: Pounds;
  readonly allowable: Pounds;
  readonly Omega: number;
}

export interface ScrewStrength {
  readonly pullout: ScrewLimit;
  readonly pullover: ScrewLimit;
  /** Tilting and bearing; the screw's own strength comes from its maker. */
  readonly shear: ScrewLimit;
}

/** Safety factors; those of S100-24 read second-hand. */
export const SCREW_OMEGA: Record<
  ScrewEdition,
  { pullout: number; pullover: number; shear: number }
> = {
  'S100-16': { pullout: 3, pullover: 3, shear: 3 },
  'S100-24': { pullout: 2.8, pullover: 2.9, shear: 2.8 },
};

export const SCREW_SOURCE = { 'S100-16': 'aisi-s100-16', 'S100-24': 'aisi-s100-24' } as const;

/** "#12" is 0.216 in: d = 0.060 + 0.013 N (ASME B18.6 series, from memory). N 4 to 18. */
export function numberedScrewDiameter(N: number): Inches {
  return inches(0.06 + 0.013 * N);
}

/** P_not = 0.85 t_c d F_u2 (S100-16 J4.4.1); S100-24 times 1.63 t_c^0.18, t_c in inches. */
export function pullOut(edition: ScrewEdition, tc: Inches, d: Inches, Fu2: Ksi): Pounds {
  const elder = 850 * tc * d * Fu2;
  return pounds(edition === 'S100-16' ? elder : elder * 1.63 * tc ** 0.18);
}

/** P_nov = 1.5 t1 d'_w F_u1 (S100-16 J4.4.2), 0.90 in S100-24; d'_w at most 0.75 in. */
export function pullOver(edition: ScrewEdition, t1: Inches, dw: Inches, Fu1: Ksi): Pounds {
  const factor = edition === 'S100-16' ? 1500 : 900;
  return pounds(factor * t1 * Math.min(dw, PULLOVER_DIAMETER_MOST) * Fu1);
}

/**
 * P_nv (J4.3.1): t2/t1 to 1: least of 4.2 sqrt(t2^3 d) F_u2, 2.7 t1 d F_u1, 2.7 t2 d F_u2; from
 * 2.5: the least of the two bearing values; linear between.
 */
export function screwShear(t1: Inches, t2: Inches, d: Inches, Fu1: Ksi, Fu2: Ksi): Pounds {
  const bearing = Math.min(bearingStrength(t1, d, Fu1), bearingStrength(t2, d, Fu2));
  const tilting = Math.min(4200 * Math.sqrt(t2 ** 3 * d) * Fu2, bearing);
  const ratio = t2 / t1;
  const share = Math.min(1, Math.max(0, (ratio - 1) / 1.5));
  return pounds(tilting + share * (bearing - tilting));
}

/** 2.7 t d F_u (J4.3.1). */
export function bearingStrength(t: Inches, d: Inches, Fu: Ksi): Pounds {
  return pounds(2700 * t * d * Fu);
}

/**
 * Nominal and allowable pull-out, pull-over and shear of one screw. Refused outside d 0.08 to
 * 0.25 in, or t_c over t2. Left out: the screw's own tension and shear strength (by its maker),
 * combined shear and pull-over, edge distance and spacing under 3 d, seismic and cyclic loading.
 */
export function screwStrength(joint: ScrewJoint): Outcome<ScrewStrength> {
  const faults = jointFaults(joint);
  if (faults.length > 0) return refused(...faults);
  const { edition, d, t1, t2, Fu1, Fu2, dw, tc = t2 } = joint;
  const omega = SCREW_OMEGA[edition];
  const limit = (nominal: Pounds, Omega: number): ScrewLimit => ({
    nominal,
    allowable: pounds(nominal / Omega),
    Omega,
  });
  const value: ScrewStrength = {
    pullout: limit(pullOut(edition, tc, d, Fu2), omega.pullout),
    pullover: limit(pullOver(edition, t1, dw, Fu1), omega.pullover),
    shear: limit(screwShear(t1, t2, d, Fu1, Fu2), omega.shear),
  };
  return result(value, screwSteps(edition, value), screwNotes(joint));
}

function jointFaults({ d, t2, tc }: ScrewJoint): Fault[] {
  const faults: Fault[] = [];
  if (d < SCREW_DIAMETER.least || d > SCREW_DIAMETER.most) {
    faults.push({ pointer: '/d_in', message: 'must be 0.08 to 0.25 in (AISI S100 J4)' });
  }
  if (tc !== undefined && tc > t2) {
    faults.push({
      pointer: '/tc_in',
      message: 'is the lesser of penetration and t2: at most t2_in',
    });
  }
  return faults;
}

export const PULLOVER_FORMULA: Record<ScrewEdition, string> = {
  'S100-16': "1.5 t1 d'_w F_u1",
  'S100-24': "0.90 t1 d'_w F_u1",
};

function screwSteps(edition: ScrewEdition, s: ScrewStrength): Step[] {
  const at = (clause: string) => cite(SCREW_SOURCE[edition], clause);
  const allowable = (symbol: string, l: ScrewLimit, clause: string): Step =>
    step(symbol, l.allowable, 'lb', `nominal / ${l.Omega}`, at(clause));
  const out = edition === 'S100-24' ? '0.85 t_c d F_u2 (1.63 t_c^0.18)' : '0.85 t_c d F_u2';
  const shear = 'tilting and bearing by t2/t1';
  return [
    step('P_not', s.pullout.nominal, 'lb', out, at('J4.4.1')),
    allowable('P_aot', s.pullout, 'J4.4.1'),
    step('P_nov', s.pullover.nominal, 'lb', PULLOVER_FORMULA[edition], at('J4.4.2')),
    allowable('P_aov', s.pullover, 'J4.4.2'),
    step('P_nv', s.shear.nominal, 'lb', shear, at('J4.3.1')),
    allowable('P_av', s.shear, 'J4.3.1'),
  ];
}

function screwNotes({ edition, dw }: ScrewJoint): string[] {
  const notes = ["the screw's own tension and shear strength comes from its maker"];
  if (dw > PULLOVER_DIAMETER_MOST) notes.push("d'_w counts with 0.75 in, the most the rule allows");
  if (edition === 'S100-24') {
    notes.push(`S100-24 screw rules read second-hand: ${TO_BE_CONFIRMED}`);
  }
  return notes;
}
