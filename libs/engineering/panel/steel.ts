// Sheet steel as material: constants, grades, and what S100 lets of a low-ductility grade count.

import { refused, result, step, type Outcome, type Step } from '../check.js';
import { cite } from '../sources.js';
import { ksi, type Ksi } from '../units.js';

/** Modulus of elasticity, shear modulus (ksi) and Poisson's ratio (AISI S100-16, Symbols). */
export const E_STEEL = ksi(29500);
export const G_STEEL = ksi(11300);
export const POISSON = 0.3;

/** Full ductility: F_u/F_y and elongation that a steel must reach to count in full (A3.1). */
export const FULL_DUCTILITY = {
  tensileOverYield: 1.08,
  elongationIn2InPercent: 10,
  localElongationPercent: 20,
  uniformElongationPercent: 3,
} as const;

export interface SteelGrade {
  /** "SS 50 Class 1": the standard's designation. */
  readonly name: string;
  readonly Fy: Ksi;
  readonly Fu: Ksi;
  /** Least elongation in 2 in, percent; null where the standard sets none. */
  readonly elongation: number | null;
}

/** Structural grades of A653; A792 has the same pairs. Elongations and 37, 40 from memory. */
export const STEEL_GRADES: readonly SteelGrade[] = [
  { name: 'SS 33', Fy: ksi(33), Fu: ksi(45), elongation: 20 },
  { name: 'SS 37', Fy: ksi(37), Fu: ksi(52), elongation: 18 },
  { name: 'SS 40', Fy: ksi(40), Fu: ksi(55), elongation: 16 },
  { name: 'SS 50 Class 1', Fy: ksi(50), Fu: ksi(65), elongation: 12 },
  { name: 'SS 50 Class 4', Fy: ksi(50), Fu: ksi(60), elongation: 12 },
  { name: 'SS 80', Fy: ksi(80), Fu: ksi(82), elongation: null },
];

export interface DesignStresses {
  readonly grade: SteelGrade;
  readonly Fy: Ksi;
  readonly Fu: Ksi;
}

/**
 * The grade named as its standard does, with or without "SS" and "Grade": "SS 33", "SS33", "33",
 * "SS Grade 50 Class 1". "50" alone is refused, since its classes differ in F_u.
 */
export function steelGrade(name: string): Outcome<SteelGrade> {
  const wanted = `SS ${name.replace(/\b(SS|Grade)(?![a-z])/gi, ' ').trim()}`.replace(/\s+/g, ' ');
  const grade = STEEL_GRADES.find((g) => g.name.toLowerCase() === wanted.toLowerCase());
  if (grade !== undefined) return result(grade);
  const known = STEEL_GRADES.map((g) => g.name).join(', ');
  return refused({ pointer: '/grade', message: `is no grade known here; known: ${known}` });
}

/**
 * F_y and F_u for design, ksi. Where the standard asks less than 3 % elongation (Grade 80):
 * min(0.75 F_y, 60) and min(0.75 F_u, 62), which holds for connections too; 3 to 10 %: 0.90 F_y
 * (AISI S100-16 A3.1.2, A3.1.3). Left out: R_b for multiple webs, which allows more.
 */
export function designStresses(grade: SteelGrade): DesignStresses {
  const { Fy, Fu, elongation } = grade;
  if (elongation === null || elongation < 3) {
    return { grade, Fy: ksi(Math.min(0.75 * Fy, 60)), Fu: ksi(Math.min(0.75 * Fu, 62)) };
  }
  if (elongation < FULL_DUCTILITY.elongationIn2InPercent) {
    return { grade, Fy: ksi(0.9 * Fy), Fu: ksi(0.9 * Fu) };
  }
  return { grade, Fy, Fu };
}

export function designStressSteps(
  { grade, Fy, Fu }: DesignStresses,
  standard: 'astm-a653' | 'astm-a792',
): Step[] {
  const specified = cite(standard, `Table 2, ${grade.name}`);
  const s100 = cite('aisi-s100-16', 'A3.1');
  const reduced = Fy < grade.Fy;
  return [
    step('F_y', grade.Fy, 'ksi', 'specified yield stress', specified),
    step('F_u', grade.Fu, 'ksi', 'specified tensile strength', specified),
    step('F_y,design', Fy, 'ksi', reduced ? 'min(0.75 F_y, 60)' : 'F_y', s100),
    step('F_u,design', Fu, 'ksi', reduced ? 'min(0.75 F_u, 62)' : 'F_u', s100),
  ];
}

/**
 * R_b, the share of F_y at which a multiple-web section of low-ductility sheet yields first, for a
 * stiffened compression flange of flat-width ratio w/t up to 500; undefined above (AISI S100-16
 * A3.1.3, from memory; continuous at its limits). Not used for capacities: designStresses is lower.
 */
export function multipleWebFactor(wOverT: number, Fy: Ksi, E: Ksi): number | undefined {
  const stretch = (wOverT * Fy) / E;
  if (stretch <= 0.067) return 1;
  if (stretch < 0.974) return 1 - 0.26 * (stretch - 0.067) ** 0.4;
  return wOverT <= 500 ? 0.75 : undefined;
}
