// What may not touch or drain onto the metal: copper and lead, mortar, animals and fertilizer,
// treated lumber, and fasteners of the wrong metal.

import { cite, COMMON_PRACTICE } from '#engineering';
import { recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { label, type FastenerMetal, type Metal } from './words.js';

export const copperAbove = rule({
  id: 'COAT-08',
  version: 1,
  title: 'No copper or lead above or touching',
  stage: 'coating',
  class: 'compatibility',
  severity: 'refuse',
  says:
    'Copper or lead does not touch or drain onto Al-Zn, zinc or aluminum; water from ' +
    'copper pipes and cooling coils counts.',
  cites: [COMMON_PRACTICE],
  reads: ['metal', 'copper_or_lead_above'],
  settings: {},
  check: ({ metal, copper_or_lead_above }) => {
    if (metal === undefined) return unknown('metal');
    if (metal === 'copper') return notApplicable('the panel is copper');
    if (copper_or_lead_above === undefined) return unknown('copper_or_lead_above');
    return copper_or_lead_above ? fail(`copper or lead touches or drains onto ${metal}`) : pass();
  },
});

export const masonryAfterPanels = rule({
  id: 'COAT-09',
  version: 1,
  title: 'Masonry is finished before the panels',
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says:
    'Wet mortar, stucco and concrete attack the coating: masonry is finished and cured ' +
    'first, or the panels are covered.',
  cites: [COMMON_PRACTICE],
  reads: ['masonry_after_panels'],
  settings: {},
  check: ({ masonry_after_panels }) => {
    if (masonry_after_panels === undefined) return unknown('masonry_after_panels');
    return masonry_after_panels
      ? fail('mortar, stucco or concrete work follows the panels')
      : pass();
  },
});

export const regletInMortar = rule({
  id: 'COAT-10',
  version: 1,
  title: 'No bare flashing in wet mortar',
  stage: 'coating',
  class: 'compatibility',
  severity: 'refuse',
  says: 'Reglet flashing set in wet mortar has a clear coat or another barrier.',
  cites: [COMMON_PRACTICE],
  reads: ['metal', 'masonry_after_panels', 'reglet_bare_in_wet_mortar'],
  settings: {},
  check: ({ metal, masonry_after_panels, reglet_bare_in_wet_mortar }) => {
    if (metal === undefined) return unknown('metal');
    if (metal === 'copper') return notApplicable('the flashing is copper');
    if (masonry_after_panels === false) return notApplicable('no masonry follows the panels');
    if (reglet_bare_in_wet_mortar === undefined) return unknown('reglet_bare_in_wet_mortar');
    return reglet_bare_in_wet_mortar ? fail(`bare ${metal} flashing is set in wet mortar`) : pass();
  },
});

export const animalsInside = rule({
  id: 'COAT-11',
  version: 1,
  title: 'Animals, fertilizer and chemical air',
  stage: 'coating',
  class: 'compatibility',
  severity: 'refuse',
  says:
    'Over animal confinement, fertilizer, pools or chemicals, coated steel needs another ' +
    "material, or a back coat, ventilation and a barrier, with the supplier's letter.",
  cites: [COMMON_PRACTICE],
  reads: ['metal', 'animals_or_fertilizer', 'corrosive_inside_protected'],
  settings: {},
  check: ({ metal, animals_or_fertilizer, corrosive_inside_protected }) => {
    if (metal === undefined) return unknown('metal');
    if (metal !== 'steel') return notApplicable('not coated steel');
    if (animals_or_fertilizer === undefined) return unknown('animals_or_fertilizer');
    if (!animals_or_fertilizer) return pass();
    return corrosive_inside_protected
      ? pass("protected, with the supplier's letter")
      : fail('coated steel over corrosive air without back coat, ventilation, barrier and letter');
  },
});

export const treatedLumber = rule({
  id: 'SUB-05',
  version: 1,
  title: 'No bare contact with treated lumber',
  stage: 'substrate',
  class: 'compatibility',
  severity: 'refuse',
  says:
    'Copper-bearing treated lumber is kept apart by a membrane, and its fasteners suit the ' +
    'treatment.',
  cites: [cite('mca-lumber', 'separation')],
  reads: ['treated_lumber_contact'],
  settings: {},
  check: ({ treated_lumber_contact }) => {
    if (treated_lumber_contact === undefined) return unknown('treated_lumber_contact');
    return treated_lumber_contact === 'bare'
      ? fail('the panel touches copper-bearing treated lumber without a membrane')
      : pass();
  },
});

const FITTING: Readonly<Record<Metal, readonly FastenerMetal[]>> = {
  steel: ['galvanized', 'stainless'],
  aluminum: ['aluminum', 'stainless'],
  copper: ['copper-alloy', 'stainless'],
};

export const fastenerMetal = rule({
  id: 'SUB-11',
  version: 1,
  title: 'Fasteners fit the metal',
  stage: 'substrate',
  class: 'code',
  severity: 'refuse',
  says:
    'Galvanized fasteners are for steel, aluminum for aluminum, copper alloy for copper; ' +
    'stainless steel is for all.',
  cites: [cite('ibc-2018', '1507.4.4')],
  reads: ['metal', 'fastener_metal'],
  settings: {},
  check: ({ metal, fastener_metal }) => {
    if (metal === undefined || fastener_metal === undefined) {
      return unknownOf({ metal, fastener_metal });
    }
    return FITTING[metal].includes(fastener_metal)
      ? pass()
      : fail(`${label(fastener_metal)} fasteners in ${metal} panels`);
  },
});

export const screwLife = rule({
  id: 'SUB-12',
  version: 1,
  title: 'Screws and washers last as long as the finish',
  stage: 'substrate',
  class: 'guidance',
  severity: 'caution',
  says: 'Exposed screws under a long finish term are stainless or stainless-capped.',
  cites: [COMMON_PRACTICE],
  reads: ['profile', 'finish_term_years', 'fastener_metal'],
  settings: { long_term_years: 25 },
  check: ({ profile, finish_term_years, fastener_metal }, { long_term_years }) => {
    if (profile === undefined) return unknown('profile');
    if (profile.fastening === 'concealed') return notApplicable('the fasteners are concealed');
    if (finish_term_years === undefined) return unknown('finish_term_years');
    if (finish_term_years < long_term_years) return notApplicable('not a long finish term');
    if (fastener_metal === undefined) return unknown('fastener_metal');
    if (fastener_metal !== 'galvanized') return pass();
    const term = recorded('finish term', finish_term_years, 'years');
    const long = recorded('long term from', long_term_years, 'years');
    return fail(
      `galvanized screws stand exposed under a finish term of ${text(term)} ` +
        `(long from ${text(long)})`,
      [term, long],
    );
  },
});

export const CONTACT_RULES = [
  copperAbove,
  masonryAfterPanels,
  regletInMortar,
  animalsInside,
  treatedLumber,
  fastenerMetal,
  screwLife,
] as const;
