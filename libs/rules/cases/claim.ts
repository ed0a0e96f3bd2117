// Cases of claims readiness.

import type { CLAIM_RULES } from '../claim.js';
import { listCases } from './outstanding.js';
import type { RuleCases } from './rule-cases.js';

const term = { term_from: '2026-09-01', term_to: '2056-08-31' } as const;
const color = { is_color_claim: true } as const;

export const CLAIM_CASES = {
  'CLAIM-01': listCases('claim_particulars_missing', 'surface', 'lot'),
  'CLAIM-02': {
    passes: [
      { ...term, notice_date: '2026-09-01' },
      { ...term, notice_date: '2056-08-31' },
    ],
    refuses: [
      { ...term, notice_date: '2026-08-31' },
      { ...term, notice_date: '2056-09-01' },
    ],
    unknown: [
      { ...term },
      { notice_date: '2030-01-01', term_to: term.term_to },
      { notice_date: '2030-01-01', term_from: term.term_from },
    ],
  },
  'CLAIM-03': {
    passes: [{ ...color, term_color_scale: 'Hunter' }],
    refuses: [{ ...color, term_color_scale: 'not named' }],
    notApplicable: [{ is_color_claim: false, term_color_scale: 'not named' }],
    unknown: [{ term_color_scale: 'Hunter' }, { ...color }],
  },
  'CLAIM-04': {
    passes: [{ ...color, chalk_rated_before_wash: true, color_read_after_wash: true }],
    refuses: [
      { ...color, chalk_rated_before_wash: false, color_read_after_wash: true },
      { ...color, chalk_rated_before_wash: true, color_read_after_wash: false },
    ],
    notApplicable: [{ is_color_claim: false, chalk_rated_before_wash: false }],
    unknown: [
      { chalk_rated_before_wash: true, color_read_after_wash: true },
      { ...color, chalk_rated_before_wash: true },
      { ...color, color_read_after_wash: true },
    ],
  },
  'CLAIM-05': {
    passes: [{ ...color, reading_details_missing: [] }],
    refuses: [{ ...color, reading_details_missing: ['illuminant', 'calibration date'] }],
    notApplicable: [{ is_color_claim: false, reading_details_missing: ['illuminant'] }],
    unknown: [{ reading_details_missing: [] }, { ...color }],
  },
  'CLAIM-06': {
    passes: [{ registered_on: '2026-09-20', transfers_without_notice: [] }],
    refuses: [
      { transfers_without_notice: [] },
      { registered_on: '2026-09-20', transfers_without_notice: ['sale of 2030', 'sale of 2034'] },
    ],
    unknown: [{ registered_on: '2026-09-20' }],
  },
  'CLAIM-07': listCases('exclusions_triggered', 'standing water', 'cut-edge rust'),
  'CLAIM-08': listCases('claim_evidence_missing', 'close photo with scale', 'retained panel'),
  'CLAIM-09': listCases('as_built_differences', 'zone 3: 24 in, approved 12 in', 'zone 2: screw'),
} satisfies Record<(typeof CLAIM_RULES)[number]['id'], RuleCases>;
