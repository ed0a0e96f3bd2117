// What color and coating cover, clause by clause, for the coverage page.

import type { Covered } from '../calculator.js';

export const colorCoverage: readonly Covered[] = [
  {
    clause: 'CIE e-ILV 17-23-076',
    does: 'XYZ to CIELAB and back, LCh, dE*ab',
    function: 'xyzToCielab, cielabToXyz, cielabToLch, lchToCielab, labDistance',
    cases: ['XYZ to CIELAB', 'CIELAB to LCh(ab)', 'same colour change on three scales'],
    unconfirmed: 'white points of the 10-degree observer and of F2: from an open color library',
  },
  {
    clause: 'Hunter L, a, b (square-root form)',
    does: 'XYZ to Hunter and back, dE_H; C at 2 degrees by the trade’s short form',
    function: 'xyzToHunter, hunterToXyz, hunterScale, labDistance',
    cases: [
      'XYZ to Hunter L,a,b (1958/1966 square-root form)',
      'XYZ to Hunter L,a,b with K computed from the white',
      'Hunter chromaticity coefficients Ka, Kb',
      'Hunter L,a,b to XYZ',
      'Hunter L,a,b simplified form (illuminant C, 2-degree)',
      'same colour change on three scales',
    ],
    unconfirmed: 'the rule Ka = 175 sqrt(Xn/98.043), Kb = 70 sqrt(Zn/118.115): from memory',
  },
  {
    clause: 'Sharma, Wu, Dalal 2005, Eq. 2 to 22',
    does: 'CIEDE2000',
    function: 'ciede2000',
    cases: [
      'colour difference CIEDE2000 (kL=kC=kH=1)',
      'colour difference CIEDE2000, very large chroma',
      'colour difference CIEDE2000, very large chroma, mean hue past 360',
      'colour difference CIEDE2000',
      'same colour change on three scales',
    ],
    left_out: 'k factors other than 1',
  },
];

export const coatingCoverage: readonly Covered[] = [
  {
    clause: 'ASTM D2244-15a 5.1, 5.2; ASTM D4214',
    does: 'color change and chalk against a term, in the scale the term names',
    function: 'fadeAgainstTerm, chalkAgainstTerm',
    cases: ['typical film warranty thresholds, upper tier'],
    left_out: 'gloss, dirt and erosion; averaging several readings',
  },
  {
    clause: 'ASTM A653/A653M-15 Table 1, 8.1.3',
    does: 'zinc coating mass and thickness by designation',
    function: 'coatingMass',
    cases: [
      'zinc coating mass, inch-pound designation',
      'zinc coating mass, SI designation',
      'zinc thickness per side from coating designation',
      'coating mass unit conversion',
    ],
    left_out: 'G01 and Z001 (no minimum), zinc-iron alloy, one-side suffix forms',
  },
  {
    clause: 'ASTM A792/A792M Table 1',
    does: '55 % Al-Zn coating mass and thickness by designation',
    function: 'coatingMass',
    cases: ['55% Al-Zn coating mass', '55% Al-Zn coating mass, SI', '55% Al-Zn thickness per side'],
    left_out: 'designations lighter than AZ50 and over AZ60; Table X1.1',
    unconfirmed: 'density 3.75 g/cm3: from memory',
  },
  {
    clause: 'ISO 9223:2012 Table 2, Eq. 1, Eq. 2',
    does: 'first-year loss of zinc and steel and its category',
    function: 'firstYearZinc, firstYearSteel, corrosivity, corrosivityBand',
    cases: [
      'first-year zinc corrosion band',
      'first-year carbon steel band',
      'first-year carbon steel mass loss band',
      'zinc category at a bound',
      'dose-response first-year corrosion',
    ],
    left_out: 'copper and aluminum dose-response; any rate for 55 % Al-Zn',
    unconfirmed: 'read as coded in public models, not in the standard',
  },
  {
    clause: 'ISO 9224:2012 Eq. 1, Eq. 3, Table 3',
    does: 'loss after years; years until a zinc coating is used up',
    function: 'lossAfter, zincLifeYears, zincLifeRange',
    cases: [
      'ISO 9224 time factor t^b',
      'zinc loss after t years',
      "years to consume the zinc at a category's upper rate",
      'life to first maintenance of zinc',
    ],
    left_out: 'sheltered exposure and other alloys',
    unconfirmed: 'read as coded in public models, not in the standard',
  },
  {
    clause: 'AAMA 2603, 2604, 2605 (-13); UFGS 07412 2.2.1.3',
    does: 'what a finish specification asks',
    function: 'FINISH_LIMITS',
    cases: [
      'organic finish on aluminium',
      'factory finish after 5000 h accelerated weathering',
      'factory finish after accelerated weathering, low gloss',
    ],
    left_out: 'adhesion, hardness, chemical resistance; the scale of the color change',
    unconfirmed: 'AAMA from comparison sheets (second-hand)',
  },
  {
    clause: 'IBC 2018 1507.4.4; trade bulletins',
    does: 'materials that must not meet; fastener metal by roof metal',
    function: 'incompatibilities, fastenerSuits',
    left_out: 'galvanic potentials; life of washers',
    unconfirmed: 'rows marked common practice have no published source',
  },
  {
    clause: '15 USC 2303, 2304; 16 CFR 700.7, 701.3',
    does: 'title of a written warranty; when terms must be disclosed',
    function: 'warrantyTitle, unmetFullWarrantyTests, titleRequired, disclosureRuleApplies',
    cases: ['written warranty title', 'disclosure rule threshold'],
    left_out: 'state law; whether a roof is a consumer product is for counsel',
  },
];
