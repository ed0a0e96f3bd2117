// The cases of every rule in one place; a rule without cases does not compile.

import type { RuleId } from '../rules.js';
import { COATING_CASES } from './coating.js';
import { GAUGE_GUIDANCE_CASES } from './gauge-guidance.js';
import { GAUGE_POLICY_CASES } from './gauge-policy.js';
import { GAUGE_VALUE_CASES } from './gauge-value.js';
import { GAUGE_CASES } from './gauge.js';
import { HAZARD_CASES } from './hazards.js';
import type { RuleCases } from './rule-cases.js';
import { SIGN_OFF_CASES } from './sign-off.js';
import { STYLE_CASES } from './style.js';
import { SUBSTRATE_CASES } from './substrate.js';

export const CASES: Readonly<Record<RuleId, RuleCases>> = {
  ...STYLE_CASES,
  ...COATING_CASES,
  ...HAZARD_CASES,
  ...SUBSTRATE_CASES,
  ...GAUGE_CASES,
  ...GAUGE_POLICY_CASES,
  ...GAUGE_GUIDANCE_CASES,
  ...GAUGE_VALUE_CASES,
  ...SIGN_OFF_CASES,
} satisfies Record<RuleId, RuleCases>;
