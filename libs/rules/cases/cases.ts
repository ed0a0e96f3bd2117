// The cases of every rule in one place; a rule without cases does not compile.

import type { RuleId } from '../rules.js';
import { APPEARANCE_CASES } from './appearance.js';
import { ATTACHMENT_CASES } from './attachment.js';
import { CLAIM_CASES } from './claim.js';
import { COATING_MASS_CASES } from './coating-mass.js';
import { COATING_CASES } from './coating.js';
import { CONTACT_CASES } from './contact.js';
import { DELIVERY_CASES } from './delivery.js';
import { GAUGE_GUIDANCE_CASES } from './gauge-guidance.js';
import { GAUGE_POLICY_CASES } from './gauge-policy.js';
import { GAUGE_VALUE_CASES } from './gauge-value.js';
import { GAUGE_CASES } from './gauge.js';
import { HAZARD_CASES } from './hazards.js';
import { ORDER_PAPER_CASES } from './order-papers.js';
import { ORDER_CASES } from './order.js';
import { RECOVER_CASES } from './recover.js';
import type { RuleCases } from './rule-cases.js';
import { SIGN_OFF_CASES } from './sign-off.js';
import { SNOW_RETENTION_CASES } from './snow-retention.js';
import { STYLE_ADVICE_CASES } from './style-advice.js';
import { STYLE_CASES } from './style.js';
import { SUBSTRATE_CASES } from './substrate.js';
import { WARRANTY_CASES } from './warranty.js';

export const CASES: Readonly<Record<RuleId, RuleCases>> = {
  ...STYLE_CASES,
  ...STYLE_ADVICE_CASES,
  ...COATING_CASES,
  ...COATING_MASS_CASES,
  ...CONTACT_CASES,
  ...HAZARD_CASES,
  ...SNOW_RETENTION_CASES,
  ...SUBSTRATE_CASES,
  ...RECOVER_CASES,
  ...GAUGE_CASES,
  ...GAUGE_POLICY_CASES,
  ...GAUGE_GUIDANCE_CASES,
  ...GAUGE_VALUE_CASES,
  ...APPEARANCE_CASES,
  ...ATTACHMENT_CASES,
  ...SIGN_OFF_CASES,
  ...ORDER_CASES,
  ...ORDER_PAPER_CASES,
  ...DELIVERY_CASES,
  ...WARRANTY_CASES,
  ...CLAIM_CASES,
} satisfies Record<RuleId, RuleCases>;
