// Cases of the rules on what is under the new roof.

import type { RECOVER_RULES } from '../recover.js';
import type { RuleCases } from './rule-cases.js';

const reroof = { reroof: true } as const;
const open = { open_framing: true } as const;
const roofOnDeck = { kind: 'roof', open_framing: false } as const;
const fleece = { condensation_control: 'absorbing-fleece' } as const;

export const RECOVER_CASES = {
  'SUB-06': {
    passes: [
      { ...reroof, shingle_layers: 0 },
      { ...reroof, shingle_layers: 1 },
    ],
    refuses: [{ ...reroof, shingle_layers: 2 }],
    notApplicable: [{ reroof: false, shingle_layers: 3 }],
    unknown: [{ ...reroof }, { shingle_layers: 1 }],
  },
  'SUB-07': {
    passes: [
      { ...reroof, old_roof_left: 'none' },
      { ...reroof, old_roof_left: 'sound' },
    ],
    refuses: [
      { ...reroof, old_roof_left: 'wet-or-rotten' },
      { ...reroof, old_roof_left: 'slate-or-tile' },
    ],
    notApplicable: [{ reroof: false, old_roof_left: 'wet-or-rotten' }],
    unknown: [{ ...reroof }, { old_roof_left: 'sound' }],
  },
  'SUB-08': {
    passes: [{ ...open, framing_sound: true }],
    refuses: [{ ...open, framing_sound: false }],
    notApplicable: [{ open_framing: false, framing_sound: false }],
    unknown: [{ ...open }, { framing_sound: true }],
  },
  'SUB-09': {
    passes: [{ ...roofOnDeck, underlayment: 'high-temperature self-adhered' }],
    refuses: [{ ...roofOnDeck, underlayment: 'none' }],
    notApplicable: [
      { ...roofOnDeck, open_framing: true, underlayment: 'none' },
      { ...roofOnDeck, kind: 'wall', underlayment: 'none' },
    ],
    unknown: [{ kind: 'roof' }, { open_framing: false }, { ...roofOnDeck }],
  },
  'SUB-10': {
    passes: [{ ...fleece, inside_air: 'heated' }],
    refuses: [{ ...fleece, inside_air: 'humid' }],
    notApplicable: [{ condensation_control: 'vented-deck', inside_air: 'humid' }],
    unknown: [{ inside_air: 'humid' }, { ...fleece }],
  },
} satisfies Record<(typeof RECOVER_RULES)[number]['id'], RuleCases>;
