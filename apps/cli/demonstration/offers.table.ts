// What is made of the demonstration's profiles, in which sheet, coating and colors, at which price and
// term. Invented from beginning to end.

import { textTable } from './text-table.js';

/**
 * Thickness is the decimal base metal in inches; a gauge is a label beside it, for steel alone.
 * `yield` in ksi and `stiff` (share of steel's) only shape the invented charts; `uplift` is the
 * share of 24 gauge steel that the invented tests hold.
 */
export const SHEETS = textTable(
  ['id', 'metal', 'gauge', 'thickness', 'grade', 'yield', 'stiff', 'uplift'],
  `
  29 | steel | 29 | 0.0135 | SS 80 | 60 | 1 | 0.62
  26 | steel | 26 | 0.0179 | SS 80 | 60 | 1 | 0.80
  24 | steel | 24 | 0.0239 | SS 50 Class 1 | 50 | 1 | 1
  22 | steel | 22 | 0.0299 | SS 50 Class 1 | 50 | 1 | 1.17
  20 | steel | 20 | 0.0359 | SS 50 Class 1 | 50 | 1 | 1.33
  al-032 | aluminum | | 0.032 | 3105-H14 | 22 | 0.34 | 0.78
  al-040 | aluminum | | 0.040 | 3105-H14 | 22 | 0.34 | 0.94
  al-050 | aluminum | | 0.050 | 3105-H14 | 22 | 0.34 | 1.12
  cu-16 | copper | | 0.0216 | H00 | 20 | 0.57 | 0.62
  cu-20 | copper | | 0.0270 | H00 | 20 | 0.57 | 0.74
`,
);

/** Dollars a square of flat sheet by paint system; the profile's own factor comes on top. */
export const PRICES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  PVDF: { '26': 168, '24': 214, '22': 263, '20': 312, 'al-032': 268, 'al-040': 326, 'al-050': 392 },
  SMP: { '29': 104, '26': 131, '24': 169 },
  polyester: { '29': 88, '26': 112 },
  bare: {
    '29': 82,
    '26': 108,
    '24': 152,
    '22': 188,
    '20': 224,
    'al-032': 214,
    'al-040': 262,
    'cu-16': 1160,
    'cu-20': 1430,
  },
};
export const UPCHARGES: Readonly<Record<string, number>> = {
  metallic: 38,
  textured: 30,
  print: 46,
};

export const GROUPS: Readonly<Record<string, readonly string[]>> = {
  pale: ['white', 'light', 'earth-tone'],
  painted: ['white', 'light', 'earth-tone', 'bright', 'dark'],
  special: ['metallic', 'textured'],
  print: ['print'],
  liner: ['white', 'light'],
  mill: ['mill'],
};

/** `days` of lead time; a special run has a least order of 30 squares. */
export const OFFERS = textTable(
  ['profiles', 'sheets', 'coating', 'system', 'groups', 'status', 'days'],
  `
  snap-16 snap-12 snap-18 snap-low nail-16 nail-12 nail-15 | 24 | AZ50 | PVDF | painted | stock | 10
  mech-24 mech-18 mech-16 mech-low snap-span batten-18 | 24 | AZ50 | PVDF | painted | stock | 10
  snap-16 snap-12 snap-18 mech-24 mech-18 nail-16 | 24 | AZ50 | PVDF | special | special-run | 35
  snap-16 snap-12 snap-18 snap-low nail-16 | 22 | AZ50 | PVDF | painted | special-run | 35
  mech-24 mech-18 mech-16 snap-span batten-18 | 22 | AZ50 | PVDF | painted | special-run | 35
  mech-18 mech-16 | 20 | AZ50 | PVDF | pale | special-run | 42
  snap-16 snap-low nail-16 nail-12 nail-15 | 26 | AZ50 | SMP | painted | stock | 10
  snap-low nail-12 nail-15 | 24 | AZ50 | SMP | pale | special-run | 21
  nail-16 nail-12 snap-low | 26 | AZ50 | PVDF | pale | special-run | 35
  mech-24 mech-18 | 24 22 | AZ55 | bare | mill | stock | 7
  snap-16 snap-12 mech-18 mech-low batten-18 | al-032 | none | PVDF | painted | stock | 14
  snap-16 snap-12 mech-18 batten-18 | al-040 | none | PVDF | painted | special-run | 35
  batten-18 mech-low | cu-16 cu-20 | none | bare | mill | special-run | 42
  flush-12 flush-8 flush-16 | 24 | AZ50 | PVDF | painted | stock | 12
  flush-12 flush-8 flush-16 | 22 | AZ50 | PVDF | painted | special-run | 35
  flush-12 flush-16 | al-040 al-050 | none | PVDF | painted | special-run | 35
  soffit-12 | 26 24 | AZ50 | SMP | pale | stock | 7
  soffit-12 | al-032 | none | PVDF | painted | stock | 10
  rib-36 deep-36 | 29 | AZ50 | SMP | pale | stock | 5
  rib-36 deep-36 | 26 | AZ50 | SMP | painted | stock | 5
  rib-36 deep-36 | 24 | AZ50 | SMP | pale | stock | 7
  rib-36 deep-36 | 26 24 | AZ50 | PVDF | painted | special-run | 28
  deep-36 | 22 | AZ50 | PVDF | pale | special-run | 35
  rib-low-36 | 29 26 | AZ50 | SMP | painted | stock | 5
  rib-low-36 | 24 | AZ50 | SMP | pale | special-run | 21
  liner-36 | 29 26 | G60 | polyester | liner | stock | 5
  box-36 | 24 22 | AZ50 | PVDF | painted | stock | 14
  box-36 | 20 | AZ50 | PVDF | pale | special-run | 42
  box-36 | al-040 al-050 | none | PVDF | painted | special-run | 42
  deep-24 | 22 20 | AZ55 | bare | mill | stock | 10
  deep-24 | 22 20 | AZ50 | PVDF | pale | special-run | 42
  corrugated-34 | 26 | AZ50 | SMP | pale | stock | 7
  corrugated-34 | 24 | AZ50 | PVDF | painted | special-run | 28
  corrugated-34 | 22 20 | G90 | bare | mill | stock | 7
  corrugated-26 | 29 26 | G90 | bare | mill | stock | 5
  corrugated-26 | 26 24 | AZ50 | SMP | pale | stock | 7
  corrugated-26 | 24 | AZ50 | PVDF | print | special-run | 35
  corrugated-deep | 24 22 | AZ50 | PVDF | painted | special-run | 28
  corrugated-deep | al-032 al-040 | none | bare | mill | special-run | 28
  shingle-12 | 26 24 | AZ50 | SMP | painted | stock | 12
  shingle-12 | 24 | AZ50 | PVDF | painted | special-run | 28
  shingle-lozenge | 24 | AZ50 | PVDF | painted | special-run | 35
  shingle-lozenge | al-032 | none | PVDF | painted | stock | 18
  shingle-lozenge | cu-16 | none | bare | mill | special-run | 42
`,
);

/**
 * The invented supplier's terms: `years` of the finish, fade limit in `scale`, least chalk rating, and
 * the least distance from salt water in feet. Bare metal has no finish term.
 */
export const TERMS = textTable(
  ['metal', 'coatings', 'system', 'groups', 'years', 'fade', 'scale', 'chalk', 'water'],
  `
  steel | AZ50 | PVDF | white light earth-tone dark textured | 35 | 5 | Hunter | 8 | 1500
  steel | AZ50 | PVDF | bright metallic print | 25 | 5 | Hunter | 8 | 1500
  steel | AZ50 | SMP | white light earth-tone dark textured | 25 | 7 | Hunter | 6 | 1500
  steel | AZ50 | SMP | bright metallic | 15 | 7 | Hunter | 6 | 1500
  steel | G60 | polyester | white light | 10 | 9 | not named | 5 | 5000
  aluminum | none | PVDF | white light earth-tone dark textured | 30 | 5 | Hunter | 8 | 300
  aluminum | none | PVDF | bright metallic | 20 | 5 | Hunter | 8 | 300
  steel | AZ55 G90 | bare | mill | 0 | | | | 2500
  aluminum | none | bare | mill | 0 | | | | 500
  copper | none | bare | mill | 0 | | | | 0
`,
);
