// The calculator `hail`.

import { calculator, type Calculator } from '../calculator.js';
import { refused, result, step, TO_BE_CONFIRMED } from '../check.js';
import { inches } from '../units.js';
import { HAIL_CITES } from './hail.table.js';
import { classCovering, HAIL_RANGE, impactEnergy, terminalVelocity } from './hail.js';

const hail = calculator({
  name: 'hail',
  says: 'Speed and energy of a hailstone, and the impact class that covers it',
  input: {
    diameter_in: {
      kind: 'number',
      unit: 'in',
      least: HAIL_RANGE.least_in,
      most: HAIL_RANGE.most_in,
      says: 'diameter of the stone',
    },
  },
  output: {
    velocity_mph: 'terminal velocity of a smooth hard stone in still air',
    energy_ftlbf: 'its energy; natural stones are lighter',
    ul2218_class_covering: 'lowest class with a ball at least as large; null over 2 in',
  },
  cautions: [
    'An impact class belongs to the tested assembly and speaks of splits, not of dents.',
    'No common roofing gauge is dent-proof at golf-ball size.',
  ],
  run: ({ diameter_in }) => {
    const diameter = inches(diameter_in);
    const velocity = terminalVelocity(diameter);
    if (velocity === undefined) {
      return refused({ pointer: '/diameter_in', message: 'is outside the table, 0.5 to 3 in' });
    }
    const energy = impactEnergy(diameter, velocity);
    const covering = classCovering(diameter);
    const source = diameter > 2 ? HAIL_CITES.freeFallOver2in : HAIL_CITES.freeFall;
    return result(
      { velocity_mph: velocity, energy_ftlbf: energy, ul2218_class_covering: covering },
      [
        step('V', velocity, 'mph', 'table of diameters, V / sqrt(D) straight between rows', source),
        step('E', energy, 'ft-lbf', '1/2 m V^2, ice of 915 kg/m3', HAIL_CITES.freeFall),
        step(
          'class',
          covering ?? 'none',
          '',
          'ball not smaller than the stone',
          HAIL_CITES.impactClass,
        ),
      ],
      diameter > 2 ? [`velocities over 2 in are from memory; ${TO_BE_CONFIRMED}`] : [],
    );
  },
});

export const hailCalculators: readonly Calculator[] = [hail];
