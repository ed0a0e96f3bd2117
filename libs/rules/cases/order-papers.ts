// Cases of the papers before an order.

import type { ORDER_PAPER_RULES } from '../order-papers.js';
import { flagCases, listCases } from './outstanding.js';
import type { RuleCases } from './rule-cases.js';

const promised = { promised_documents: ['paint', 'substrate'] } as const;

export const ORDER_PAPER_CASES = {
  'ORDER-07': flagCases('proposal_accepted'),
  'ORDER-08': {
    passes: [
      { deposit_agreed_usd: 5000, deposit_received_usd: 5000 },
      { deposit_agreed_usd: 5000, deposit_received_usd: 6000 },
    ],
    refuses: [{ deposit_agreed_usd: 5000, deposit_received_usd: 4999.5 }],
    notApplicable: [{ deposit_agreed_usd: 0 }],
    unknown: [{ deposit_received_usd: 100 }, { deposit_agreed_usd: 5000 }],
  },
  'ORDER-09': {
    passes: [
      { quote_valid_until: '2026-05-31', order_date: '2026-05-31' },
      { quote_valid_until: '2026-05-31', order_date: '2026-04-30' },
    ],
    refuses: [{ quote_valid_until: '2026-05-31', order_date: '2026-06-01' }],
    unknown: [{ quote_valid_until: '2026-05-31' }, { order_date: '2026-06-01' }],
  },
  'ORDER-10': {
    passes: [{ permit: 'granted' }],
    refuses: [{ permit: 'pending' }, { permit: 'denied' }],
    notApplicable: [{ permit: 'not-asked' }],
    unknown: [{}],
  },
  'ORDER-11': {
    passes: [{ association_approval: 'granted' }],
    refuses: [{ association_approval: 'pending' }, { association_approval: 'denied' }],
    notApplicable: [{ association_approval: 'not-asked' }],
    unknown: [{}],
  },
  'WARR-01': {
    passes: [{ ...promised, promised_without_terms: [] }],
    refuses: [{ ...promised, promised_without_terms: ['paint', 'substrate'] }],
    notApplicable: [{ promised_documents: [] }],
    unknown: [{ promised_without_terms: [] }, { ...promised }],
  },
  'WARR-02': {
    passes: [{ weathertightness_asked: true, weathertightness_approved: true }],
    refuses: [{ weathertightness_asked: true, weathertightness_approved: false }],
    notApplicable: [{ weathertightness_asked: false }],
    unknown: [{ weathertightness_approved: true }, { weathertightness_asked: true }],
  },
  'WARR-03': {
    passes: [{ ...promised, term_text_given: true }],
    refuses: [{ ...promised, term_text_given: false }],
    notApplicable: [{ promised_documents: [], term_text_given: false }],
    unknown: [{ term_text_given: true }, { ...promised }],
  },
  'WARR-04': listCases('warranty_particulars_missing', 'distance to water', 'color term'),
} satisfies Record<(typeof ORDER_PAPER_RULES)[number]['id'], RuleCases>;
