// What of panel strength is calculated here, what is knowingly left out, and what has still to be
// seen in the standard; the coverage page is made from it.

import type { Covered } from '../calculator.js';

export const panelCoverage: readonly Covered[] = [
  {
    clause: 'gauge chart; 15 U.S.C. 206',
    does: 'thickness, weight and range by gauge in three tables',
    function: 'sheetThickness',
    unconfirmed: 'rows of 15 U.S.C. 206 from gauge 22 on are from memory',
  },
  {
    clause: 'ASTM A653, A792; AISI S100-16 A3.1',
    does: 'specified and design stresses; Grade 80 at 60 and 61.5 ksi',
    function: 'designStresses',
    left_out: 'R_b of multiple webs is calculated but not used; newer classes of Grade 80',
    unconfirmed: 'elongations and grades 37, 40 and 50 Class 4 are from memory',
  },
  {
    clause: 'AISI S100-16 A3.2, B7.1',
    does: 'design thickness from the least delivered',
    function: 'designThickness',
    unconfirmed: 'the 95 % rule is from memory',
  },
  {
    clause: 'geometry',
    does: 'arc-and-tangent corrugation, per foot',
    function: 'corrugation',
    left_out: 'effective width of the arcs',
  },
  {
    clause: 'AISI S100-16 Appendix 1, 1.1',
    does: 'uniformly compressed flats and webs under gradient',
    function: 'effectiveWidth, stiffenedGradient',
    left_out: 'holes; procedure II for deflection',
    unconfirmed: 'the rule for h_o/b_o over 4 is from memory',
  },
  {
    clause: 'AISI S100-16 Appendix 1, 1.2',
    does: 'flats with a free edge, uniform and under gradient',
    function: 'unstiffened',
    unconfirmed: 'coefficients of the tension branches are from memory',
  },
  {
    clause: 'AISI S100-16 Appendix 1, 1.3',
    does: 'flanges with a simple lip',
    function: 'lippedFlange',
    left_out: 'lips bent again; lips on inclined flanges steeper than 45 degrees',
  },
  {
    clause: 'AISI S100-16 Appendix 1, 1.4.1',
    does: 'flanges with ribs between the webs',
    function: 'ribbedFlange',
    left_out: 'ribs in a flange with a free edge (1.4.2): its flats count as separate plates',
    unconfirmed: 'equations from memory; no published result was found to test them',
  },
  {
    clause: 'AISI S100-16 F3.1, B4.1',
    does: 'bending both ways by first yield of the iterated effective section; width limits',
    function: 'bendingStrength',
    left_out: 'lateral-torsional and distortional buckling, inelastic reserve, flange curling',
    unconfirmed: 'service stress of 0.6 F_y for deflection is from memory',
  },
  {
    clause: 'AISI S100-16 F3.2, F4',
    does: 'direct strength from entered elastic buckling moments',
    function: 'directStrength',
    left_out: 'finding the elastic buckling moments',
  },
  {
    clause: 'AISI S100-16 G2.1; S100-24 G2.1',
    does: 'shear of flat webs, by edition',
    function: 'webShear',
    left_out: 'holes, stiffeners, tension field',
    unconfirmed: 'both curves second-hand; Omega_v 1.60 from memory',
  },
  {
    clause: 'AISI S100-16 G5, Table G5-5',
    does: 'web crippling of multiple-web deck',
    function: 'deckCrippling',
    left_out: 'tables of other shapes; holes',
    unconfirmed: 'table second-hand; R/t limit of interior cases not read (20 is taken)',
  },
  {
    clause: 'AISI S100-16 H2, H3',
    does: 'bending with shear and with web crippling over supports',
    function: 'spanLimits',
    left_out: 'the exemption of continuous decks from H3 is not taken (stricter)',
    unconfirmed: 'constants of H3 second-hand, its Omega 1.70 from memory',
  },
  {
    clause: 'three-moment equation',
    does: 'moments, reactions, deflection of 1 to 20 equal spans',
    function: 'beamCoefficients',
    left_out: 'unequal spans, partial and concentrated loads',
  },
  {
    clause: 'AISI S100-16',
    does: 'load table by gauge and span, both directions, strength and deflection apart',
    function: 'loadTable',
    left_out: 'uplift of standing seam: only tests count; attachment; concentrated loads',
  },
];
