// Cases of the substrate rules.

import type { SUBSTRATE_RULES } from '../substrate.js';
import type { RuleCases } from './rule-cases.js';

const open = { open_framing: true } as const;
const deck = { open_framing: false } as const;

export const SUBSTRATE_CASES = {
  'SUB-01': {
    passes: [{ ...open, support_spacing_in: 26, spacing_measured: true }],
    refuses: [
      { ...open },
      { ...open, support_spacing_in: 24 },
      { ...open, support_spacing_in: 24, spacing_measured: false },
      { ...open, spacing_measured: true },
    ],
    notApplicable: [{ ...deck }],
    unknown: [{ support_spacing_in: 24, spacing_measured: true }],
  },
  'SUB-02': {
    passes: [
      { ...open, inside_air: 'heated', condensation_control: 'blanket-with-retarder' },
      { ...open, inside_air: 'humid', condensation_control: 'vented-deck' },
    ],
    refuses: [
      { ...open, inside_air: 'heated', condensation_control: 'none' },
      { ...open, inside_air: 'humid', condensation_control: 'none' },
    ],
    notApplicable: [
      { ...deck, inside_air: 'humid', condensation_control: 'none' },
      { ...open, inside_air: 'unheated', condensation_control: 'none' },
    ],
    unknown: [{ inside_air: 'heated' }, { ...open }, { ...open, inside_air: 'heated' }],
  },
  'SUB-03': {
    passes: [{ substrate_not_measured: [] }, { substrate_not_measured: [], reroof: true }],
    refuses: [
      { substrate_not_measured: ['deck thickness', 'purlin size'] },
      { substrate_not_measured: ['deck thickness'], reroof: false },
      { substrate_not_measured: ['deck thickness'], reroof: true },
    ],
    unknown: [{ reroof: true }],
    withSettings: [
      {
        settings: {},
        facts: { substrate_not_measured: ['deck thickness'], reroof: true },
        outcome: 'fail',
        severity: 'caution',
      },
    ],
  },
  'SUB-04': {
    passes: [{ ...deck, deck_thickness_in: 0.5, fastener_bite_in: 0.5 }],
    refuses: [{ ...deck, deck_thickness_in: 0.375, fastener_bite_in: 0.5 }],
    notApplicable: [{ ...open, deck_thickness_in: 0.1, fastener_bite_in: 0.5 }],
    unknown: [
      { deck_thickness_in: 0.5, fastener_bite_in: 0.5 },
      { ...deck, fastener_bite_in: 0.5 },
      { ...deck, deck_thickness_in: 0.5 },
    ],
  },
} satisfies Record<(typeof SUBSTRATE_RULES)[number]['id'], RuleCases>;
