// Whether what the panel is fastened to is known, sound and dry enough to be confirmed.

import { COMMON_PRACTICE } from '#engineering';
import { listed, measured, recorded, text } from './figures.js';
import { fail, failAs, notApplicable, pass, rule, unknown } from './rule.js';
import { label } from './words.js';

export const spacingIsMeasured = rule({
  id: 'SUB-01',
  version: 1,
  title: 'Support spacing is measured',
  stage: 'substrate',
  class: 'physics',
  severity: 'refuse',
  says:
    'Open framing is not confirmed without measured spacing: each support, and the worst ' +
    'counts, never the nominal or the average.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'support_spacing_in', 'spacing_measured'],
  settings: {},
  check: ({ open_framing, support_spacing_in, spacing_measured }) => {
    if (open_framing === undefined) return unknown('open_framing');
    if (!open_framing) return notApplicable('on a solid substrate nothing spans');
    if (support_spacing_in === undefined) return fail('no support spacing is recorded');
    const spacing = recorded('support spacing', support_spacing_in, 'in');
    if (spacing_measured) return pass(undefined, [spacing]);
    return fail(`the support spacing of ${text(spacing)} was not measured`, [spacing]);
  },
});

export const condensationIsControlled = rule({
  id: 'SUB-02',
  version: 1,
  title: 'Condensation control over heated or humid space',
  stage: 'substrate',
  class: 'guidance',
  severity: 'caution',
  says:
    'Open framing over heated or humid space has a condensation control: a blanket with vapor ' +
    'retarder, an absorbing fleece, or a vented deck.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'inside_air', 'condensation_control'],
  settings: {},
  check: ({ open_framing, inside_air, condensation_control }) => {
    if (open_framing === undefined) return unknown('open_framing');
    if (!open_framing) return notApplicable('not open framing');
    if (inside_air === undefined) return unknown('inside_air');
    if (inside_air === 'unheated') return notApplicable('the space below is unheated');
    if (condensation_control === undefined) return unknown('condensation_control');
    if (condensation_control !== 'none') return pass(label(condensation_control));
    return fail(`open framing over ${inside_air} space has no condensation control`);
  },
});

export const nothingIsAssumed = rule({
  id: 'SUB-03',
  version: 1,
  title: 'The substrate is measured or documented',
  stage: 'substrate',
  class: 'physics',
  severity: 'refuse',
  says:
    'The substrate is confirmed on measured or documented facts. On a reroof it is confirmed ' +
    'provisionally until the tear-off checkpoint.',
  cites: [COMMON_PRACTICE],
  reads: ['substrate_not_measured', 'reroof'],
  settings: {},
  check: ({ substrate_not_measured, reroof }) => {
    if (substrate_not_measured === undefined) return unknown('substrate_not_measured');
    if (substrate_not_measured.length === 0) return pass();
    const what = `neither measured nor documented: ${listed(substrate_not_measured)}`;
    return reroof
      ? failAs('caution', `${what}; provisional until the tear-off checkpoint`)
      : fail(what);
  },
});

export const deckTakesTheFastener = rule({
  id: 'SUB-04',
  version: 1,
  title: 'The deck is thick enough for the fastener',
  stage: 'substrate',
  class: 'physics',
  severity: 'refuse',
  says: 'A deck is at least as thick as the bite that the fastener needs.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'deck_thickness_in', 'fastener_bite_in'],
  settings: {},
  check: ({ open_framing, deck_thickness_in, fastener_bite_in }) => {
    if (open_framing === undefined) return unknown('open_framing');
    if (open_framing) return notApplicable('there is no deck');
    if (deck_thickness_in === undefined) return unknown('deck_thickness_in');
    if (fastener_bite_in === undefined) return unknown('fastener_bite_in');
    const deck = recorded('deck thickness', deck_thickness_in, 'in');
    const bite = recorded('fastener bite', fastener_bite_in, 'in');
    const left = measured(bite, deck_thickness_in - fastener_bite_in, 'in', 3);
    if (deck_thickness_in >= fastener_bite_in) return pass(undefined, [deck, bite], left);
    return fail(
      `a deck of ${text(deck)} is thinner than the ${text(bite)} that the fastener needs`,
      [deck, bite],
      left,
    );
  },
});

export const SUBSTRATE_RULES = [
  spacingIsMeasured,
  condensationIsControlled,
  nothingIsAssumed,
  deckTakesTheFastener,
] as const;
