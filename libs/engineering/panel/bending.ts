// Bending strength of a sheet by first yield of its effective section, in one direction or both.

import { refused, result, type Fault, type Outcome } from '../check.js';
import type { Inches, KipInches, Ksi, Quantity } from '../units.js';
import { kipInches } from '../units.js';
import { effectiveSection, grossSection, sectionStart } from './effective-section.js';
import type { Element } from './element.js';
import type { OutlinePoint } from './corners.js';
import { sheetShape, turnedOver, type SheetShape } from './outline.js';
import { S100_RULES, WIDTH_LIMITS } from './plate.js';

/** Positive bending puts the sheet's top (larger y, the weather side) in compression. */
export type BendingDirection = 'positive' | 'negative';

export interface Sheet {
  /** Mid-line corners, y up toward the weather. */
  readonly outline: readonly OutlinePoint[];
  /** Cover of one outline; with it all values are per foot of cover, else of the outline. */
  readonly cover?: Inches;
  readonly t: Inches;
  readonly Fy: Ksi;
  readonly E: Ksi;
}

export interface SectionValues {
  readonly A: Quantity<'in2'>;
  readonly I: Quantity<'in4'>;
  /** Height of the centroid in the outline's y. */
  readonly yBar: Inches;
  readonly S: Quantity<'in3'>;
}

export interface BendingStrength {
  readonly direction: BendingDirection;
  readonly shape: SheetShape;
  readonly gross: SectionValues;
  /** At first yield. */
  readonly effective: SectionValues;
  /** Effective I at 0.6 F_y, for deflection. */
  readonly serviceI: Quantity<'in4'>;
  /** Stress of the extreme compression fiber at first yield. */
  readonly fc: Ksi;
  readonly Mn: KipInches;
  readonly Ma: KipInches;
  readonly elements: readonly Element[];
}

/** Safety factor for bending (AISI S100-16 F, S100-24 F). */
export const OMEGA_B = 1.67;

/** The share of F_y taken as service stress for deflection (from memory). */
export const SERVICE_STRESS = 0.6;

/**
 * M_n = S_e F_y, first yield at whichever extreme fiber, and M_a = M_n/1.67 (AISI S100-16 F3.1 with
 * Appendix 1). Refused where a compressed flat is outside the width limits of B4.1 and Appendix 1.
 * Left out: lateral-torsional and distortional buckling, flange curling, cold work of forming.
 */
export function bendingStrength(
  sheet: Sheet,
  direction: BendingDirection,
): Outcome<BendingStrength> {
  const built = sheetShape(sheet.outline, sheet.t, sheet.cover);
  return built.ok ? bendingOf(built.value, sheet, direction) : built;
}

/** As bendingStrength, of a shape that is built already, upright. */
export function bendingOf(
  upright: SheetShape,
  sheet: Sheet,
  direction: BendingDirection,
): Outcome<BendingStrength> {
  const { cover, t, Fy, E } = sheet;
  const shape = direction === 'positive' ? upright : turnedOver(upright);
  const start = sectionStart(shape);
  const section = effectiveSection(shape, Fy, E, S100_RULES, start);
  const faults = widthFaults(section.elements, t);
  if (!section.settled) {
    faults.push({ pointer: '/outline', message: 'the effective section does not settle' });
  }
  if (faults.length > 0) return refused(...faults);
  const service = effectiveSection(shape, SERVICE_STRESS * Fy, E, S100_RULES, start);
  const share = cover === undefined ? 1 : 12 / cover;
  const up = direction === 'positive' ? 1 : -1;
  const values = (s: { A: number; I: number; y0: number; S: number }): SectionValues => ({
    A: (s.A * share) as SectionValues['A'],
    I: (s.I * share) as SectionValues['I'],
    yBar: (up * s.y0) as Inches,
    S: (s.S * share) as SectionValues['S'],
  });
  const effective = values(section);
  const Mn = kipInches(effective.S * Fy);
  return result({
    direction,
    shape,
    gross: values(grossSection(shape)),
    effective,
    serviceI: (service.I * share) as SectionValues['I'],
    fc: section.fc as Ksi,
    Mn,
    Ma: kipInches(Mn / OMEGA_B),
    elements: section.elements,
  });
}

/** Flats in compression outside the limits of S100-16 B4.1 and Table 1.3-1, each named. */
function widthFaults(elements: readonly Element[], t: number): Fault[] {
  const faults: Fault[] = [];
  const fault = (e: Element, message: string): void => {
    faults.push({ pointer: '/outline', message: `flat ${e.flat + 1} in compression: ${message}` });
  };
  for (const e of elements) {
    const ratio = e.w / t;
    const limit = limitOf(e);
    if (limit !== undefined && ratio > limit) {
      fault(e, `w/t ${ratio.toFixed(1)} is over ${limit} (AISI S100-16 B4.1)`);
    }
    if (e.lip === null) continue;
    const { D, theta } = e.lip;
    if (D / e.w > WIDTH_LIMITS.lipOverFlange) {
      fault(e, `its lip is over 0.8 of its width, D/w ${(D / e.w).toFixed(2)} (Table 1.3-1)`);
    }
    const angle = (theta * 180) / Math.PI;
    if (angle < 40 - 1e-9 || angle > 140 + 1e-9) {
      fault(e, `its lip stands at ${angle.toFixed(1)} degrees, outside 40 to 140 (Table 1.3-1)`);
    }
  }
  return faults;
}

function limitOf(e: Element): number | undefined {
  switch (e.kind) {
    case 'stiffened':
    case 'ribbed':
      return WIDTH_LIMITS.stiffened;
    case 'lipped':
      return WIDTH_LIMITS.simpleLip;
    case 'unstiffened':
    case 'lip':
      return WIDTH_LIMITS.unstiffened;
    case 'web':
      return WIDTH_LIMITS.web;
    case 'tension':
      return undefined;
  }
}
