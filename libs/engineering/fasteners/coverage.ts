// What of attachment is calculated here, what is knowingly left out, and what has still to be seen
// in the standard; the coverage page is made from it.

import type { Covered } from '../calculator.js';

export const fastenersCoverage: readonly Covered[] = [
  {
    clause: 'AISI S100-16 J4.3.1; S100-24 J4.3.1',
    does: 'screw shear by tilting and bearing',
    function: 'screwShear',
    cases: ['screw-shear', 'screw-diameter'],
    left_out: "the screw's own shear, edge distance, combined shear and pull-over",
    unconfirmed: 'Omega of S100-24 second-hand',
  },
  {
    clause: 'AISI S100-16 J4.4.1; S100-24 J4.4.1',
    does: 'screw pull-out, by edition',
    function: 'pullOut',
    left_out: "the screw's own tension",
    unconfirmed: 'the S100-24 thickness factor and Omega second-hand; diameter range from memory',
  },
  {
    clause: 'AISI S100-16 J4.4.2; S100-24 J4.4.2',
    does: 'screw pull-over, by edition',
    function: 'pullOver',
    cases: ['screw-pull-over'],
    left_out: 'domed washers, eccentric connections',
    unconfirmed: 'the S100-24 factor and Omega second-hand; 0.75 in limit from memory',
  },
  {
    clause: 'NDS-2018 12.2',
    does: 'withdrawal of lags, wood screws and smooth nails from side grain',
    function: 'withdrawal, woodWithdrawal',
    cases: ['wood-withdrawal'],
    left_out: 'end grain, wet service, temperature, ring-shank nails, head pull-through',
    unconfirmed: 'ranges for wood screws and nails, species and duration tables from memory',
  },
  {
    clause: 'tributary area',
    does: 'force on a fastener, utilization, spacing needed',
    function: 'attachmentCheck, spacingNeeded',
    left_out: 'clips: capacity only by entered test, never calculated',
  },
];
