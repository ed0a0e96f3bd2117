// The panel profiles of the demonstration's catalogue, invented from beginning to end: no maker rolls
// them, and none of these numbers may be used for a building.

import { textTable } from './text-table.js';

/**
 * `lies`: on a deck only, or over open framing too. `slope` by the listing and `warranty` by the
 * supplier's warranty, rise in 12. Widths, rib and flat in inches; `more` is what the sheet
 * has over its cover width, in inches; longest piece in feet; `price` multiplies that of the sheet.
 */
export const PROFILES = textTable(
  [
    'id',
    'name',
    'seam',
    'lies',
    'slope',
    'warranty',
    'widths',
    'rib',
    'flat',
    'look',
    'longest',
    'more',
    'price',
  ],
  `
  snap-16 | Snap-lock seam 1-3/4, 16 in | snap-lock | deck | 3 | 3 | 16 | 1.75 | 14 | striated | 60 | 4.5 | 1.28
  snap-12 | Snap-lock seam 1-3/4, 12 in | snap-lock | deck | 3 | 3 | 12 | 1.75 | 10 | plain | 60 | 4.5 | 1.40
  snap-18 | Snap-lock seam 1-3/4, 18 in | snap-lock | deck | 3 | 3 | 18 | 1.75 | 16 | striated | 60 | 4.5 | 1.24
  snap-low | Snap-lock seam 1-1/2 | snap-lock | deck | 3 | 4 | 12 15 17 | 1.5 | 10 | striated | 55 | 4 | 1.22
  snap-span | Snap-lock seam 2, 18 in | snap-lock | open | 2 | 3 | 18 | 2 | 16 | striated | 80 | 5.5 | 1.30
  nail-16 | Nail-flange seam 1, 16 in | snap-lock | deck | 3 | 3 | 16 | 1 | 14.5 | striated | 45 | 3 | 1.20
  nail-12 | Nail-flange seam 1, 12 in | snap-lock | deck | 3 | 3 | 12 | 1 | 10.5 | plain | 45 | 3 | 1.27
  nail-15 | Nail-flange seam 1-1/2, 15 in | snap-lock | deck | 3 | 4 | 15 | 1.5 | 13 | striated | 45 | 4 | 1.23
  mech-24 | Mechanical seam 2, 24 in | mechanical | open | 0.5 | 1 | 24 | 2 | 22 | striated | 100 | 5.5 | 1.24
  mech-18 | Mechanical seam 2, 18 in | mechanical | open | 0.5 | 0.5 | 18 | 2 | 16 | striated | 100 | 5.5 | 1.34
  mech-16 | Double seam 2-1/2, 16 in | mechanical | open | 0.25 | 0.5 | 16 | 2.5 | 13.5 | plain | 100 | 6.5 | 1.46
  mech-low | Mechanical seam 1 | mechanical | deck | 2 | 3 | 12 16 | 1 | 10.5 | plain | 50 | 3.5 | 1.36
  batten-18 | Batten seam 1-1/2, 18 in | mechanical | deck | 3 | 3 | 18 | 1.5 | 16 | plain | 40 | 6 | 1.62
  flush-12 | Flush wall 1, 12 in | snap-lock | open | 3 | 3 | 12 | 1 | 11 | plain | 30 | 3.5 | 1.32
  flush-8 | Flush wall 1, 8 in | snap-lock | open | 3 | 3 | 8 | 1 | 7 | plain | 30 | 3.5 | 1.48
  flush-16 | Reveal wall 1-1/2, 16 in | snap-lock | open | 3 | 3 | 16 | 1.5 | 14 | striated | 30 | 4.5 | 1.36
  soffit-12 | Soffit 1/2, 12 in | snap-lock | open | 3 | 3 | 12 | 0.5 | 5.5 | plain | 24 | 2 | 1.15
  corrugated-34 | Corrugated 7/8, 34 in | screw-down | open | 3 | 3 | 34 | 0.875 | 2.67 | plain | 40 | 7.5 | 1.08
  corrugated-26 | Corrugated 1/2, 26 in | screw-down | open | 3 | 3 | 26 | 0.5 | 2.67 | plain | 30 | 4 | 1.00
  corrugated-deep | Corrugated 1-1/2, 32 in | screw-down | open | 2 | 3 | 32 | 1.5 | 5.33 | plain | 40 | 10 | 1.22
  rib-36 | Ribbed 3/4, 36 in | screw-down | open | 3 | 3 | 36 | 0.75 | 7 | plain | 45 | 5.5 | 1.00
  rib-low-36 | Low rib 5/8, 36 in | screw-down | open | 3 | 3 | 36 | 0.625 | 9.5 | plain | 45 | 4.5 | 0.96
  liner-36 | Liner rib 1/2, 36 in | screw-down | open | 3 | 3 | 36 | 0.5 | 6 | plain | 40 | 4 | 0.92
  deep-36 | Deep rib 1-1/4, 36 in | screw-down | open | 1 | 3 | 36 | 1.25 | 8.5 | plain | 45 | 7 | 1.06
  box-36 | Box rib 1-1/2, 36 in | screw-down | open | 1 | 2 | 36 | 1.5 | 3.5 | plain | 45 | 12 | 1.20
  deep-24 | Deep rib 3, 24 in | screw-down | open | 0.5 | 1 | 24 | 3 | 5 | plain | 50 | 12 | 1.44
  shingle-12 | Metal shingle, 12 in courses | snap-lock | deck | 3 | 3 | 12 | 0.5 | 12 | plain | 4 | 3 | 1.75
  shingle-lozenge | Metal shingle, lozenge, 14 in | snap-lock | deck | 3 | 4 | 14 | 0.25 | 14 | plain | 2 | 3 | 1.95
`,
);

/** The family by what the id begins with. */
export const FAMILY_OF: Readonly<Record<string, string>> = {
  snap: 'standing-seam',
  nail: 'standing-seam',
  mech: 'standing-seam',
  batten: 'standing-seam',
  flush: 'flush-wall',
  soffit: 'flush-wall',
  corrugated: 'corrugated',
  rib: 'ribbed',
  liner: 'ribbed',
  deep: 'deep-rib',
  box: 'deep-rib',
  shingle: 'metal-shingle',
};
