// What the demonstration's panels bear: tested assemblies and load charts, invented from beginning to
// end. No laboratory saw them, and none of these numbers may be used for a building.

import { textTable } from './text-table.js';

/**
 * One row a report. `tested` gives the attachment spacing along the panel, in inches, and the
 * allowable uplift, psf, of 24 gauge steel at it; every other sheet that is made was tested at the
 * same spacings. On a deck `deck` is the least thickness in inches; on purlins the clips stand on
 * each support. `hail` is the class of the assembly in steel of 24 gauge and heavier.
 */
export const TESTS = textTable(
  ['first', 'profile', 'metal', 'fastener', 'on', 'deck', 'expires', 'hail', 'tested', 'inward'],
  `
  1001 | snap-16 | steel | clip-fixed | plywood osb | 0.469 | 2029-06-30 | 4 | 24:41 12:75.5 6:112.5 | 120
  1031 | snap-16 | aluminum | clip-stainless | plywood osb | 0.469 | 2029-06-30 | | 24:41 12:75.5 6:112.5 | 120
  1051 | snap-12 | steel | clip-fixed | plywood osb | 0.469 | 2028-12-31 | 4 | 24:54 12:98 6:142 | 120
  1071 | snap-12 | aluminum | clip-stainless | plywood osb | 0.469 | 2028-12-31 | | 24:54 12:98 6:142 | 120
  1101 | snap-18 | steel | clip-fixed | plywood osb | 0.469 | 2030-03-31 | | 24:36 12:66 6:98 | 110
  1121 | snap-low | steel | clip-fixed | plywood osb | 0.469 | 2028-09-30 | 4 | 24:50 12:88 6:128 | 110
  1201 | snap-span | steel | clip-floating | purlins | | 2030-06-30 | | 60:34 48:46 30:74 | 48
  1221 | nail-16 | steel | screw-pancake-10 | plywood osb | 0.469 | 2027-03-31 | | 12:45 6:67.5 | 120
  1241 | nail-12 | steel | screw-pancake-10 | plywood osb | 0.469 | 2027-01-15 | | 12:58 6:86 | 120
  1261 | nail-15 | steel | screw-pancake-10 | plywood osb | 0.469 | 2026-06-30 | | 12:48 6:71 | 120
  1301 | mech-24 | steel | clip-floating | purlins | | 2030-01-31 | | 60:42 48:56 30:88 | 55
  1321 | mech-18 | steel | clip-floating | purlins | | 2030-01-31 | | 60:55 48:72 30:112 | 64
  1341 | mech-18 | aluminum | clip-stainless | purlins | | 2030-01-31 | | 60:55 48:72 30:112 | 64
  1361 | mech-16 | steel | clip-floating | purlins | | 2031-01-31 | | 60:66 48:86 30:135 | 78
  1381 | mech-18 | steel | clip-floating | plywood osb steel-deck | 0.0295 | 2029-10-31 | 4 | 24:72 12:118 | 130
  1401 | mech-low | steel | clip-fixed | plywood osb | 0.469 | 2029-03-31 | | 24:46 12:82 6:118 | 110
  1421 | mech-low | aluminum | clip-stainless | plywood osb | 0.469 | 2029-03-31 | | 24:46 12:82 6:118 | 110
  1441 | mech-low | copper | clip-copper | plywood | 0.594 | 2029-03-31 | | 12:82 6:118 | 110
  1501 | batten-18 | steel | clip-fixed | plywood tight-boards | 0.594 | 2028-05-31 | | 18:52 9:90 | 110
  1521 | batten-18 | aluminum | clip-stainless | plywood tight-boards | 0.594 | 2028-05-31 | | 18:52 9:90 | 110
  1541 | batten-18 | copper | clip-copper | plywood tight-boards | 0.594 | 2025-11-30 | | 18:52 9:90 | 110
  1601 | flush-12 | steel | screw-pancake-10 | plywood osb | 0.469 | 2029-08-31 | | 24:48 12:84 | 90
  1611 | flush-12 | aluminum | screw-stainless-10 | plywood osb | 0.469 | 2029-08-31 | | 24:48 12:84 | 90
  1621 | flush-8 | steel | screw-pancake-10 | plywood osb | 0.469 | 2029-08-31 | | 24:66 12:112 | 90
  1641 | flush-16 | steel | screw-pancake-10 | plywood osb | 0.469 | 2029-08-31 | | 24:40 12:70 | 90
  1651 | flush-16 | aluminum | screw-stainless-10 | plywood osb | 0.469 | 2029-08-31 | | 24:40 12:70 | 90
  1661 | soffit-12 | steel | screw-pancake-10 | plywood osb | 0.469 | 2028-02-28 | | 24:38 12:64 | 60
  1681 | soffit-12 | aluminum | screw-stainless-10 | plywood osb | 0.469 | 2028-02-28 | | 24:38 12:64 | 60
  1701 | shingle-12 | steel | screw-pancake-10 | plywood osb | 0.469 | 2028-11-30 | 4 | 12:62 6:96 | 100
  1721 | shingle-lozenge | steel | screw-pancake-10 | plywood | 0.594 | 2028-11-30 | | 14:54 7:88 | 100
  1741 | shingle-lozenge | aluminum | screw-stainless-10 | plywood | 0.594 | 2028-11-30 | | 14:54 7:88 | 100
  1761 | shingle-lozenge | copper | clip-copper | plywood | 0.594 | 2028-11-30 | | 14:54 7:88 | 100
`,
);

/**
 * One row a profile: what shapes its charts. Allowable load in a single span, psf, is
 * `inward` or `outward` × thickness^1.15 × yield / span²; the load at L/180 is `deflection` ×
 * thickness × stiffness / span³ (inches, ksi). Spans in inches: `from` to `to`, 6 apart.
 */
export const CHARTS = textTable(
  ['profile', 'inward', 'outward', 'deflection', 'from', 'to'],
  `
  rib-36 | 152670 | 140920 | 105494000 | 18 | 66
  rib-low-36 | 121000 | 112500 | 71400000 | 18 | 54
  liner-36 | 84000 | 79500 | 39800000 | 18 | 48
  deep-36 | 258390 | 240760 | 303718000 | 24 | 96
  box-36 | 421000 | 398000 | 598000000 | 24 | 108
  deep-24 | 1042000 | 965000 | 2930000000 | 48 | 168
  corrugated-34 | 211420 | 211420 | 130826000 | 24 | 84
  corrugated-26 | 101000 | 101000 | 36900000 | 18 | 54
  corrugated-deep | 394000 | 394000 | 461000000 | 24 | 108
  flush-12 | 217220 | 193760 | 185612000 | 24 | 84
  flush-8 | 263000 | 236000 | 231000000 | 24 | 84
  flush-16 | 251000 | 219000 | 297000000 | 24 | 96
`,
);
