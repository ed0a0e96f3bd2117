// Cases of the warranty documents.

import type { WARRANTY_RULES } from '../warranty.js';
import { flagCases, listCases } from './outstanding.js';
import type { RuleCases } from './rule-cases.js';

export const WARRANTY_CASES = {
  'WARR-05': flagCases('final_inspection_passed'),
  'WARR-06': listCases('punch_list_open', 'ridge closure', 'touch-up at eave'),
  'WARR-07': {
    passes: [
      { registration_due_by: '2026-09-30', registered_on: '2026-09-30' },
      { registration_due_by: '2026-09-30', registered_on: '2026-08-01' },
    ],
    refuses: [{ registration_due_by: '2026-09-30', registered_on: '2026-10-01' }],
    unknown: [{ registration_due_by: '2026-09-30' }, { registered_on: '2026-09-01' }],
  },
  'WARR-08': {
    passes: [{ warranty_title: 'limited' }, { warranty_title: 'full', full_tests_not_met: [] }],
    refuses: [{ warranty_title: 'full', full_tests_not_met: ['free remedy', 'any owner'] }],
    unknown: [{ full_tests_not_met: [] }, { warranty_title: 'full' }],
  },
  'WARR-09': {
    passes: [{ consumer_product: true, disclosures_missing: [] }],
    refuses: [{ consumer_product: true, disclosures_missing: ['claim steps', 'duration'] }],
    notApplicable: [{ consumer_product: false, disclosures_missing: ['duration'] }],
    unknown: [{ disclosures_missing: [] }, { consumer_product: true }],
  },
  'WARR-10': {
    passes: [
      { paint_document_included: false, paint_system: 'bare' },
      { paint_document_included: true, paint_system: 'SMP', finish_term_years: 30 },
    ],
    refuses: [
      { paint_document_included: true, paint_system: 'bare', finish_term_years: 30 },
      { paint_document_included: true, paint_system: 'polyester' },
    ],
    unknown: [{ paint_system: 'SMP' }, { paint_document_included: true }],
  },
  'WARR-11': listCases('documents_without_warrantor', 'paint', 'workmanship'),
  'WARR-12': listCases('terms_altered', 'paint', 'substrate'),
  'WARR-13': listCases('documents_without_start', 'paint', 'substrate'),
  'WARR-14': listCases('exclusions_not_named', 'standing water', 'animal confinement'),
} satisfies Record<(typeof WARRANTY_RULES)[number]['id'], RuleCases>;
