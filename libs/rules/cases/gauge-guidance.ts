// Cases of the guidance about thickness by place.

import type { GAUGE_GUIDANCE_RULES } from '../gauge-guidance.js';
import type { RuleCases } from './rule-cases.js';
import { ALUMINUM_032, G22, G24, G26, G29 } from './samples.js';

const deck = { open_framing: false } as const;
const calm = { wind_speed_mph: 115, ground_snow_psf: 20 } as const;

export const GAUGE_GUIDANCE_CASES = {
  'GAUGE-06': {
    passes: [
      { ...deck, option: G24 },
      { ...deck, option: G26 },
    ],
    refuses: [
      { ...deck, option: G22 },
      { ...deck, option: G29 },
    ],
    notApplicable: [
      { open_framing: true, option: G22 },
      { ...deck, option: ALUMINUM_032 },
    ],
    unknown: [{ ...deck }, { option: G24 }],
    withSettings: [
      { settings: { useful: '22' }, facts: { ...deck, option: G22 }, outcome: 'pass' },
      { settings: { useful: '22, 26' }, facts: { ...deck, option: G24 }, outcome: 'fail' },
    ],
  },
  'GAUGE-07': {
    passes: [
      { design_stone_in: 1.75, option: G24 },
      { design_stone_in: 2, option: G22 },
    ],
    refuses: [{ design_stone_in: 1.75, option: G26 }],
    notApplicable: [
      { design_stone_in: 1.5, option: G26 },
      { design_stone_in: 2, option: ALUMINUM_032 },
    ],
    unknown: [{ option: G26 }, { design_stone_in: 2 }],
  },
  'GAUGE-08': {
    passes: [
      { wind_speed_mph: 130, option: G24 },
      { ground_snow_psf: 40, option: G22 },
    ],
    refuses: [
      { wind_speed_mph: 130, option: G26 },
      { ground_snow_psf: 40, option: G26 },
      { wind_speed_mph: 150, ground_snow_psf: 60, option: G29 },
    ],
    notApplicable: [
      { ...calm, option: G26 },
      { wind_speed_mph: 150, option: ALUMINUM_032 },
    ],
    unknown: [
      { wind_speed_mph: 150 },
      { wind_speed_mph: 115, option: G26 },
      { ground_snow_psf: 20, option: G26 },
    ],
  },
  'GAUGE-09': {
    passes: [
      { priorities: ['value', 'long-life'], option: G24 },
      { priorities: ['best-appearance'], option: G22 },
    ],
    refuses: [
      { priorities: ['long-life', 'best-appearance'], option: G26 },
      { priorities: ['value', 'best-appearance'], option: G26 },
    ],
    notApplicable: [
      { priorities: ['value'], option: G26 },
      { priorities: ['long-life'], option: ALUMINUM_032 },
    ],
    unknown: [{ option: G26 }, { priorities: ['long-life'] }],
  },
} satisfies Record<(typeof GAUGE_GUIDANCE_RULES)[number]['id'], RuleCases>;
