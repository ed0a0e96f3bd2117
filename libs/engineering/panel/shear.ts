// Shear strength of one flat web without holes or stiffeners, by edition.

import { step, TO_BE_CONFIRMED, type Step } from '../check.js';
import { cite } from '../sources.js';
import { kips, type Inches, type Kips, type Ksi } from '../units.js';
import { POISSON } from './steel.js';

export type SteelEdition = 'S100-16' | 'S100-24';
export const STEEL_EDITIONS = ['S100-16', 'S100-24'] as const;

export const SOURCE_OF = { 'S100-16': 'aisi-s100-16', 'S100-24': 'aisi-s100-24' } as const;

/** Unstiffened web (AISI S100-16 G2.3). */
export const KV_UNSTIFFENED = 5.34;

/** Safety factor by edition; S100-16's from memory. */
export const OMEGA_V: Record<SteelEdition, number> = { 'S100-16': 1.6, 'S100-24': 1.67 };

export interface WebShear {
  readonly edition: SteelEdition;
  readonly Vy: Kips;
  readonly Vcr: Kips;
  readonly lambda: number;
  readonly Vn: Kips;
  readonly Va: Kips;
}

/**
 * V_y = 0.6 F_y h t; V_cr = h t pi^2 E k_v/(12 (1 - mu^2)(h/t)^2); lambda_v = sqrt(V_y/V_cr).
 * S100-16 G2.1: V_y to 0.815, 0.815 sqrt(V_cr V_y) to 1.227, then V_cr. S100-24 G2.1: V_y to 0.587,
 * then (1 - 0.25 (V_cr/V_y)^0.65)(V_cr/V_y)^0.65 V_y. h flat depth in the web's plane, at most
 * 200 t. A web at an angle gives its vertical share times sin theta.
 */
export function webShear(
  h: Inches,
  t: Inches,
  Fy: Ksi,
  E: Ksi,
  kv: number,
  edition: SteelEdition,
): WebShear {
  const Vy = 0.6 * Fy * h * t;
  const Fcr = (Math.PI ** 2 * E * kv) / (12 * (1 - POISSON ** 2) * (h / t) ** 2);
  const Vcr = Fcr * h * t;
  const lambda = Math.sqrt(Vy / Vcr);
  const Vn = edition === 'S100-16' ? elder(Vy, Vcr, lambda) : later(Vy, Vcr, lambda);
  return {
    edition,
    Vy: kips(Vy),
    Vcr: kips(Vcr),
    lambda,
    Vn: kips(Vn),
    Va: kips(Vn / OMEGA_V[edition]),
  };
}

function elder(Vy: number, Vcr: number, lambda: number): number {
  if (lambda <= 0.815) return Vy;
  return lambda <= 1.227 ? 0.815 * Math.sqrt(Vcr * Vy) : Vcr;
}

function later(Vy: number, Vcr: number, lambda: number): number {
  if (lambda <= 0.587) return Vy;
  const share = (Vcr / Vy) ** 0.65;
  return (1 - 0.25 * share) * share * Vy;
}

const FORMULA: Record<SteelEdition, string> = {
  'S100-16': 'V_y to 0.815; 0.815 sqrt(V_cr V_y) to 1.227; V_cr above',
  'S100-24': 'V_y to 0.587; (1 - 0.25 (V_cr/V_y)^0.65)(V_cr/V_y)^0.65 V_y above',
};

export function webShearSteps(v: WebShear): Step[] {
  const g2 = cite(SOURCE_OF[v.edition], 'G2.1');
  const g23 = cite(SOURCE_OF[v.edition], 'G2.3');
  return [
    step('V_y', v.Vy, 'kip', '0.6 F_y h t', g2),
    step('V_cr', v.Vcr, 'kip', 'h t pi^2 E k_v / (12 (1 - mu^2)(h/t)^2)', g23),
    step('lambda_v', v.lambda, '', 'sqrt(V_y/V_cr)', g2),
    step('V_n', v.Vn, 'kip', FORMULA[v.edition], g2),
    step('V_a', v.Va, 'kip', `V_n / ${OMEGA_V[v.edition]}`, g2),
  ];
}

/** Both editions' shear texts were read second-hand only. */
export const SHEAR_NOTES: Record<SteelEdition, readonly string[]> = {
  'S100-16': [`Omega_v 1.60 from memory: ${TO_BE_CONFIRMED}`],
  'S100-24': [`shear curve and Omega_v 1.67 read second-hand: ${TO_BE_CONFIRMED}`],
};
