// What must stand before a warranty document is issued: the work finished, the registration in its
// window, an honest title, the disclosures, each document with its own warrantor and unchanged
// text.

import { cite, COMMON_PRACTICE } from '#engineering';
import { measuredDay } from './figures.js';
import { answeredYes, nothingLeft } from './outstanding.js';
import { fail, figure, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';

const gate = {
  version: 1,
  stage: 'warranty',
  class: 'house-policy',
  severity: 'refuse',
  cites: [COMMON_PRACTICE],
} as const;

export const inspected = rule({
  ...gate,
  id: 'WARR-05',
  title: 'The final inspection is passed',
  says: 'The finished roof passed its final inspection.',
  ...answeredYes('final_inspection_passed', 'the final inspection is not passed'),
});

export const punchListClosed = rule({
  ...gate,
  id: 'WARR-06',
  title: 'The punch list is closed',
  says: 'Every item of the punch list is done.',
  ...nothingLeft('punch_list_open', 'punch list still open'),
});

export const registeredInTime = rule({
  ...gate,
  id: 'WARR-07',
  title: 'Registered inside the window',
  severity: 'caution',
  says:
    'The registration is filed by the last day of its window; filed late it is printed as ' +
    'filed late.',
  reads: ['registration_due_by', 'registered_on'],
  settings: {},
  check: ({ registration_due_by, registered_on }) => {
    if (registration_due_by === undefined || registered_on === undefined) {
      return unknownOf({ registration_due_by, registered_on });
    }
    const last = figure('due by', registration_due_by, '');
    const left = measuredDay(last, registered_on);
    if (registered_on <= registration_due_by) return pass(undefined, undefined, left);
    return fail(
      `filed late: registered on ${registered_on}, due by ${registration_due_by}`,
      [figure('registered on', registered_on, ''), last],
      left,
    );
  },
});

export const honestTitle = rule({
  ...gate,
  id: 'WARR-08',
  title: 'Limited unless every test of a full warranty is met',
  class: 'code',
  says: 'A written consumer warranty is titled "Limited" unless it meets every test of a full one.',
  cites: [cite('usc-15-2303', '2303(a) and 2304')],
  reads: ['warranty_title', 'full_tests_not_met'],
  settings: {},
  check: ({ warranty_title, full_tests_not_met }) => {
    if (warranty_title === undefined) return unknown('warranty_title');
    if (warranty_title === 'limited') return pass();
    if (full_tests_not_met === undefined) return unknown('full_tests_not_met');
    return full_tests_not_met.length === 0
      ? pass()
      : fail(`titled full, but not met: ${full_tests_not_met.join('; ')}`);
  },
});

export const disclosed = rule({
  ...gate,
  id: 'WARR-09',
  title: 'Consumer disclosures are all there',
  class: 'code',
  says: 'A warranty on a consumer product discloses every item that the rule names, in one document.',
  cites: [cite('cfr-16-701', '701.3(a)'), cite('cfr-16-700', '700.1')],
  reads: ['consumer_product', 'disclosures_missing'],
  settings: {},
  check: ({ consumer_product, disclosures_missing }) => {
    if (consumer_product === undefined) return unknown('consumer_product');
    if (!consumer_product) return notApplicable('not a consumer product');
    if (disclosures_missing === undefined) return unknown('disclosures_missing');
    return disclosures_missing.length === 0
      ? pass()
      : fail(`not disclosed: ${disclosures_missing.join('; ')}`);
  },
});

export const noPaintNoPaintWarranty = rule({
  ...gate,
  id: 'WARR-10',
  title: 'No paint, no paint warranty',
  class: 'availability',
  says: 'Where no paint warranty exists, none is printed.',
  reads: ['paint_system', 'finish_term_years', 'paint_document_included'],
  settings: {},
  check: ({ paint_system, finish_term_years, paint_document_included }) => {
    if (paint_document_included === undefined) return unknown('paint_document_included');
    if (!paint_document_included) return pass();
    if (paint_system === undefined) return unknown('paint_system');
    if (paint_system === 'bare') return fail('bare metal has no paint warranty');
    return finish_term_years === undefined
      ? fail('this finish has no term in the catalogue, so no paint warranty')
      : pass();
  },
});

export const ownWarrantor = rule({
  ...gate,
  id: 'WARR-11',
  title: 'Each document has its own warrantor',
  says: 'Paint, substrate, weathertightness and workmanship are separate, each with its warrantor.',
  ...nothingLeft('documents_without_warrantor', 'no warrantor named'),
});

export const termsUnchanged = rule({
  ...gate,
  id: 'WARR-12',
  title: "The supplier's text is unchanged",
  class: 'compatibility',
  says: "The supplier's terms are attached as they came, byte for byte.",
  ...nothingLeft('terms_altered', 'text differs from the text on file'),
});

export const startDates = rule({
  ...gate,
  id: 'WARR-13',
  title: 'Each document has its start date',
  says: "The start date stands on each document, by the document's own rule.",
  ...nothingLeft('documents_without_start', 'no start date'),
});

export const exclusionsNamed = rule({
  ...gate,
  id: 'WARR-14',
  title: 'Exclusions already triggered are named',
  says: 'An exclusion that recorded facts already trigger is named on the document.',
  ...nothingLeft('exclusions_not_named', 'triggered and not named'),
});

export const WARRANTY_RULES = [
  inspected,
  punchListClosed,
  registeredInTime,
  honestTitle,
  disclosed,
  noPaintNoPaintWarranty,
  ownWarrantor,
  termsUnchanged,
  startDates,
  exclusionsNamed,
] as const;
