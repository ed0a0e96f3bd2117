// Cases of the rules on what may not touch or drain onto the metal.

import type { CONTACT_RULES } from '../contact.js';
import type { RuleCases } from './rule-cases.js';
import { RIBBED, STANDING_SEAM } from './samples.js';

const longTerm = { profile: RIBBED, finish_term_years: 25 } as const;

export const CONTACT_CASES = {
  'COAT-08': {
    passes: [{ metal: 'steel', copper_or_lead_above: false }],
    refuses: [
      { metal: 'steel', copper_or_lead_above: true },
      { metal: 'aluminum', copper_or_lead_above: true },
    ],
    notApplicable: [{ metal: 'copper', copper_or_lead_above: true }],
    unknown: [{ metal: 'steel' }, { copper_or_lead_above: true }],
  },
  'COAT-09': {
    passes: [{ masonry_after_panels: false }],
    refuses: [{ masonry_after_panels: true }],
    unknown: [{}],
  },
  'COAT-10': {
    passes: [{ metal: 'steel', masonry_after_panels: true, reglet_bare_in_wet_mortar: false }],
    refuses: [
      { metal: 'steel', masonry_after_panels: true, reglet_bare_in_wet_mortar: true },
      { metal: 'aluminum', reglet_bare_in_wet_mortar: true },
    ],
    notApplicable: [
      { metal: 'copper', reglet_bare_in_wet_mortar: true },
      { metal: 'steel', masonry_after_panels: false },
    ],
    unknown: [{ reglet_bare_in_wet_mortar: true }, { metal: 'steel' }],
  },
  'COAT-11': {
    passes: [
      { metal: 'steel', animals_or_fertilizer: false },
      { metal: 'steel', animals_or_fertilizer: true, corrosive_inside_protected: true },
    ],
    refuses: [
      { metal: 'steel', animals_or_fertilizer: true },
      { metal: 'steel', animals_or_fertilizer: true, corrosive_inside_protected: false },
    ],
    notApplicable: [{ metal: 'aluminum', animals_or_fertilizer: true }],
    unknown: [{ metal: 'steel' }, { animals_or_fertilizer: true }],
  },
  'SUB-05': {
    passes: [{ treated_lumber_contact: 'none' }, { treated_lumber_contact: 'separated' }],
    refuses: [{ treated_lumber_contact: 'bare' }],
    unknown: [{}],
  },
  'SUB-11': {
    passes: [
      { metal: 'steel', fastener_metal: 'galvanized' },
      { metal: 'steel', fastener_metal: 'stainless' },
      { metal: 'aluminum', fastener_metal: 'aluminum' },
      { metal: 'aluminum', fastener_metal: 'stainless' },
      { metal: 'copper', fastener_metal: 'copper-alloy' },
      { metal: 'copper', fastener_metal: 'stainless' },
    ],
    refuses: [
      { metal: 'steel', fastener_metal: 'copper-alloy' },
      { metal: 'steel', fastener_metal: 'aluminum' },
      { metal: 'aluminum', fastener_metal: 'galvanized' },
      { metal: 'copper', fastener_metal: 'galvanized' },
    ],
    unknown: [{ metal: 'steel' }, { fastener_metal: 'stainless' }],
  },
  'SUB-12': {
    passes: [{ ...longTerm, fastener_metal: 'stainless' }],
    refuses: [{ ...longTerm, fastener_metal: 'galvanized' }],
    notApplicable: [
      { ...longTerm, profile: STANDING_SEAM, fastener_metal: 'galvanized' },
      { ...longTerm, finish_term_years: 24, fastener_metal: 'galvanized' },
    ],
    unknown: [{ finish_term_years: 30 }, { profile: RIBBED }, { ...longTerm }],
  },
} satisfies Record<(typeof CONTACT_RULES)[number]['id'], RuleCases>;
