// The papers before an order: proposal, deposit, quote, permit, association, and what the promised
// warranties ask for while there is still time.

import { cite, COMMON_PRACTICE } from '#engineering';
import { measured, measuredDay, recorded, text } from './figures.js';
import { answeredYes, nothingLeft } from './outstanding.js';
import {
  fail,
  figure,
  notApplicable,
  pass,
  rule,
  unknown,
  unknownOf,
  type Verdict,
} from './rule.js';
import { label, type Approval } from './words.js';

const gate = {
  version: 1,
  stage: 'order',
  class: 'house-policy',
  severity: 'refuse',
  cites: [COMMON_PRACTICE],
} as const;

export const proposalAccepted = rule({
  ...gate,
  id: 'ORDER-07',
  title: 'The proposal is accepted',
  says: 'The customer has accepted the proposal in writing.',
  ...answeredYes('proposal_accepted', 'the proposal is not accepted'),
});

export const depositReceived = rule({
  ...gate,
  id: 'ORDER-08',
  title: 'The deposit is received',
  says: 'The agreed deposit has come in.',
  reads: ['deposit_agreed_usd', 'deposit_received_usd'],
  settings: {},
  check: ({ deposit_agreed_usd, deposit_received_usd }) => {
    if (deposit_agreed_usd === undefined) return unknown('deposit_agreed_usd');
    if (deposit_agreed_usd === 0) return notApplicable('no deposit was agreed');
    if (deposit_received_usd === undefined) return unknown('deposit_received_usd');
    const agreed = recorded('agreed', deposit_agreed_usd, 'USD');
    const received = recorded('received', deposit_received_usd, 'USD');
    const left = measured(agreed, deposit_received_usd - deposit_agreed_usd, 'USD', 2);
    if (deposit_received_usd >= deposit_agreed_usd)
      return pass(undefined, [agreed, received], left);
    return fail(
      `${text(received)} of an agreed deposit of ${text(agreed)} came in`,
      [agreed, received],
      left,
    );
  },
});

export const quoteIsValid = rule({
  ...gate,
  id: 'ORDER-09',
  title: 'The quote is still valid',
  says: 'The order date is not after the last day of the quote.',
  reads: ['quote_valid_until', 'order_date'],
  settings: {},
  check: ({ quote_valid_until, order_date }) => {
    if (quote_valid_until === undefined || order_date === undefined) {
      return unknownOf({ quote_valid_until, order_date });
    }
    const last = figure('quote valid until', quote_valid_until, '');
    const left = measuredDay(last, order_date);
    if (order_date <= quote_valid_until) return pass(undefined, undefined, left);
    return fail(
      `the quote was valid until ${quote_valid_until}; the order is of ${order_date}`,
      [last, figure('order date', order_date, '')],
      left,
    );
  },
});

export const permitGranted = rule({
  ...gate,
  id: 'ORDER-10',
  title: 'The permit is granted where it is asked for',
  says: 'Where the authority asks for a permit, it is granted. No rule here waives one.',
  reads: ['permit'],
  settings: {},
  check: ({ permit }) => approved('permit', permit),
});

export const associationApproved = rule({
  ...gate,
  id: 'ORDER-11',
  title: 'The association has approved where it is asked',
  says: "Where an owners' association decides on looks, it has approved them.",
  reads: ['association_approval'],
  settings: {},
  check: ({ association_approval }) => approved('association_approval', association_approval),
});

export const promisedTermsOnFile = rule({
  ...gate,
  id: 'WARR-01',
  title: 'Promised documents have their text',
  says: "Each promised warranty document has its supplier's text on file before the order.",
  reads: ['promised_documents', 'promised_without_terms'],
  settings: {},
  check: ({ promised_documents, promised_without_terms }) => {
    if (promised_documents === undefined) return unknown('promised_documents');
    if (promised_documents.length === 0) return notApplicable('no warranty document was promised');
    if (promised_without_terms === undefined) return unknown('promised_without_terms');
    return promised_without_terms.length === 0
      ? pass(promised_documents.join(', '))
      : fail(`promised without a text on file: ${promised_without_terms.join('; ')}`);
  },
});

export const weathertightnessApproved = rule({
  ...gate,
  id: 'WARR-02',
  title: 'The weathertightness application is approved',
  says: 'Where weathertightness was asked for, the warrantor has approved application and details.',
  reads: ['weathertightness_asked', 'weathertightness_approved'],
  settings: {},
  check: ({ weathertightness_asked, weathertightness_approved }) => {
    if (weathertightness_asked === undefined) return unknown('weathertightness_asked');
    if (!weathertightness_asked) return notApplicable('no weathertightness cover is asked for');
    if (weathertightness_approved === undefined) return unknown('weathertightness_approved');
    return weathertightness_approved
      ? pass()
      : fail('application and details for weathertightness are not approved');
  },
});

export const termTextGiven = rule({
  ...gate,
  id: 'WARR-03',
  title: 'The customer has the term text',
  class: 'code',
  says: 'The text of every written warranty was available to the customer before the sale.',
  cites: [cite('cfr-16-702', '702.3(a)')],
  reads: ['promised_documents', 'term_text_given'],
  settings: {},
  check: ({ promised_documents, term_text_given }) => {
    if (promised_documents === undefined) return unknown('promised_documents');
    if (promised_documents.length === 0) return notApplicable('no warranty document was promised');
    if (term_text_given === undefined) return unknown('term_text_given');
    return term_text_given
      ? pass()
      : fail(`no term text was given for ${promised_documents.join(', ')}`);
  },
});

export const particularsFilledIn = rule({
  ...gate,
  id: 'WARR-04',
  title: 'Slope, water and color term are filled in',
  says:
    'No warranty is printed or ordered on without slope, distance to water, kind of water and ' +
    'color term.',
  ...nothingLeft('warranty_particulars_missing', 'not filled in'),
});

export const ORDER_PAPER_RULES = [
  proposalAccepted,
  depositReceived,
  quoteIsValid,
  permitGranted,
  associationApproved,
  promisedTermsOnFile,
  weathertightnessApproved,
  termTextGiven,
  particularsFilledIn,
] as const;

function approved(key: 'permit' | 'association_approval', standing: Approval | undefined): Verdict {
  if (standing === undefined) return unknown(key);
  if (standing === 'not-asked') return notApplicable('nobody asks for one');
  return standing === 'granted' ? pass() : fail(`${label(key.replace('_', '-'))} is ${standing}`);
}
