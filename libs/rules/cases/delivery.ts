// Cases of delivery, lots and installation.

import type { DELIVERY_RULES } from '../delivery.js';
import { flagCases, listCases } from './outstanding.js';
import type { RuleCases } from './rule-cases.js';

export const DELIVERY_CASES = {
  'DELIV-01': listCases('acknowledgment_differences', 'line 3: 24 not 26 gauge', 'line 5: count'),
  'DELIV-02': listCases('receipt_differences', 'line 1: 2 short', 'line 4: 1 over'),
  'DELIV-03': listCases('damage_not_settled', 'bundle 2: bent', 'bundle 3: scratched'),
  'DELIV-04': listCases('planes_without_lot', 'south plane', 'dormer'),
  'DELIV-05': listCases('planes_of_mixed_lots', 'south plane', 'dormer'),
  'DELIV-06': flagCases('stored_dry'),
  'DELIV-07': {
    passes: [{ reroof: true, tear_off_confirmed: true }],
    refuses: [{ reroof: true }, { reroof: true, tear_off_confirmed: false }],
    notApplicable: [{ reroof: false, tear_off_confirmed: false }],
    unknown: [{ tear_off_confirmed: true }],
  },
  'DELIV-08': listCases('covered_work_without_photos', 'deck', 'clips'),
  'DELIV-09': listCases('as_built_differences', 'zone 3: 24 in, approved 12 in', 'zone 2: screw'),
} satisfies Record<(typeof DELIVERY_RULES)[number]['id'], RuleCases>;
