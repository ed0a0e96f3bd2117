// Cases of the house-policy rules of the gauge stage.

import type { GAUGE_POLICY_RULES } from '../gauge-policy.js';
import type { RuleCases } from './rule-cases.js';
import {
  ALUMINUM_032,
  G20,
  G22,
  G24,
  G26,
  G29,
  gap,
  RIBBED,
  STANDING_SEAM,
  zone,
} from './samples.js';

const open = { open_framing: true } as const;
const bare = { paint_system: 'bare', metallic_coating: 'AZ55' } as const;

export const GAUGE_POLICY_CASES = {
  'GAUGE-04': {
    passes: [
      { profile: STANDING_SEAM, option: G24 },
      { profile: STANDING_SEAM, option: G22 },
    ],
    refuses: [
      { profile: STANDING_SEAM, option: G26 },
      { profile: STANDING_SEAM, option: G20 },
    ],
    notApplicable: [
      { profile: RIBBED, option: G26 },
      { profile: STANDING_SEAM, option: ALUMINUM_032 },
    ],
    unknown: [{ option: G24 }, { profile: STANDING_SEAM }],
    withSettings: [
      {
        settings: { usual: '26' },
        facts: { profile: STANDING_SEAM, option: G26 },
        outcome: 'pass',
      },
    ],
  },
  'GAUGE-05': {
    passes: [{ kind: 'roof', option: G26 }],
    refuses: [
      { kind: 'roof', option: G29 },
      { kind: 'wall', option: G29 },
    ],
    notApplicable: [
      { kind: 'roof', option: ALUMINUM_032 },
      { kind: 'liner', option: G29 },
      { kind: 'soffit', option: G29 },
      { kind: 'interior', option: G29 },
    ],
    unknown: [{ kind: 'roof' }, { option: G29 }],
    withSettings: [
      {
        settings: { not_stocked: true },
        facts: { kind: 'wall', option: G29 },
        outcome: 'fail',
        severity: 'refuse',
      },
      {
        settings: { not_stocked: true },
        facts: { kind: 'liner', option: G29 },
        outcome: 'not-applicable',
      },
    ],
  },
  'GAUGE-11': {
    passes: [
      { ...open, option: G24 },
      { ...open, option: G22, support_spacing_in: 60 },
      { ...open, option: G20, sign_off_asked: 'engineer' },
      { ...open, option: G26, zones: [zone('1', 1, 3)] },
    ],
    refuses: [
      { ...open, option: G22, support_spacing_in: 59 },
      { ...open, option: G29, zones: [zone('1', 0.5, 0.1), zone('2', 1.01, 0.1)] },
      { ...open, option: G26, zones: [zone('1', 0.5, 0.1), gap('2', 'no chart row')] },
    ],
    notApplicable: [
      { open_framing: false, option: G22 },
      { ...open, option: ALUMINUM_032 },
    ],
    unknown: [
      { option: G24 },
      { ...open },
      { ...open, option: G22 },
      { ...open, option: G26 },
      { ...open, option: G26, zones: [] },
    ],
  },
  'GAUGE-12': {
    passes: [
      { ...bare, option: G22 },
      { ...bare, metallic_coating: 'G90', option: G20 },
    ],
    refuses: [
      { ...bare, option: G24 },
      { ...bare, metallic_coating: 'G90', option: G26 },
    ],
    notApplicable: [
      { ...bare, paint_system: 'PVDF', option: G24 },
      { ...bare, metallic_coating: 'G60', option: G24 },
      { ...bare, option: ALUMINUM_032 },
    ],
    unknown: [{ ...bare }, { option: G22 }, { paint_system: 'bare', option: G24 }],
  },
} satisfies Record<(typeof GAUGE_POLICY_RULES)[number]['id'], RuleCases>;
