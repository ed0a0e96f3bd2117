// The coating calculators: color, coating mass, corrosivity, and the life of a zinc coating.

import { calculator, type Calculator } from '../calculator.js';
import { result, TO_BE_CONFIRMED } from '../check.js';
import { colorConvertCalculator } from './color-convert-calculator.js';
import { colorDifferenceCalculator } from './color-difference-calculator.js';
import { coatingMass, coatingMassSteps } from './coating-mass.js';
import { COATING_DESIGNATIONS, type CoatingDesignation } from './coating-mass.table.js';
import { corrosionCalculator } from './corrosion-calculator.js';
import { zincLifeCalculator } from './zinc-life-calculator.js';

const coatingMassCalculator = calculator({
  name: 'coating-mass',
  says: 'Mass and thickness of a zinc or 55 % Al-Zn coating by its designation',
  input: {
    designation: { kind: 'choice', says: 'coating designation', of: COATING_DESIGNATIONS },
  },
  output: {
    total_ozft2: 'least total of both sides, oz/ft2',
    total_gm2: 'least total of both sides, g/m2',
    one_side_min: 'least on one side by triple-spot test, in the unit of the designation',
    single_spot_min: 'least total of both sides on a single spot, in the unit of the designation',
    designation_unit: 'the unit of the designation: oz/ft2 or g/m2',
    thickness_um_per_side: 'average thickness of one side, even split, um',
  },
  cautions: [
    'A designation promises the total of both sides, not half of it on each.',
    'Do not compare the numbers of zinc with those of 55 % Al-Zn.',
  ],
  run: ({ designation }) => {
    const mass = coatingMass(designation as CoatingDesignation);
    return result(
      {
        total_ozft2: mass.totalOzPerFt2,
        total_gm2: mass.totalGramsPerM2,
        one_side_min: mass.oneSide,
        single_spot_min: mass.singleSpot,
        designation_unit: mass.unit,
        thickness_um_per_side: mass.thicknessPerSide,
      },
      coatingMassSteps(mass),
      mass.metal === 'zinc'
        ? ['Designations in the two unit systems are not exact conversions of one another.']
        : [
            'A792 tabulates no one-side minimum: 0.40 of the single-spot total is expected.',
            `Thickness by a density of 3.75 g/cm3, from memory: ${TO_BE_CONFIRMED}.`,
          ],
    );
  },
});

export const coatingCalculators: readonly Calculator[] = [
  colorDifferenceCalculator,
  colorConvertCalculator,
  coatingMassCalculator,
  corrosionCalculator,
  zincLifeCalculator,
];
