// What of the wind chapters is calculated here, what is knowingly left out, and what has still to
// be seen in the standard; the coverage page is made from it.

import type { Covered } from '../calculator.js';

export const windCoverage: readonly Covered[] = [
  {
    clause: '7-10 Eq. 30.3-1; 7-16, 7-22 Eq. 26.10-1',
    does: 'velocity pressure at mean roof height to 60 ft',
    function: 'velocityPressure',
    cases: ['velocity-pressure', 'worked-example'],
    left_out: 'topographic factor from the hill (26.8): K_zt is entered; heights over 60 ft',
    unconfirmed: 'the elevation factor and its table are from memory',
  },
  {
    clause: '7-10 Table 30.3-1; 7-16 Table 26.10-1; 7-22 Table 26.10-1',
    does: 'exposure coefficient; equation to 7-16, printed table with linear interpolation in 7-22',
    function: 'exposureCoefficient',
    cases: ['terrain-constants', 'height-exposure-adjustment'],
    unconfirmed: 'the 7-22 table is from memory; its equation (2.41) is not used',
  },
  {
    clause: '26.13 (7-10: 26.11)',
    does: 'internal pressure coefficient, both signs',
    function: 'GCPI',
    left_out:
      'large-volume reduction for partially enclosed buildings; free roofs of open buildings',
  },
  {
    clause: '7-10 Eq. 30.4-1; 7-16, 7-22 Eq. 30.3-1; 30.2.2',
    does: 'pressure of every roof and wall zone, with the 16 psf minimum',
    function: 'windOnSurface',
    cases: ['wall-pressure-table', 'roof-pressure-table', 'worked-example'],
    left_out:
      'stepped, multispan gable, sawtooth and arched roofs; bottom surface of canopies; tornado',
  },
  {
    clause: '7-10 Fig. 30.4-1; 7-16, 7-22 Fig. 30.3-1',
    does: 'walls, zones 4 and 5',
    function: 'windOnSurface',
    cases: ['wall-pressure-table', 'GCp-curves'],
    left_out: 'the 0.9 on walls under roofs to 10 degrees is not taken (larger load)',
    unconfirmed: 'wording of the 0.9 note',
  },
  {
    clause: '7-10 Fig. 30.4-2A to 2C',
    does: 'flat, gable and hip roofs',
    function: 'coefficientsFor',
    cases: ['roof-pressure-table'],
    left_out: 'zone 3 as zone 2 for hips to 25 degrees is not taken (larger load)',
    unconfirmed: 'overhang curves and the hip note are from memory',
  },
  {
    clause: '7-16 Fig. 30.3-2A to 2D',
    does: 'flat and gable roofs',
    function: 'coefficientsFor',
    cases: ['GCp-curves', 'worked-example'],
    unconfirmed: 'overhang curves of 2C; the ends of 3e and 3r in 2B (the larger counts)',
  },
  {
    clause: '7-16 Fig. 30.3-2E to 2I',
    does: 'hip roofs, linear in h/B between 0.5 and 0.8',
    function: 'coefficientsFor',
    cases: ['GCp-curves'],
    unconfirmed: 'one reading; over 27 degrees unclear (the larger counts)',
  },
  {
    clause: '7-22 Fig. 30.3-2A to 2G',
    does: 'flat, gable and hip roofs; hips from 27 to 45 degrees between 2F and 2G',
    function: 'coefficientsFor',
    cases: ['GCp-curves', 'GCp-interpolation'],
  },
  {
    clause: '7-10 Fig. 30.4-5A, 5B; 7-16, 7-22 Fig. 30.3-5A, 5B',
    does: 'monoslope roofs over 3 to 30 degrees',
    function: 'coefficientsFor',
    cases: ['GCp-curves', 'worked-example'],
    unconfirmed: 'curves of 7-10 are from memory; overhangs to 7-16 as roof minus wall',
  },
  {
    clause: '7-10 30.10; 7-16 30.9; 7-22 30.7',
    does: 'overhangs: net curves, in 7-22 over 7 degrees roof zone minus wall',
    function: 'windOnSurface',
    unconfirmed: 'whether GC_pi counts in 7-22 (kept, larger)',
  },
  {
    clause: '7-10 30.9; 7-16 30.8; 7-22 30.6',
    does: 'parapet cases A and B beside low roofs; positive of zones 2, 3 behind it (7-16, 7-22)',
    function: 'parapetPressure',
    cases: ['worked-example'],
    left_out: 'parapets of roofs over 7 degrees; the permitted reduction of zone 3',
  },
  {
    clause: 'notes of the wall and roof figures',
    does: 'dimension a and the zones to scale in plan and elevation',
    function: 'zoneLayout',
    cases: ['dimension-a', 'zone-layout'],
    left_out: 'roofs that are not rectangular in plan; hips with unequal slopes',
    unconfirmed:
      'plans of 7-10 over 7 degrees, of 7-22 gable and hip, and of monoslope over 10 degrees',
  },
  {
    clause: '26.2, effective wind area',
    does: 'effective wind area of a panel and of a fastener',
    function: 'panelWindArea, fastenerWindArea',
  },
];
