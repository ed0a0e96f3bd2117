// What a hailstone brings to a roof: speed, energy, the impact class that covers it, and dents.

import { mph, type Inches, type Mph, type Quantity } from '../units.js';
import { FREE_FALL, IMPACT_CLASSES, type FreeFall, type ImpactClass } from './hail.table.js';

export type FootPounds = Quantity<'ft-lbf'>;

const KMH_PER_MPH = 1.609344;
const JOULES_PER_FTLBF = 1.3558179483;
/** kg/m3; reproduces the read energies. Natural stones are lighter, so energies here are high. */
const ICE_DENSITY = 915;
export const HAIL_RANGE = { least_in: 0.5, most_in: 3 } as const;

/**
 * Terminal velocity of a smooth hard stone of 1/2 to 3 in, still air: between the rows of the table
 * V / sqrt(D) runs straight, since V goes with sqrt(D). Undefined outside the table.
 */
export function terminalVelocity(diameter: Inches): Mph | undefined {
  for (let i = 1; i < FREE_FALL.length; i += 1) {
    const low = FREE_FALL[i - 1] as FreeFall;
    const high = FREE_FALL[i] as FreeFall;
    if (diameter < low.diameter_in || diameter > high.diameter_in) continue;
    const part = (diameter - low.diameter_in) / (high.diameter_in - low.diameter_in);
    const reduced = (1 - part) * perRoot(low) + part * perRoot(high);
    return mph((reduced * Math.sqrt(diameter)) / KMH_PER_MPH);
  }
  return undefined;
}

const perRoot = (row: FreeFall): number => row.kmh / Math.sqrt(row.diameter_in);

/** E = m V²/2 of an ice sphere of 915 kg/m3. */
export function impactEnergy(diameter: Inches, velocity: Mph): FootPounds {
  const d = diameter * 0.0254;
  const v = (velocity * KMH_PER_MPH) / 3.6;
  const joules = 0.5 * ICE_DENSITY * (Math.PI / 6) * d ** 3 * v * v;
  return (joules / JOULES_PER_FTLBF) as FootPounds;
}

/**
 * The lowest UL 2218 class whose ball is at least as large as the stone; null over 2 in. A class
 * belongs to the whole assembly and speaks of splits and openings, not of dents.
 */
export function classCovering(diameter: Inches): ImpactClass | null {
  for (const rank of [1, 2, 3, 4] as const) {
    if (diameter <= IMPACT_CLASSES[rank].ball_in) return rank;
  }
  return null;
}

/** Speed of a stone driven by wind; only its part normal to the slope dents (from memory). */
export const drivenVelocity = (terminal: Mph, wind: Mph): Mph => mph(Math.hypot(terminal, wind));

/**
 * Whether a stone left a visible dent in flat steel in the published test, by direction only: every
 * size (40, 45, 55 mm) dented sheet to 0.55 mm; 45 and 55 mm dented 0.75 mm and 40 mm did not. What
 * lies outside that is "not tested". So no common roofing gauge is dent-proof at golf-ball size.
 */
export function dents(thickness_mm: number, stone_mm: number): boolean | 'not tested' {
  if (thickness_mm <= 0.75 && stone_mm >= 45) return true;
  if (thickness_mm <= 0.55 && stone_mm >= 40) return true;
  if (thickness_mm >= 0.75 && stone_mm <= 40) return false;
  return 'not tested';
}
