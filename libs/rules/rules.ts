// Every rule in force, stage by stage. An id never returns with another meaning.

import { COATING_RULES } from './coating.js';
import { ruleBook } from './edition.js';
import { GAUGE_GUIDANCE_RULES } from './gauge-guidance.js';
import { GAUGE_POLICY_RULES } from './gauge-policy.js';
import { GAUGE_VALUE_RULES } from './gauge-value.js';
import { GAUGE_RULES } from './gauge.js';
import { HAZARD_RULES } from './hazards.js';
import { SIGN_OFF_RULES } from './sign-off.js';
import { STYLE_RULES } from './style.js';
import { SUBSTRATE_RULES } from './substrate.js';

export const ALL_RULES = [
  ...STYLE_RULES,
  ...COATING_RULES,
  ...HAZARD_RULES,
  ...SUBSTRATE_RULES,
  ...GAUGE_RULES,
  ...GAUGE_POLICY_RULES,
  ...GAUGE_GUIDANCE_RULES,
  ...GAUGE_VALUE_RULES,
  ...SIGN_OFF_RULES,
] as const;

export type RuleId = (typeof ALL_RULES)[number]['id'];

/** Every version that any edition names. */
export const RULE_BOOK = ruleBook(ALL_RULES);
