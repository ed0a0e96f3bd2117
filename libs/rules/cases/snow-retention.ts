// Cases of the rules on snow that slides.

import type { SNOW_RETENTION_RULES } from '../snow-retention.js';
import type { RuleCases } from './rule-cases.js';
import { RIBBED, STANDING_SEAM } from './samples.js';

const snowy = {
  kind: 'roof',
  ground_snow_psf: 20,
  slope_per_12: 3,
  over_doors_or_walks: false,
} as const;
const clamped = { snow_retention: 'clamped' } as const;

export const SNOW_RETENTION_CASES = {
  'HAZ-05': {
    passes: [{ ...snowy, ...clamped }],
    refuses: [
      { ...snowy, snow_retention: 'none' },
      { ...snowy, slope_per_12: 1, over_doors_or_walks: true, snow_retention: 'none' },
    ],
    notApplicable: [
      { ...snowy, kind: 'wall' },
      { ...snowy, ground_snow_psf: 19, snow_retention: 'none' },
      { ...snowy, slope_per_12: 2.9, snow_retention: 'none' },
    ],
    unknown: [
      { ground_snow_psf: 20 },
      { kind: 'roof' },
      { ...snowy, slope_per_12: undefined },
      { ...snowy, over_doors_or_walks: undefined },
      { ...snowy },
    ],
  },
  'HAZ-06': {
    passes: [{ ...clamped, profile: STANDING_SEAM }],
    refuses: [{ snow_retention: 'pierced', profile: STANDING_SEAM }],
    notApplicable: [
      { profile: STANDING_SEAM },
      { snow_retention: 'none', profile: STANDING_SEAM },
      { snow_retention: 'pierced', profile: RIBBED },
    ],
    unknown: [{ ...clamped }],
  },
  'HAZ-07': {
    passes: [{ ...clamped, unobstructed_slope_factor_used: false }],
    refuses: [{ snow_retention: 'pierced', unobstructed_slope_factor_used: true }],
    notApplicable: [
      { unobstructed_slope_factor_used: true },
      { snow_retention: 'none', unobstructed_slope_factor_used: true },
    ],
    unknown: [{ ...clamped }],
  },
  'HAZ-08': {
    passes: [{ ...clamped, snow_retention_utilization: 1 }],
    refuses: [
      { ...clamped, snow_retention_utilization: 1.0001 },
      { ...clamped, snow_retention_utilization: 1.2 },
    ],
    notApplicable: [{ snow_retention_utilization: 2 }, { snow_retention: 'none' }],
    unknown: [{ ...clamped }],
  },
} satisfies Record<(typeof SNOW_RETENTION_RULES)[number]['id'], RuleCases>;
