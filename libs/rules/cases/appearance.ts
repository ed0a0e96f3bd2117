// Cases of the rules on hail class, oil canning and labels.

import type { APPEARANCE_RULES } from '../appearance.js';
import type { RuleCases } from './rule-cases.js';
import { ALUMINUM_032, G20, G24, G26, G29, RIBBED, STANDING_SEAM } from './samples.js';

const class4 = {
  design_stone_in: 1.75,
  assembly_hail_class: 4,
  open_framing: false,
  dent_exclusion_shown: true,
} as const;
const seam = { profile: STANDING_SEAM, metal: 'steel' } as const;
const plain = { ...STANDING_SEAM, striated: false, flat_width_in: 16.5 } as const;
const steel = { metal: 'steel' } as const;

export const APPEARANCE_CASES = {
  'GAUGE-15': {
    passes: [class4, { ...class4, design_stone_in: undefined, class_4_asked: true }],
    refuses: [
      { ...class4, assembly_hail_class: 3 },
      { ...class4, assembly_hail_class: 0 },
      { ...class4, open_framing: true },
      { ...class4, dent_exclusion_shown: false },
      { ...class4, design_stone_in: 1, class_4_asked: true, assembly_hail_class: 2 },
    ],
    notApplicable: [{ ...class4, design_stone_in: 1.74, assembly_hail_class: 0 }],
    unknown: [
      {},
      { class_4_asked: false },
      { ...class4, assembly_hail_class: undefined },
      { ...class4, open_framing: undefined },
      { ...class4, dent_exclusion_shown: undefined },
    ],
  },
  'GAUGE-16': {
    passes: [
      { ...seam, option: G24 },
      { ...seam, profile: { ...plain, flat_width_in: 16 }, option: G24 },
      { ...seam, profile: plain, option: G26, oil_canning_disclosed: true },
      { ...seam, metal: 'aluminum', option: ALUMINUM_032 },
      { ...seam, metal: 'copper', option: { ...ALUMINUM_032, thickness_in: 0.0216 } },
    ],
    refuses: [
      { ...seam, option: G26 },
      { ...seam, profile: plain, option: G24, oil_canning_disclosed: false },
      { ...seam, profile: plain, option: G29 },
      { ...seam, metal: 'aluminum', option: { ...ALUMINUM_032, thickness_in: 0.031 } },
    ],
    notApplicable: [{ ...seam, profile: RIBBED, option: G29 }],
    unknown: [{ metal: 'steel', option: G24 }, { profile: plain, option: G24 }, { ...seam }],
  },
  'GAUGE-19': {
    passes: [
      { ...steel, option: G24 },
      { ...steel, option: { ...G24, thickness_in: 0.0236 } },
      { ...steel, option: { ...G24, thickness_in: 0.0276 } },
      { ...steel, option: G20 },
      { ...steel, option: { ...G20, gauge: '22', thickness_in: 0.03125 } },
      { ...steel, option: G26 },
      { ...steel, option: { ...G26, gauge: '28', thickness_in: 0.0157 } },
      { ...steel, option: G29 },
    ],
    refuses: [
      { ...steel, option: { ...G24, thickness_in: 0.0235 } },
      { ...steel, option: { ...G24, thickness_in: 0.0277 } },
      { ...steel, option: { ...G26, thickness_in: 0.0239 } },
      { ...steel, option: ALUMINUM_032 },
    ],
    notApplicable: [{ metal: 'aluminum', option: ALUMINUM_032 }],
    unknown: [{ option: G24 }, { ...steel }],
  },
} satisfies Record<(typeof APPEARANCE_RULES)[number]['id'], RuleCases>;
