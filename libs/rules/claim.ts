// Whether a claim is ready to be read: what it is about, the term at the notice date, readings
// made in the right order and scale, and what stands against it. A person decides.

import { cite, COMMON_PRACTICE } from '#engineering';
import { daysBetween, measured, measuredDay } from './figures.js';
import { nothingLeft } from './outstanding.js';
import { fail, figure, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';

const gate = {
  version: 1,
  stage: 'claim',
  class: 'house-policy',
  severity: 'caution',
  cites: [COMMON_PRACTICE],
} as const;

export const claimIsAboutSomething = rule({
  ...gate,
  id: 'CLAIM-01',
  title: 'The claim names surface, lot and kind',
  severity: 'require',
  says: 'A claim belongs to a surface and a lot and says what is claimed.',
  ...nothingLeft('claim_particulars_missing', 'not named'),
});

export const termInForce = rule({
  ...gate,
  id: 'CLAIM-02',
  title: 'The term was in force at the notice date',
  says: 'Notice of the defect was given between the first and the last day of the term.',
  reads: ['notice_date', 'term_from', 'term_to'],
  settings: {},
  check: ({ notice_date, term_from, term_to }) => {
    if (notice_date === undefined || term_from === undefined || term_to === undefined) {
      return unknownOf({ notice_date, term_from, term_to });
    }
    const [from, to] = [figure('term from', term_from, ''), figure('term to', term_to, '')];
    const left =
      notice_date < term_from
        ? measured(from, daysBetween(term_from, notice_date), 'days', 0)
        : measuredDay(to, notice_date);
    if (notice_date >= term_from && notice_date <= term_to) return pass(undefined, undefined, left);
    return fail(
      `notice of ${notice_date} is outside the term from ${term_from} to ${term_to}`,
      [figure('notice', notice_date, ''), from, to],
      left,
    );
  },
});

export const scaleIsNamed = rule({
  ...gate,
  id: 'CLAIM-03',
  title: 'The term names its color scale',
  class: 'physics',
  severity: 'require',
  says:
    'Color differences of different scales have no common factor: where the term names no ' +
    'scale, that is an open question for the warrantor, never an assumption.',
  cites: [cite('astm-d2244', '5.1 and 5.2')],
  reads: ['is_color_claim', 'term_color_scale'],
  settings: {},
  check: ({ is_color_claim, term_color_scale }) => {
    if (is_color_claim === undefined) return unknown('is_color_claim');
    if (!is_color_claim) return notApplicable('not a claim about color');
    if (term_color_scale === undefined) return unknown('term_color_scale');
    return term_color_scale === 'not named'
      ? fail('the term names no color scale: ask the warrantor')
      : pass(term_color_scale);
  },
});

export const chalkBeforeColorAfter = rule({
  ...gate,
  id: 'CLAIM-04',
  title: 'Chalk before the wash, color after it',
  class: 'physics',
  severity: 'require',
  says: 'Chalk is rated before washing, color is read after washing off dirt and chalk.',
  cites: [cite('astm-d4214', 'scope, from memory'), cite('astm-d2244', 'scope, from memory')],
  reads: ['is_color_claim', 'chalk_rated_before_wash', 'color_read_after_wash'],
  settings: {},
  check: ({ is_color_claim, chalk_rated_before_wash, color_read_after_wash }) => {
    if (is_color_claim === undefined) return unknown('is_color_claim');
    if (!is_color_claim) return notApplicable('not a claim about color');
    if (chalk_rated_before_wash === undefined || color_read_after_wash === undefined) {
      return unknownOf({ chalk_rated_before_wash, color_read_after_wash });
    }
    if (!chalk_rated_before_wash) return fail('chalk was not rated before the wash');
    return color_read_after_wash ? pass() : fail('color was not read after the wash');
  },
});

export const readingsAreComplete = rule({
  ...gate,
  id: 'CLAIM-05',
  title: 'Readings are complete',
  severity: 'require',
  says:
    'A reading has instrument, calibration date, illuminant, observer, geometry and ' +
    'count, and is set against the unexposed panel.',
  reads: ['is_color_claim', 'reading_details_missing'],
  settings: {},
  check: ({ is_color_claim, reading_details_missing }) => {
    if (is_color_claim === undefined) return unknown('is_color_claim');
    if (!is_color_claim) return notApplicable('not a claim about color');
    if (reading_details_missing === undefined) return unknown('reading_details_missing');
    return reading_details_missing.length === 0
      ? pass()
      : fail(`the reading lacks: ${reading_details_missing.join('; ')}`);
  },
});

export const transfersNoticed = rule({
  ...gate,
  id: 'CLAIM-06',
  title: 'Registration and every transfer stand',
  says: 'The document was registered, and each change of owner was notified as it asks.',
  reads: ['registered_on', 'transfers_without_notice'],
  settings: {},
  check: ({ registered_on, transfers_without_notice }) => {
    if (transfers_without_notice === undefined) return unknown('transfers_without_notice');
    if (registered_on === undefined) return fail('no registration is recorded');
    return transfers_without_notice.length === 0
      ? pass()
      : fail(`no notice of transfer: ${transfers_without_notice.join('; ')}`);
  },
});

export const exclusionsLaidOut = rule({
  ...gate,
  id: 'CLAIM-07',
  title: 'Triggered exclusions are laid out',
  says: 'Exclusions of the document that recorded facts trigger are laid before the reviewer.',
  ...nothingLeft('exclusions_triggered', 'triggered'),
});

export const evidenceIsThere = rule({
  ...gate,
  id: 'CLAIM-08',
  title: 'The evidence is on file',
  severity: 'require',
  says:
    'Photos wide and close with a scale, taken from the ground, area affected, nearby sources, ' +
    'maintenance and touch-up record, and a sample or the retained panel are on file.',
  ...nothingLeft('claim_evidence_missing', 'not on file'),
});

export const asBuiltBesideApproved = rule({
  ...gate,
  id: 'CLAIM-09',
  title: 'As built beside as approved',
  says: 'What was built otherwise than approved is laid before the reviewer.',
  ...nothingLeft('as_built_differences', 'built otherwise than approved'),
});

export const CLAIM_RULES = [
  claimIsAboutSomething,
  termInForce,
  scaleIsNamed,
  chalkBeforeColorAfter,
  readingsAreComplete,
  transfersNoticed,
  exclusionsLaidOut,
  evidenceIsThere,
  asBuiltBesideApproved,
] as const;
