// Cases of what must stand before an order.

import type { ORDER_RULES } from '../order.js';
import { flagCases, listCases } from './outstanding.js';
import type { RuleCases } from './rule-cases.js';

const limits = { truck_limit_ft: 45, site_limit_ft: 42, handling_limit_ft: 40 } as const;

export const ORDER_CASES = {
  'ORDER-01': listCases('surfaces_not_ready', 'main roof: gauge', 'porch: coating'),
  'ORDER-02': listCases('sign_offs_not_standing', 'shed roof', 'lean-to'),
  'ORDER-03': listCases('assumed_facts', 'main roof: slope', 'deck thickness'),
  'ORDER-04': listCases('lengths_not_signed', 'main roof', 'porch'),
  'ORDER-05': listCases('colors_open', 'main roof', 'porch'),
  'ORDER-06': listCases('chips_not_accepted', 'barn red', 'ash'),
  'ORDER-12': {
    passes: [
      { ...limits, longest_piece_ft: 40 },
      { ...limits, longest_piece_ft: 12 },
    ],
    refuses: [
      { ...limits, longest_piece_ft: 40.5 },
      { ...limits, longest_piece_ft: 46 },
      { truck_limit_ft: 45, longest_piece_ft: 46 },
    ],
    unknown: [
      { ...limits },
      { ...limits, truck_limit_ft: undefined, longest_piece_ft: 12 },
      { ...limits, site_limit_ft: undefined, longest_piece_ft: 12 },
      { ...limits, handling_limit_ft: undefined, longest_piece_ft: 12 },
    ],
  },
  'ORDER-13': listCases('planes_of_mixed_finish', 'south plane', 'dormer'),
  'ORDER-14': listCases('requirements_due', 'HAZ-01 of main roof', 'SIGN-01 of shed'),
  'ORDER-15': listCases('cautions_not_acknowledged', 'COAT-02 of main roof', 'GAUGE-05 of shed'),
  'ORDER-16': flagCases('landing_place_named'),
} satisfies Record<(typeof ORDER_RULES)[number]['id'], RuleCases>;
