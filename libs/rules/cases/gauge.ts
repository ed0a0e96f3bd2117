// Cases of the strength and availability rules of the gauge stage.

import type { GAUGE_RULES } from '../gauge.js';
import type { RuleCases } from './rule-cases.js';
import { G24, G26, gap, zone } from './samples.js';

export const GAUGE_CASES = {
  'GAUGE-01': {
    passes: [{ zones: [zone('1', 1, 5), zone('2', 0.4, 0.2)] }],
    refuses: [
      { zones: [zone('1', 0.7, 0.2), zone('3', 1.0000001, 0.2)] },
      { zones: [gap('1', 'no chart row'), zone('2', 1.25, 0.2), zone('3', 1.5, 0.2)] },
    ],
    unknown: [{}, { zones: [] }, { zones: [zone('1', 0.5, 0.5), gap('2', 'no chart row')] }],
  },
  'GAUGE-02': {
    passes: [{ zones: [zone('1', 5, 1), zone('2', 0.4, 0.2)] }],
    refuses: [{ zones: [zone('1', 0.2, 0.7), zone('3', 0.2, 1.0000001)] }],
    unknown: [{}, { zones: [] }, { zones: [zone('1', 0.5, 0.5), gap('2', 'no test')] }],
  },
  'GAUGE-03': {
    passes: [{ zones: [zone('1', 2, 2)], option: G24 }, { zones: [zone('1', 2, 2)] }],
    refuses: [
      { zones: [gap('1', 'no test at 12 in clip spacing'), zone('2', 0.1, 0.1)], option: G24 },
      { zones: [gap('1', 'no chart row', 'no clip test'), gap('2', 'no chart row')] },
    ],
    unknown: [{ option: G24 }, { zones: [], option: G24 }],
  },
  'GAUGE-14': {
    passes: [{ option: G24 }, { option: { ...G24, availability: 'special-run' } }],
    refuses: [
      { option: { ...G26, availability: 'not-made' } },
      { option: { ...G26, availability: 'not-stocked' } },
    ],
    unknown: [{}],
  },
} satisfies Record<(typeof GAUGE_RULES)[number]['id'], RuleCases>;
