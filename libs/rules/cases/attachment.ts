// Cases of the rules on how the panel is held.

import type { ATTACHMENT_RULES } from '../attachment.js';
import type { RuleCases } from './rule-cases.js';
import { RIBBED, SNAP_LOCK, STANDING_SEAM, zone } from './samples.js';

const long = { profile: SNAP_LOCK, longest_piece_ft: 40.5 } as const;

export const ATTACHMENT_CASES = {
  'GAUGE-17': {
    passes: [{ ...long, clip_kind: 'floating' }],
    refuses: [{ ...long, clip_kind: 'fixed' }],
    notApplicable: [
      { ...long, profile: RIBBED, clip_kind: 'fixed' },
      { ...long, longest_piece_ft: 40, clip_kind: 'fixed' },
    ],
    unknown: [{ longest_piece_ft: 50 }, { profile: SNAP_LOCK }, { ...long }],
  },
  'GAUGE-18': {
    passes: [{ clip_kind: 'floating', fixed_lines: 1 }],
    refuses: [
      { clip_kind: 'floating', fixed_lines: 2 },
      { clip_kind: 'floating', fixed_lines: 0 },
    ],
    notApplicable: [{ clip_kind: 'fixed', fixed_lines: 2 }],
    unknown: [{ fixed_lines: 1 }, { clip_kind: 'floating' }],
  },
  'GAUGE-20': {
    passes: [{ profile: STANDING_SEAM, zones: [zone('1', 0.5, 0.5)] }],
    refuses: [
      {
        profile: STANDING_SEAM,
        zones: [
          zone('1', 0.5, 0.5),
          { ...zone('2', 0.5, 0.5), calculated_only: true },
          { ...zone('3', 0.5, 0.5), calculated_only: true },
        ],
      },
    ],
    notApplicable: [
      { profile: RIBBED, zones: [{ ...zone('2', 0.5, 0.5), calculated_only: true }] },
    ],
    unknown: [{ profile: STANDING_SEAM }, { zones: [] }],
  },
} satisfies Record<(typeof ATTACHMENT_RULES)[number]['id'], RuleCases>;
