// Cases of the further style rules.

import type { STYLE_ADVICE_RULES } from '../style-advice.js';
import type { RuleCases } from './rule-cases.js';
import { RIBBED, SHINGLE, SNAP_LOCK, STANDING_SEAM } from './samples.js';

const roof = { kind: 'roof' } as const;
const tested = { ...STANDING_SEAM, static_head_tested: true } as const;
const covered = { weathertightness_asked: true, warranty_least_slope_per_12: 0.5 } as const;

export const STYLE_ADVICE_CASES = {
  'STYLE-05': {
    passes: [{ ...covered, slope_per_12: 0.5 }],
    refuses: [{ ...covered, slope_per_12: 0.25 }],
    notApplicable: [
      { slope_per_12: 0.25, warranty_least_slope_per_12: 0.5 },
      { ...covered, weathertightness_asked: false, slope_per_12: 0.25 },
    ],
    unknown: [{ ...covered }, { weathertightness_asked: true, slope_per_12: 1 }],
  },
  'STYLE-06': {
    passes: [{ ...roof, profile: SHINGLE, slope_per_12: 3 }],
    refuses: [{ kind: 'mansard', profile: SHINGLE, slope_per_12: 2.5 }],
    notApplicable: [
      { ...roof, profile: RIBBED, slope_per_12: 1 },
      { kind: 'wall', profile: SHINGLE },
    ],
    unknown: [{ kind: 'roof' }, { profile: SHINGLE }, { ...roof, profile: SHINGLE }],
  },
  'STYLE-07': {
    passes: [{ ...roof, profile: SNAP_LOCK, slope_per_12: 3, open_framing: false }],
    refuses: [
      { ...roof, profile: SNAP_LOCK, slope_per_12: 2 },
      { ...roof, profile: SNAP_LOCK, slope_per_12: 4, open_framing: true },
    ],
    notApplicable: [
      { ...roof, profile: STANDING_SEAM, slope_per_12: 1 },
      { kind: 'wall', profile: SNAP_LOCK },
    ],
    unknown: [
      { kind: 'roof' },
      { profile: SNAP_LOCK },
      { ...roof, profile: SNAP_LOCK },
      { ...roof, profile: SNAP_LOCK, slope_per_12: 3 },
    ],
  },
  'STYLE-08': {
    passes: [{ ...roof, profile: tested, slope_per_12: 0.5 }],
    refuses: [
      { ...roof, profile: { ...tested, static_head_tested: false }, slope_per_12: 2.9 },
      { ...roof, profile: RIBBED, slope_per_12: 2 },
      { ...roof, profile: { ...RIBBED, static_head_tested: true }, slope_per_12: 2 },
    ],
    notApplicable: [
      { ...roof, profile: RIBBED, slope_per_12: 3 },
      { kind: 'wall', profile: RIBBED },
    ],
    unknown: [
      { kind: 'roof' },
      { profile: RIBBED },
      { ...roof, profile: RIBBED },
      { ...roof, profile: STANDING_SEAM, slope_per_12: 1 },
    ],
  },
  'STYLE-09': {
    passes: [{ profile: STANDING_SEAM, weathertightness_asked: true }],
    refuses: [{ profile: RIBBED, weathertightness_asked: true }],
    notApplicable: [{ profile: RIBBED, weathertightness_asked: false }, { profile: RIBBED }],
    unknown: [{ weathertightness_asked: true }],
  },
} satisfies Record<(typeof STYLE_ADVICE_RULES)[number]['id'], RuleCases>;
