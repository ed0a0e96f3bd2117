// What of the load combinations and the roof live load is calculated here, what is knowingly left
// out, and what has still to be seen in the standard; the coverage page is made from it.

import type { Covered } from '../calculator.js';

export const combinationsCoverage: readonly Covered[] = [
  {
    clause: 'ASCE/SEI 7-10, 7-16, 7-22, 2.4.1',
    does: 'allowable stress combinations normal to a panel, inward and outward',
    function: 'panelDemand',
    cases: [
      'ASD combinations on a panel',
      'ASD, 7-22, low slope minimum',
      'rule (old edition, trap)',
    ],
    left_out: 'rain, floor live load, tornado, seismic, flood, ice and self-straining loads',
    unconfirmed: 'numbers and factors from memory except 3a, 4a, 6a of 7-22 and 7 of 7-16',
  },
  {
    clause: 'ASCE/SEI 7-16, 2.3.1 and 2.4.1',
    does: 'dead load with wind by either design method, for charts on a strength basis',
    function: 'deadAndWind',
    cases: ['rule'],
    left_out: 'the other strength combinations',
  },
  {
    clause: 'ASCE/SEI 7, 4.8',
    does: 'roof live load with R1 and R2, 12 to 20 psf',
    function: 'roofLiveLoad',
    cases: ['roof live load', 'roof live load, panel'],
    left_out: 'special occupancies, greenhouses, awnings, concentrated load',
  },
  {
    clause: 'statics',
    does: 'components normal to and along the slope; panel weight from developed and cover width',
    function: 'ofHorizontal, ofSlope, panelDeadLoad',
    cases: ['normal and down-slope component'],
  },
  {
    clause: 'IBC Table 1604.3',
    does: 'deflection limits of formed metal sheets as settings',
    function: 'DEFLECTION_LIMITS',
    unconfirmed: 'from memory',
  },
];
