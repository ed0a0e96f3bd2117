// What of the snow chapter is calculated, what was knowingly left out, what is not yet confirmed.

import type { Covered } from '../calculator.js';

export const snowCoverage: readonly Covered[] = [
  {
    clause: 'ASCE/SEI 7, 7.2',
    does: 'ground snow is entered with its basis; IBC 2021 Table 1608.2 for Alaska is a table',
    function: 'readSnowRoof, ALASKA_GROUND_SNOW_PSF',
    left_out: 'maps, the 7-22 hazard data and its Alaska table',
  },
  {
    clause: 'ASCE/SEI 7, 7.3',
    does: 'flat roof load, exposure, thermal and importance factors',
    function: 'flatRoofSnow, exposureFactor, thermalFactor716, thermalFactor722, snowImportance',
    left_out: 'the 7-22 exemptions at p_g up to 10 psf, which would only lower loads',
    unconfirmed: 'C_e of 7-10 from memory; the rest read second-hand',
  },
  {
    clause: 'ASCE/SEI 7, minimum for low slopes',
    does: 'p_m as a case of its own under 15 degrees',
    function: 'leastRoofSnow, leastSnowApplies',
    left_out: 'curved roofs',
  },
  {
    clause: 'ASCE/SEI 7, 7.4',
    does: 'slope factor for warm, middle and cold roofs, slippery and other',
    function: 'slopeFactor',
    left_out: 'curved, folded, sawtooth and barrel roofs',
    unconfirmed: '7-22: two readings for warm slippery roofs; the larger load stands',
  },
  {
    clause: 'ASCE/SEI 7, 7.4.5 (7.4.4 in 7-22)',
    does: 'ice on overhangs of warm roofs',
    function: 'eaveIce',
    unconfirmed: '2 p_f from memory',
  },
  {
    clause: 'ASCE/SEI 7, 7.5',
    does: 'nothing',
    function: 'none',
    left_out: 'partial loading of continuous members; a monoslope or flatter panel is not exempt',
  },
  {
    clause: 'ASCE/SEI 7, 7.6.1',
    does: 'unbalanced load on gable and hip roofs, and the narrow roof with single rafters',
    function: 'unbalancedSnow, unbalancedNarrow, unbalancedRequired',
    unconfirmed: 'that the surcharge is cut at the eave, from memory',
  },
  {
    clause: 'ASCE/SEI 7, drift height',
    does: 'h_d of 7-10, 7-16 (short fetch) and 7-22 (W2)',
    function: 'driftHeight, ridgeDriftHeight',
  },
  {
    clause: 'ASCE/SEI 7, 7.7',
    does: 'leeward and windward drift at a step; drift from a separate higher building',
    function: 'driftOnRoof, driftFromNeighbor',
    left_out: 'intersecting drifts: do not add, take the larger',
    unconfirmed:
      '7-22 windward cap at the clear height; cut or taper past the lower roof; ' +
      'separate buildings in 7-10 and 7-16',
  },
  {
    clause: 'ASCE/SEI 7, 7.8',
    does: 'drift at parapets and projections',
    function: 'driftOnRoof, driftAtProjection',
  },
  {
    clause: 'ASCE/SEI 7, 7.9',
    does: 'sliding snow on a lower roof',
    function: 'slidingSnow, slides',
    unconfirmed: 'a lower roof under 15 ft: the whole load stands, the larger',
  },
  {
    clause: 'ASCE/SEI 7, 7.10',
    does: 'rain on snow',
    function: 'rainOnSnow',
    left_out: 'ponding',
  },
  {
    clause: 'statics',
    does: 'drag on snow retention',
    function: 'retentionDrag',
    left_out: 'friction; what a clamp or seam holds comes from its test report',
  },
];
