// Every document once. A citation is a document and the place in it; an unknown document does not
// compile. "Common practice" is a source of its own kind: a fact of the trade without a page.

export const SOURCES = {
  'asce-7-10': {
    title: 'Minimum Design Loads for Buildings and Other Structures',
    edition: 'ASCE/SEI 7-10',
  },
  'asce-7-16': {
    title: 'Minimum Design Loads and Associated Criteria for Buildings and Other Structures',
    edition: 'ASCE/SEI 7-16',
  },
  'asce-7-22': {
    title: 'Minimum Design Loads and Associated Criteria for Buildings and Other Structures',
    edition: 'ASCE/SEI 7-22',
  },
  'aisi-s100-16': {
    title: 'North American Specification for the Design of Cold-Formed Steel Structural Members',
    edition: 'AISI S100-16',
  },
  'aisi-s100-24': {
    title: 'North American Specification for the Design of Cold-Formed Steel Structural Members',
    edition: 'AISI S100-24',
  },
  'nds-2018': {
    title: 'National Design Specification for Wood Construction',
    edition: 'ANSI/AWC NDS-2018',
  },
  'ibc-2018': { title: 'International Building Code', edition: 'IBC 2018' },
  'ibc-2021': { title: 'International Building Code', edition: 'IBC 2021' },
  'irc-2018': { title: 'International Residential Code', edition: 'IRC 2018' },
  'irc-2021': { title: 'International Residential Code', edition: 'IRC 2021' },
  'astm-a653': {
    title: 'Steel Sheet, Zinc-Coated (Galvanized) by the Hot-Dip Process',
    edition: 'ASTM A653/A653M-15',
  },
  'astm-a792': {
    title: 'Steel Sheet, 55 % Aluminum-Zinc Alloy-Coated by the Hot-Dip Process',
    edition: 'ASTM A792/A792M',
  },
  'astm-d2244': {
    title:
      'Calculation of Color Tolerances and Color Differences from Instrumentally Measured Color Coordinates',
    edition: 'ASTM D2244-15a',
  },
  'astm-d4214': {
    title: 'Evaluating the Degree of Chalking of Exterior Paint Films',
    edition: 'ASTM D4214',
  },
  'aama-2603': {
    title:
      'Voluntary Specification, Performance Requirements for Pigmented Organic Coatings on Aluminum Extrusions and Panels',
    edition: 'AAMA 2603-13',
  },
  'aama-2604': {
    title:
      'Voluntary Specification, Performance Requirements for High Performance Organic Coatings on Aluminum Extrusions and Panels',
    edition: 'AAMA 2604-13',
  },
  'aama-2605': {
    title:
      'Voluntary Specification, Performance Requirements for Superior Performing Organic Coatings on Aluminum Extrusions and Panels',
    edition: 'AAMA 2605-13',
  },
  'ufgs-07412': {
    title: 'Unified Facilities Guide Specification, Non-Structural Metal Roofing',
    edition: 'UFGS 07412',
  },
  'roofing-manual': {
    title: 'Roofing Manual: Metal Panel and SPF Roof Systems, thermal movement examples',
    edition: 'NRCA 2016 (by a trade article)',
  },
  'ufgs-07413': {
    title: 'Unified Facilities Guide Specification, Metal Roof and Wall Panels',
    edition: 'UFGS 07413',
  },
  'ufc-3-110-03': { title: 'Unified Facilities Criteria, Roofing', edition: 'UFC 3-110-03 (2006)' },
  'mca-95-1060': {
    title: 'Technical bulletin on oil canning',
    edition: 'Metal Construction Association 95-1060',
  },
  'mca-condensation': {
    title: 'White paper on condensation in metal roofs',
    edition: 'Metal Construction Association (2008)',
  },
  'mca-lumber': {
    title: 'Technical bulletin on metal panels and treated lumber',
    edition: 'Metal Construction Association',
  },
  'usc-15-206': {
    title: 'Standard gauge for sheet and plate iron and steel',
    edition: '15 U.S.C. 206',
  },
  'cfr-16-701': {
    title: 'Disclosure of Written Consumer Product Warranty Terms and Conditions',
    edition: '16 CFR 701',
  },
  'cfr-16-700': {
    title: 'Interpretations of the consumer product warranty act',
    edition: '16 CFR 700',
  },
  'cfr-16-702': { title: 'Pre-sale availability of written warranty terms', edition: '16 CFR 702' },
  'usc-15-2303': { title: 'Designation of written warranties', edition: '15 U.S.C. 2303, 2304' },
  'iso-9223': {
    title: 'Corrosion of metals and alloys: corrosivity of atmospheres',
    edition: 'ISO 9223:2012',
  },
  'iso-9224': {
    title: 'Corrosion of metals and alloys: guiding values for the corrosivity categories',
    edition: 'ISO 9224:2012',
  },
  'iso-14713-1': {
    title: 'Zinc coatings: guidelines for the protection against corrosion of iron and steel',
    edition: 'ISO 14713-1',
  },
  'ul-2218': { title: 'Impact Resistance of Prepared Roof Covering Materials', edition: 'UL 2218' },
  'metal-expansion': {
    title: 'Thermal expansion of roof metals',
    edition: 'trade article (second-hand)',
  },
  'hail-free-fall': {
    title: 'Hail size, free-fall velocity and free-fall energy',
    edition: 'public weather table, copy of 2017',
  },
  'hail-1960': {
    title: 'Hail and its effects on buildings: terminal velocities',
    edition: 'Laurie 1960 (from memory)',
  },
  'hail-dents': {
    title: 'Hail impact on steel sheets of different thickness and yield',
    edition: 'Shock and Vibration 2019, article 6175206',
  },
  torro: {
    title: 'Hailstorm intensity scale',
    edition: 'TORRO scale, as reproduced in a weather-data guide',
  },
  'nws-hail': {
    title: 'Names of hail sizes for spotters',
    edition: 'National Weather Service (from memory)',
  },
  'cie-lab': {
    title: 'International Lighting Vocabulary, CIELAB color space',
    edition: 'CIE e-ILV 17-23-076',
  },
  ciede2000: {
    title: 'The CIEDE2000 Color-Difference Formula: Implementation Notes',
    edition: 'Sharma, Wu, Dalal 2005',
  },
  'hunter-lab': {
    title: 'Hunter L, a, b color scale and illuminant factors',
    edition: 'Hunter 1966 square-root form, as tabulated in an open color library',
  },
  'gauge-chart': {
    title:
      "Manufacturers' Standard Gage and Galvanized Sheet Gage: thickness, tolerance and weight chart",
    edition: 'Sheet gauge chart at 41.82 psf per inch (second-hand)',
  },
  'asme-b18-6': {
    title: 'Wood, tapping and machine screws: nominal diameters',
    edition: 'ASME B18.6 series (from memory)',
  },
  mechanics: { title: 'Geometry and statics, derived in the code', edition: 'Mechanics' },
  practice: { title: 'Common practice', edition: 'no published source' },
} as const satisfies Record<string, { title: string; edition: string }>;

export type SourceKey = keyof typeof SOURCES;

export interface Citation {
  readonly source: SourceKey;
  /** Clause, table, equation or page; empty only for common practice. */
  readonly where: string;
}

export function cite(source: SourceKey, where: string): Citation {
  return { source, where };
}

/** The editions of ASCE/SEI 7 that loads are calculated by; recorded with every result. */
export type AsceEdition = '7-10' | '7-16' | '7-22';
export const ASCE_EDITIONS = ['7-10', '7-16', '7-22'] as const;

export const asce = (edition: AsceEdition, where: string): Citation =>
  cite(`asce-${edition}`, where);

export const COMMON_PRACTICE: Citation = { source: 'practice', where: '' };

/** "ASCE/SEI 7-16, Eq. 26.10-1" or "common practice". */
export function citationText(citation: Citation): string {
  if (citation.source === 'practice') return 'common practice';
  return `${SOURCES[citation.source].edition}, ${citation.where}`;
}
