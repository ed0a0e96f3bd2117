// What of thermal movement and the code's roof rules is calculated, and what is not.

import type { Covered } from '../calculator.js';

export const thermalCoverage: readonly Covered[] = [
  {
    clause: 'Thermal movement, dL = alpha L dT',
    does: 'movement of steel, stainless, copper, aluminum and zinc panels',
    function: 'thermalMovement, expansion, freeLength, celsiusDifference',
    cases: [
      'thermal movement',
      'differential movement, panel vs framing',
      'coefficient',
      'design temperature range',
    ],
    left_out: 'roof temperatures by color and climate: the range is entered',
    unconfirmed: 'expansion of stainless from memory',
  },
  {
    clause: 'IBC 1507.4.2, 1507.5.2; IRC R905.10.2, R905.4.2',
    does: 'least slope by panel family',
    function: 'leastSlope, slopeAllowed',
    cases: [
      'minimum slope table',
      'minimum slope check',
      'minimum roof slope by panel family',
      'minimum roof slope, metal shingles',
    ],
    left_out: 'soldered laps; greater slopes of listings, warranties and owners',
  },
  {
    clause: 'IBC 1507.4.4',
    does: 'fastener metals where the panel maker approves none',
    function: 'CODE_FASTENER_METALS',
    cases: ['fastener metal by roof metal'],
  },
  {
    clause: 'IBC 1507.1.1, 1507.4.3',
    does: 'nothing',
    function: 'none',
    left_out: 'underlayment and the material table',
  },
];
