// What the take-off counts and what it leaves to people.

import type { Covered } from '../calculator.js';

export const takeOffCoverage: readonly Covered[] = [
  {
    clause: 'Slope factor sqrt(1 + (rise / 12)^2); area and true length of polygons on the slope',
    does: 'areas and edges of free planes with openings, and of shed, gable and hip roofs',
    function: 'takeOff, builtRoof, slopeFactor',
    cases: ['slope length per foot of run', 'hip length per foot of run'],
    left_out: 'curved and twisted planes; hips of unequal slopes from dimensions (draw the planes)',
  },
  {
    clause: 'Common practice: strips by coverage width and starting edge',
    does: 'strips, piece lengths by the longest edge, allowances, end laps, waste',
    function: 'takeOff, stripsOf, piecesOf',
    left_out: 'reuse of offcuts; tapered panels; laps placed on supports (lines are even)',
  },
  {
    clause: 'Common practice: trims in stock lengths',
    does: 'fewest stock lengths, proved where the search ends or an outside solver says so',
    function: 'cutStock, searchPlan',
    left_out:
      'several stock lengths of one trim; runs split otherwise than full lengths and one rest',
  },
  {
    clause: 'Common practice: fasteners by zone',
    does: 'rows along each run by the closest spacing of the zones that it lies under',
    function: 'takeOff, zoneLayout',
    left_out: 'zones of walls: the closest spacing counts there; fixed points; spares',
  },
  {
    clause: 'Common practice: closures, sealant, underlayment, bundles',
    does: 'counts by length, underlayment in lapped courses, bundles by weight and pieces',
    function: 'takeOff',
    left_out: 'rigging and storage on the roof: a matter for the structure and its engineer',
  },
];
