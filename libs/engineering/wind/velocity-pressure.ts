// Velocity pressure at mean roof height: K_z, K_e and q_h of three editions, with their steps.

import { step, type Step } from '../check.js';
import { asce, type AsceEdition } from '../sources.js';
import { psf, type Feet, type Mph, type Psf } from '../units.js';
import { CLAUSES, KZ_7_22, TERRAIN, type Exposure } from './exposure.table.js';

export interface VelocityPressureInput {
  readonly edition: AsceEdition;
  /** Basic wind speed, strength level, for the risk category. */
  readonly V: Mph;
  readonly exposure: Exposure;
  readonly h: Feet;
  readonly Kzt: number;
  /** Ground elevation above sea level. */
  readonly elevation: Feet;
  /** Where K_z is entered instead of calculated. */
  readonly Kz?: number;
}

export interface VelocityPressure {
  readonly Kz: number;
  readonly Ke: number;
  readonly Kd: number;
  readonly qh: Psf;
  readonly steps: readonly Step[];
  readonly notes: readonly string[];
}

/** Directionality factor for components and cladding, Table 26.6-1 of all three editions. */
export const KD = 0.85;

/** Heights above this are another chapter part: not calculated. */
export const HIGHEST_FT = 60;

/**
 * q_h = 0.00256 K_z K_zt K_d K_e V^2 in psf (7-10 without K_e; 7-22 without K_d, which moved into
 * the pressure equation). V in mph, h in ft, 0 < h <= 60 ft. K_zt is entered, not calculated.
 * 7-10 Eq. 30.3-1; 7-16 and 7-22 Eq. 26.10-1.
 */
export function velocityPressure(input: VelocityPressureInput): VelocityPressure {
  const { edition, V, exposure, h, Kzt, elevation } = input;
  const where = CLAUSES[edition];
  const Kz = input.Kz ?? exposureCoefficient(edition, exposure, h);
  const Ke = elevationFactor(edition, elevation);
  const qh = psf(0.00256 * Kz * Kzt * (edition === '7-22' ? 1 : KD) * Ke * V * V);
  const steps = [
    step(
      'K_z',
      Kz,
      '',
      input.Kz === undefined ? KZ_FORMULA[edition] : 'entered',
      asce(edition, where.Kz),
    ),
    step('K_zt', Kzt, '', 'entered', asce(edition, '26.8')),
    step('K_e', Ke, '', edition === '7-10' ? '1' : 'exp(-0.0000362 z_e)', asce(edition, where.Ke)),
    step('K_d', KD, '', 'components and cladding', asce(edition, where.Kd)),
    step('q_h', qh, 'psf', Q_FORMULA[edition], asce(edition, where.q)),
  ];
  return { Kz, Ke, Kd: KD, qh, steps, notes: notesOf(input) };
}

const Q_FORMULA: Record<AsceEdition, string> = {
  '7-10': '0.00256 K_z K_zt K_d V^2',
  '7-16': '0.00256 K_z K_zt K_d K_e V^2',
  '7-22': '0.00256 K_z K_zt K_e V^2',
};

const KZ_FORMULA: Record<AsceEdition, string> = {
  '7-10': '2.01 (z/z_g)^(2/alpha), z >= 15 ft, exposure B not less than 0.70',
  '7-16': '2.01 (z/z_g)^(2/alpha), z >= 15 ft',
  '7-22': 'printed table, linear between heights',
};

function notesOf(input: VelocityPressureInput): string[] {
  const notes: string[] = [];
  if (input.Kz !== undefined) notes.push('K_z is entered, not calculated.');
  else if (input.edition === '7-22') {
    notes.push('K_z comes from the printed table by linear interpolation.');
  }
  if (input.edition === '7-22') {
    notes.push('q_h of 7-22 is without K_d; K_d stands in the pressure equation.');
  }
  if (input.edition === '7-10' && input.elevation !== 0) {
    notes.push('7-10 has no elevation factor: the elevation does not count.');
  }
  return notes;
}

/**
 * K_z at height z in ft, 15 ft or what is higher. 7-10: not less than 0.70 in exposure B
 * (chapter 30); that floor is gone for cladding in 7-16 and 7-22. 7-22: the printed table, linear.
 */
export function exposureCoefficient(edition: AsceEdition, exposure: Exposure, z: Feet): number {
  const height = Math.max(15, z);
  if (edition === '7-22') return interpolated(KZ_7_22[exposure], height);
  const { alpha, zg_ft } = TERRAIN[exposure];
  const Kz = 2.01 * Math.pow(height / zg_ft, 2 / alpha);
  return edition === '7-10' && exposure === 'B' ? Math.max(0.7, Kz) : Kz;
}

function interpolated(table: readonly (readonly [number, number])[], z: number): number {
  for (let i = 1; i < table.length; i++) {
    const [z1, k1] = table[i - 1]!;
    const [z2, k2] = table[i]!;
    if (z <= z2) return k1 + ((k2 - k1) * (z - z1)) / (z2 - z1);
  }
  throw new Error(`K_z is tabulated to ${HIGHEST_FT} ft`);
}

/** K_e = exp(-0.0000362 z_e), z_e in ft above sea level; 1 in 7-10. Table 26.9-1, from memory. */
export function elevationFactor(edition: AsceEdition, elevation: Feet): number {
  return edition === '7-10' ? 1 : Math.exp(-0.0000362 * elevation);
}
