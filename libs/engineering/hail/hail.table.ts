// Tables of hail. Free fall to 2 in: a public weather table read in two copies that agree; its
// energies at 1/2 and 3/4 in are misprinted and not copied. Over 2 in: from memory. UL 2218: sizes
// and heights read in a test laboratory's summary; that the energies are its class figures is from
// memory. Intensity scale: a weather-data guide, H3 to H5 from memory. Spotters' names: from memory.

import { cite } from '../sources.js';

export interface FreeFall {
  readonly diameter_in: number;
  readonly kmh: number;
  readonly from: 'read' | 'derived' | 'from memory';
}

const FPS_TO_KMH = 1.09728;

/** Terminal velocity of smooth hard ice. 3/4 in is derived from its energy. */
export const FREE_FALL: readonly FreeFall[] = [
  { diameter_in: 0.5, kmh: 55.8, from: 'read' },
  { diameter_in: 0.75, kmh: 68.1, from: 'derived' },
  { diameter_in: 1, kmh: 80.1, from: 'read' },
  { diameter_in: 1.25, kmh: 90.0, from: 'read' },
  { diameter_in: 1.5, kmh: 98.8, from: 'read' },
  { diameter_in: 1.75, kmh: 106.5, from: 'read' },
  { diameter_in: 2, kmh: 115.2, from: 'read' },
  { diameter_in: 2.5, kmh: 117 * FPS_TO_KMH, from: 'from memory' },
  { diameter_in: 2.75, kmh: 124 * FPS_TO_KMH, from: 'from memory' },
  { diameter_in: 3, kmh: 130 * FPS_TO_KMH, from: 'from memory' },
];

export type ImpactClass = 1 | 2 | 3 | 4;

/** UL 2218: steel ball, drop height, energy. Ball mass times height gives it only within 2.3 %. */
export const IMPACT_CLASSES: {
  readonly [rank in ImpactClass]: {
    readonly ball_in: number;
    readonly drop_ft: number;
    readonly energy_ftlbf: number;
    readonly energy_J: number;
  };
} = {
  1: { ball_in: 1.25, drop_ft: 12, energy_ftlbf: 3.53, energy_J: 4.79 },
  2: { ball_in: 1.5, drop_ft: 15, energy_ftlbf: 7.35, energy_J: 9.97 },
  3: { ball_in: 1.75, drop_ft: 17, energy_ftlbf: 13.56, energy_J: 18.38 },
  4: { ball_in: 2.0, drop_ft: 20, energy_ftlbf: 23.71, energy_J: 32.15 },
};

/** Intensity of a storm: J per square meter of ground, not of one stone; the ranges overlap. */
export const HAIL_INTENSITY: {
  readonly [rank: string]: {
    readonly from_mm: number;
    readonly to_mm?: number;
    readonly energy_Jm2?: { readonly above: number; readonly to?: number };
  };
} = {
  H0: { from_mm: 5, to_mm: 5, energy_Jm2: { above: 0, to: 25 } },
  H1: { from_mm: 5, to_mm: 15, energy_Jm2: { above: 25 } },
  H2: { from_mm: 10, to_mm: 20, energy_Jm2: { above: 125 } },
  H3: { from_mm: 20, to_mm: 30 },
  H4: { from_mm: 25, to_mm: 40 },
  H5: { from_mm: 30, to_mm: 50 },
  H6: { from_mm: 40, to_mm: 60 },
  H7: { from_mm: 50, to_mm: 75 },
  H8: { from_mm: 60, to_mm: 90 },
  H9: { from_mm: 75, to_mm: 100 },
  H10: { from_mm: 100 },
};

/** Spotters' names, in. Offices swap softball and grapefruit: record inches, not names. */
export const HAIL_NAMES: { readonly [name: string]: number } = {
  pea: 0.25,
  marble: 0.5,
  penny: 0.75,
  nickel: 0.88,
  quarter: 1,
  'half dollar': 1.25,
  'ping pong ball': 1.5,
  'golf ball': 1.75,
  'hen egg': 2,
  'tennis ball': 2.5,
  baseball: 2.75,
  teacup: 3,
  grapefruit: 4,
  softball: 4.5,
};

export const HAIL_CITES = {
  freeFall: cite('hail-free-fall', 'velocity and energy columns'),
  freeFallOver2in: cite('hail-1960', 'terminal velocities'),
  impactClass: cite('ul-2218', 'ball sizes of classes 1 to 4'),
  intensity: cite('torro', 'table'),
  names: cite('nws-hail', 'table of sizes'),
  dents: cite('hail-dents', 'abstract'),
} as const;
