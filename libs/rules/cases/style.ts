// Cases of the style rules.

import type { STYLE_RULES } from '../style.js';
import type { RuleCases } from './rule-cases.js';
import { RIBBED, SHINGLE, SNAP_LOCK, STANDING_SEAM } from './samples.js';

const roof = { kind: 'roof' } as const;

export const STYLE_CASES = {
  'STYLE-01': {
    passes: [
      { ...roof, slope_per_12: 3, profile: RIBBED },
      { ...roof, slope_per_12: 0.5, profile: RIBBED, lap_sealant: true },
      { kind: 'canopy', slope_per_12: 0.25, profile: STANDING_SEAM },
      { kind: 'mansard', slope_per_12: 20, profile: RIBBED, lap_sealant: false },
    ],
    refuses: [
      { ...roof, slope_per_12: 2.99, profile: RIBBED, lap_sealant: false },
      { ...roof, slope_per_12: 0.49, profile: RIBBED, lap_sealant: true },
      { ...roof, slope_per_12: 0.4, profile: RIBBED },
      { ...roof, slope_per_12: 0.2, profile: STANDING_SEAM },
      {
        ...roof,
        slope_per_12: 2,
        profile: { ...STANDING_SEAM, family: 'flush-wall' },
        lap_sealant: false,
      },
    ],
    notApplicable: [
      { kind: 'wall', profile: RIBBED },
      { ...roof, slope_per_12: 2, profile: SHINGLE },
    ],
    unknown: [
      { kind: 'roof' },
      { profile: RIBBED },
      { ...roof, profile: RIBBED },
      { ...roof, slope_per_12: 2, profile: RIBBED },
    ],
  },
  'STYLE-02': {
    passes: [{ ...roof, slope_per_12: 3, profile: SNAP_LOCK }],
    refuses: [{ ...roof, slope_per_12: 2.9, profile: SNAP_LOCK }],
    notApplicable: [{ kind: 'wall', profile: SNAP_LOCK }],
    unknown: [{ kind: 'roof' }, { profile: RIBBED }, { ...roof, profile: SNAP_LOCK }],
  },
  'STYLE-03': {
    passes: [
      { profile: STANDING_SEAM },
      { profile: STANDING_SEAM, open_framing: true },
      { profile: SNAP_LOCK, open_framing: false },
    ],
    refuses: [{ profile: SNAP_LOCK, open_framing: true }],
    unknown: [{ open_framing: true }, { profile: SNAP_LOCK }],
  },
  'STYLE-04': {
    passes: [{ profile: RIBBED }],
    refuses: [{ profile: { ...RIBBED, listed: false } }],
    unknown: [{}],
  },
} satisfies Record<(typeof STYLE_RULES)[number]['id'], RuleCases>;
