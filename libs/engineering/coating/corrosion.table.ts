// Corrosivity categories and time exponents. Zinc bands and exponents, steel exponents: ISO
// 9223:2012 and 9224:2012 as coded in a public corrosion model; steel bands in um from a public
// reproduction; steel mass bands and the copper and aluminum exponents as transcribed by a
// research institute (ISO 9223 Table 2, ISO 9224 Table 3). All second-hand: the standards
// themselves were not read. Upper bounds are inclusive, lower ones exclusive.

export const CATEGORIES = ['C1', 'C2', 'C3', 'C4', 'C5', 'CX'] as const;
export type Corrosivity = (typeof CATEGORIES)[number];

/** Upper bounds of first-year loss, in the order of CATEGORIES. */
export const UPPER_RATES = {
  'zinc um/y': [0.1, 0.7, 2.1, 4.2, 8.4, 25],
  'steel um/y': [1.3, 25, 50, 80, 200, 700],
  'steel g/m2y': [10, 200, 400, 650, 1500, 5500],
} as const;
export type RateScale = keyof typeof UPPER_RATES;

export type Exponent = 'B1' | 'B2';
export type WeatheringMetal = 'steel' | 'zinc' | 'copper' | 'aluminum';

/** b of D = r t^b: B1 is the average, B2 the conservative one. ISO 9224:2012. */
export const TIME_EXPONENTS: Readonly<Record<WeatheringMetal, Readonly<Record<Exponent, number>>>> =
  {
    steel: { B1: 0.523, B2: 0.575 },
    zinc: { B1: 0.813, B2: 0.873 },
    copper: { B1: 0.667, B2: 0.726 },
    aluminum: { B1: 0.728, B2: 0.807 },
  };
