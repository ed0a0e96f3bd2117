// Every rule in force, stage by stage. An id never returns with another meaning.

import { APPEARANCE_RULES } from './appearance.js';
import { ATTACHMENT_RULES } from './attachment.js';
import { CLAIM_RULES } from './claim.js';
import { COATING_MASS_RULES } from './coating-mass.js';
import { COATING_RULES } from './coating.js';
import { CONTACT_RULES } from './contact.js';
import { DELIVERY_RULES } from './delivery.js';
import { ruleBook } from './edition.js';
import { GAUGE_GUIDANCE_RULES } from './gauge-guidance.js';
import { GAUGE_POLICY_RULES } from './gauge-policy.js';
import { GAUGE_VALUE_RULES } from './gauge-value.js';
import { GAUGE_RULES } from './gauge.js';
import { HAZARD_RULES } from './hazards.js';
import { ORDER_PAPER_RULES } from './order-papers.js';
import { ORDER_RULES } from './order.js';
import { RECOVER_RULES } from './recover.js';
import { SIGN_OFF_RULES } from './sign-off.js';
import { SNOW_RETENTION_RULES } from './snow-retention.js';
import { STYLE_ADVICE_RULES } from './style-advice.js';
import { STYLE_RULES } from './style.js';
import { SUBSTRATE_RULES } from './substrate.js';
import { WARRANTY_RULES } from './warranty.js';

/** What an office starts with: the way to the gauge, and the gates of the job. */
export const STARTING_RULES = [
  ...STYLE_RULES,
  ...COATING_RULES,
  ...HAZARD_RULES,
  ...SUBSTRATE_RULES,
  ...GAUGE_RULES,
  ...GAUGE_POLICY_RULES,
  ...GAUGE_GUIDANCE_RULES,
  ...GAUGE_VALUE_RULES,
  ...SIGN_OFF_RULES,
  ...ORDER_RULES,
  ...ORDER_PAPER_RULES,
  ...DELIVERY_RULES,
  ...WARRANTY_RULES,
  ...CLAIM_RULES,
] as const;

/** The full rulebook: what the starting rules leave to the person who chooses. */
export const FURTHER_RULES = [
  ...STYLE_ADVICE_RULES,
  ...COATING_MASS_RULES,
  ...CONTACT_RULES,
  ...SNOW_RETENTION_RULES,
  ...RECOVER_RULES,
  ...APPEARANCE_RULES,
  ...ATTACHMENT_RULES,
] as const;

export const ALL_RULES = [...STARTING_RULES, ...FURTHER_RULES] as const;

export type RuleId = (typeof ALL_RULES)[number]['id'];

/** Every version that any edition names. */
export const RULE_BOOK = ruleBook(ALL_RULES);
