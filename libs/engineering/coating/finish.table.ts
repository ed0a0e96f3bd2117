// What finish specifications ask of a factory finish. AAMA 2603, 2604 and 2605 (-13), attribute
// table of two comparison sheets and a finisher's table (second-hand); they are specifications for
// aluminum, so a steel panel meets them only by its supplier's certificate. Guide specification
// UFGS 07412, 2.2.1.3, 5000 h of accelerated weathering (read). Chalk by ASTM D4214, method A: 10
// is no chalk, lower is worse. None of the sheets read names the scale of the color change; texts
// of the time mean Hunter units (from memory), so the scale stays an open question.
// Exposure in South Florida is a test and never a warranty term.

import { cite, type Citation } from '../sources.js';

export interface FinishLimits {
  readonly cite: Citation;
  readonly for: 'aluminum' | 'steel and aluminum';
  readonly southFloridaYears?: number;
  readonly acceleratedHours?: number;
  /** Greatest color change; 'slight' where the document gives no number. */
  readonly fadeMost: number | 'slight';
  /** Least chalk rating; whites apart where the document says so. */
  readonly chalkLeast: number | 'slight';
  readonly chalkLeastWhite?: number;
  readonly glossRetentionLeastPct?: number;
  readonly erosionMostPct?: number;
  readonly dryFilmLeastMil?: number;
  readonly humidityHours?: number;
  readonly saltSprayHours?: number;
  readonly cyclicCorrosionHours?: number;
}

export const FINISH_LIMITS = {
  'AAMA 2603': {
    cite: cite('aama-2603', 'attribute table'),
    for: 'aluminum',
    southFloridaYears: 1,
    fadeMost: 'slight',
    chalkLeast: 'slight',
    dryFilmLeastMil: 0.8,
    humidityHours: 1500,
    saltSprayHours: 1500,
  },
  'AAMA 2604': {
    cite: cite('aama-2604', 'attribute table'),
    for: 'aluminum',
    southFloridaYears: 5,
    fadeMost: 5,
    chalkLeast: 8,
    glossRetentionLeastPct: 30,
    erosionMostPct: 10,
    dryFilmLeastMil: 1.2,
    humidityHours: 3000,
    saltSprayHours: 3000,
  },
  'AAMA 2605': {
    cite: cite('aama-2605', 'attribute table; salt spray was 4000 h in older editions'),
    for: 'aluminum',
    southFloridaYears: 10,
    fadeMost: 5,
    chalkLeast: 8,
    chalkLeastWhite: 6,
    glossRetentionLeastPct: 50,
    erosionMostPct: 10,
    dryFilmLeastMil: 1.2,
    humidityHours: 4000,
    cyclicCorrosionHours: 2000,
  },
  'guide specification, standard gloss': {
    cite: cite('ufgs-07412', '2.2.1.3'),
    for: 'steel and aluminum',
    acceleratedHours: 5000,
    fadeMost: 5,
    chalkLeast: 8,
  },
  'guide specification, low gloss': {
    cite: cite('ufgs-07412', '2.2.1.3'),
    for: 'steel and aluminum',
    acceleratedHours: 5000,
    fadeMost: 7,
    chalkLeast: 6,
  },
} as const satisfies Record<string, FinishLimits>;
