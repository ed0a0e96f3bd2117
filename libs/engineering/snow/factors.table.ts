// Table values of the snow chapter. ASCE/SEI 7-16 Tables 1.5-2, 7.3-1, 7.3-2; ASCE/SEI 7-22 Tables
// 7.3-1, 7.3-2, 7.3-3 and the least loads p_m,max: read second-hand in open transcriptions that
// agree. ASCE/SEI 7-10 Tables 7-2, 7-3: the same exposure numbers, from memory. IBC 2021 Table
// 1608.2: read in a state copy.

export type RiskCategory = 'I' | 'II' | 'III' | 'IV';
export type Terrain = 'B' | 'C' | 'D' | 'above-tree-line' | 'alaska-no-trees';
export type RoofExposure = 'fully' | 'partially' | 'sheltered';
export type ThermalCondition =
  | 'heated'
  | 'just-above-freezing'
  | 'cold-ventilated'
  | 'unheated'
  | 'open-air'
  | 'freezer'
  | 'greenhouse';

/** Importance factor of snow, 7-10 and 7-16. 7-22 has none: pg is mapped by risk category. */
export const SNOW_IMPORTANCE: { readonly [category in RiskCategory]: number } = {
  I: 0.8,
  II: 1.0,
  III: 1.1,
  IV: 1.2,
};

/** Exposure factor C_e; undefined: the table says "not applicable". */
export const EXPOSURE_FACTOR: {
  readonly [terrain in Terrain]: { readonly [exposure in RoofExposure]: number | undefined };
} = {
  B: { fully: 0.9, partially: 1.0, sheltered: 1.2 },
  C: { fully: 0.9, partially: 1.0, sheltered: 1.1 },
  D: { fully: 0.8, partially: 0.9, sheltered: 1.0 },
  'above-tree-line': { fully: 0.7, partially: 0.8, sheltered: undefined },
  'alaska-no-trees': { fully: 0.7, partially: 0.8, sheltered: undefined },
};

/** Thermal factor C_t, 7-10 and 7-16. Cold ventilated counts where R is over 25, else 1.0. */
export const THERMAL_FACTOR_716: { readonly [condition in ThermalCondition]: number } = {
  heated: 1.0,
  'just-above-freezing': 1.1,
  'cold-ventilated': 1.1,
  unheated: 1.2,
  'open-air': 1.2,
  freezer: 1.3,
  greenhouse: 0.85,
};

/** Thermal factor C_t, 7-22 Table 7.3-2; heated structures go by Table 7.3-3. */
export const THERMAL_FACTOR_722: {
  readonly [condition in Exclude<ThermalCondition, 'heated'>]: number;
} = {
  'just-above-freezing': 1.2,
  'cold-ventilated': 1.2,
  unheated: 1.2,
  'open-air': 1.2,
  freezer: 1.3,
  greenhouse: 0.85,
};

/** 7-22 Table 7.3-3: C_t by R of the roof (rows) and p_g in psf (columns). */
export const THERMAL_BY_R = {
  R: [20, 30, 40, 50],
  pg_psf: [10, 20, 30, 40, 50, 60, 70],
  Ct: [
    [1.2, 1.11, 1.05, 1.01, 1.0, 1.0, 1.0],
    [1.2, 1.17, 1.14, 1.13, 1.12, 1.11, 1.1],
    [1.2, 1.19, 1.17, 1.16, 1.16, 1.15, 1.15],
    [1.2, 1.2, 1.19, 1.19, 1.19, 1.18, 1.18],
  ],
  overR50: 1.2,
} as const;

/** p_m,max in psf, 7-22, strength level. */
export const LEAST_LOAD_MAX_722: { readonly [category in RiskCategory]: number } = {
  I: 25,
  II: 30,
  III: 35,
  IV: 40,
};

/** Knees of the slope factor in degrees: warm, middle and cold roofs. C_s is 0 from 70 degrees. */
export const SLOPE_KNEES_DEG = {
  other: { warm: 30, middle: 37.5, cold: 45 },
  slippery: { warm: 5, middle: 10, cold: 15 },
} as const;

/** IBC 2021 Table 1608.2: ground snow in Alaska, psf, 50-year service level; not for 7-22. */
export const ALASKA_GROUND_SNOW_PSF: { readonly [place: string]: number } = {
  Adak: 30,
  Anchorage: 50,
  Angoon: 70,
  Barrow: 25,
  Bethel: 40,
  Cordova: 100,
  Fairbanks: 60,
  Homer: 40,
  Juneau: 60,
  Kenai: 70,
  Kodiak: 30,
  Nome: 70,
  Palmer: 50,
  Petersburg: 150,
  Seward: 50,
  Sitka: 50,
  Talkeetna: 120,
  Valdez: 160,
  Whittier: 300,
  Yakutat: 150,
};
