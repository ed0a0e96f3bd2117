// What of hail is calculated, and what is not.

import type { Covered } from '../calculator.js';

export const hailCoverage: readonly Covered[] = [
  {
    clause: 'Hail in free fall',
    does: 'terminal velocity and energy of stones of 1/2 to 3 in',
    function: 'terminalVelocity, impactEnergy, drivenVelocity',
    cases: [
      'hailstone terminal velocity and kinetic energy, smooth hard sphere',
      'hailstone kinetic energy, source has a decimal slip',
      'hailstone terminal velocity (Laurie)',
    ],
    left_out: 'real shapes and densities: energies are on the high side',
    unconfirmed: 'velocities over 2 in from memory',
  },
  {
    clause: 'UL 2218',
    does: 'classes as a table; the class that covers a stone',
    function: 'IMPACT_CLASSES, classCovering',
    cases: ['UL 2218 impact class'],
    left_out: 'ice-ball tests: their mass and energy windows were not found',
    unconfirmed: 'that the printed energies are the class figures',
  },
  {
    clause: 'Hailstorm intensity scale',
    does: 'H0 to H10 as a table',
    function: 'HAIL_INTENSITY',
    cases: ['TORRO hail intensity'],
    unconfirmed: 'H3 to H5 from memory',
  },
  {
    clause: "Spotters' names of hail sizes",
    does: 'names as a table',
    function: 'HAIL_NAMES',
    unconfirmed: 'from memory; offices differ on softball and grapefruit',
  },
  {
    clause: 'Dents in flat steel sheet',
    does: 'what a published test saw, by direction only',
    function: 'dents',
    cases: ['visible dent on flat steel sheet from artificial hail'],
    left_out: 'depth and diameter of dents: no readable equation',
  },
];
