// Metallic coating mass and thickness by designation. A designation promises the least mass of
// both sides together; the thickness here is the average of an even split, so thin spots and the
// lighter side have less. Never compare the numbers of zinc with those of Al-Zn.

import { step, type Step } from '../check.js';
import { cite, COMMON_PRACTICE, type Citation } from '../sources.js';
import { micrometers, type Micrometers } from '../units.js';
import { COATING_MASS, type CoatingDesignation, type CoatingRow } from './coating-mass.table.js';

export interface CoatingMass extends CoatingRow {
  readonly designation: CoatingDesignation;
  readonly totalOzPerFt2: number;
  readonly totalGramsPerM2: number;
  readonly thicknessPerSide: Micrometers;
}

/** 1.00 oz/ft2 in g/m2 (published conversion, ASTM A879 footnote A). */
export const G_PER_M2_IN_OZ_PER_FT2 = 305.15;
/** Zinc: 1.00 oz/ft2 is 1.68 mil, 7.14 g/m2 is 1.00 um. ASTM A653/A653M-15, 8.1.3. */
const ZINC_MIL_IN_OZ_PER_FT2 = 1.68;
const ZINC_G_PER_M2_IN_UM = 7.14;
const UM_IN_MIL = 25.4;
/** g/cm3, from memory; A792 Table X1.1 was not read. */
export const AL_ZN_DENSITY = 3.75;

export function coatingMass(designation: CoatingDesignation): CoatingMass {
  const row: CoatingRow = COATING_MASS[designation];
  const inOz = row.unit === 'oz/ft2';
  const totalOzPerFt2 = inOz ? row.total : row.total / G_PER_M2_IN_OZ_PER_FT2;
  const totalGramsPerM2 = inOz ? row.total * G_PER_M2_IN_OZ_PER_FT2 : row.total;
  const thicknessPerSide =
    row.metal === '55 % Al-Zn'
      ? alZnThickness(totalGramsPerM2)
      : inOz
        ? zincThicknessFromOunces(totalOzPerFt2)
        : zincThicknessFromGrams(totalGramsPerM2);
  return { ...row, designation, totalOzPerFt2, totalGramsPerM2, thicknessPerSide };
}

/** Per side, even split, of a zinc total in oz/ft2. ASTM A653/A653M-15, 8.1.3. */
export const zincThicknessFromOunces = (totalOzPerFt2: number): Micrometers =>
  micrometers((totalOzPerFt2 / 2) * ZINC_MIL_IN_OZ_PER_FT2 * UM_IN_MIL);

/** Per side, even split, of a zinc total in g/m2. ASTM A653/A653M-15, 8.1.3. */
export const zincThicknessFromGrams = (totalGramsPerM2: number): Micrometers =>
  micrometers(totalGramsPerM2 / 2 / ZINC_G_PER_M2_IN_UM);

/** Per side, even split, of a 55 % Al-Zn total in g/m2; the density is from memory. */
export const alZnThickness = (totalGramsPerM2: number, density = AL_ZN_DENSITY): Micrometers =>
  micrometers(totalGramsPerM2 / 2 / density);

export function coatingMassSteps(mass: CoatingMass): Step[] {
  const table = tableOf(mass);
  const alZn = mass.metal === '55 % Al-Zn';
  return [
    step('TST', mass.total, mass.unit, `least total of both sides for ${mass.designation}`, table),
    alZn
      ? step('TST_1', mass.oneSide, mass.unit, '0.40 SST, normally expected', table)
      : step('TST_1', mass.oneSide, mass.unit, 'least on one side', table),
    step('SST', mass.singleSpot, mass.unit, 'least total of both sides on a single spot', table),
    mass.unit === 'oz/ft2'
      ? step(
          'm',
          mass.totalGramsPerM2,
          'g/m2',
          '305.15 TST',
          cite('astm-a653', '1.00 oz/ft2 = 305.15 g/m2'),
        )
      : step(
          'm',
          mass.totalOzPerFt2,
          'oz/ft2',
          'TST / 305.15',
          cite('astm-a653', '1.00 oz/ft2 = 305.15 g/m2'),
        ),
    alZn
      ? step('t', mass.thicknessPerSide, 'um', 'm / 2 / 3.75 g/cm3, even split', COMMON_PRACTICE)
      : mass.unit === 'oz/ft2'
        ? step(
            't',
            mass.thicknessPerSide,
            'um',
            '1.68 mil per oz/ft2 x TST / 2, even split',
            cite('astm-a653', '8.1.3'),
          )
        : step(
            't',
            mass.thicknessPerSide,
            'um',
            'TST / 2 / 7.14, even split',
            cite('astm-a653', '8.1.3'),
          ),
  ];
}

const tableOf = (row: CoatingRow): Citation =>
  row.metal === 'zinc' ? cite('astm-a653', 'Table 1') : cite('astm-a792', 'Table 1');
