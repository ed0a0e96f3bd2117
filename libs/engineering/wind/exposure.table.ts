// Terrain constants, the velocity pressure exposure coefficients and the internal pressure
// coefficients. ASCE/SEI 7-10 Tables 26.9-1, 26.11-1; 7-16 and 7-22 Tables 26.11-1, 26.10-1,
// 26.13-1. The 7-22 table of K_z is from memory; it agrees with its equation to 0.011 and, for
// exposure B, with code tables made from it.

import type { AsceEdition } from '../sources.js';

export type Exposure = 'B' | 'C' | 'D';
export type Enclosure = 'enclosed' | 'partially-enclosed' | 'partially-open' | 'open';

export const EXPOSURES = ['B', 'C', 'D'] as const;
export const ENCLOSURES = ['enclosed', 'partially-enclosed', 'partially-open', 'open'] as const;

/** alpha, and z_g in feet, of 7-10 and 7-16. */
export const TERRAIN = {
  B: { alpha: 7.0, zg_ft: 1200 },
  C: { alpha: 9.5, zg_ft: 900 },
  D: { alpha: 11.5, zg_ft: 700 },
} as const satisfies Record<Exposure, { alpha: number; zg_ft: number }>;

/** Height in feet, K_z of 7-22. */
// prettier-ignore
export const KZ_7_22: Record<Exposure, readonly (readonly [z_ft: number, Kz: number])[]> = {
  B: [[15, 0.57], [20, 0.62], [25, 0.66], [30, 0.7], [40, 0.74], [50, 0.79], [60, 0.83]],
  C: [[15, 0.85], [20, 0.9], [25, 0.94], [30, 0.98], [40, 1.04], [50, 1.09], [60, 1.13]],
  D: [[15, 1.03], [20, 1.08], [25, 1.12], [30, 1.16], [40, 1.22], [50, 1.27], [60, 1.31]],
};

/** GC_pi as a magnitude; both signs count. */
export const GCPI: Record<Enclosure, number> = {
  enclosed: 0.18,
  'partially-enclosed': 0.55,
  'partially-open': 0.18,
  open: 0,
};

/** Where each edition keeps the pieces of the calculation. */
export const CLAUSES: Record<
  AsceEdition,
  Record<'Kz' | 'Ke' | 'Kd' | 'q' | 'p' | 'GCpi' | 'parapet' | 'overhang', string>
> = {
  '7-10': {
    Kz: 'Table 30.3-1',
    Ke: 'none in this edition',
    Kd: 'Table 26.6-1',
    q: 'Eq. 30.3-1',
    p: 'Eq. 30.4-1',
    GCpi: 'Table 26.11-1',
    parapet: '30.9',
    overhang: '30.10',
  },
  '7-16': {
    Kz: 'Table 26.10-1',
    Ke: 'Table 26.9-1',
    Kd: 'Table 26.6-1',
    q: 'Eq. 26.10-1',
    p: 'Eq. 30.3-1',
    GCpi: 'Table 26.13-1',
    parapet: '30.8',
    overhang: '30.9',
  },
  '7-22': {
    Kz: 'Table 26.10-1',
    Ke: 'Table 26.9-1',
    Kd: 'Table 26.6-1',
    q: 'Eq. 26.10-1',
    p: 'Eq. 30.3-1',
    GCpi: 'Table 26.13-1',
    parapet: '30.6',
    overhang: '30.7',
  },
};
