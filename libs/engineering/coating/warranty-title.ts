// What a written warranty on a consumer product may call itself, and when its terms must be
// disclosed in one document. United States consumer law; an aid, no legal advice.

import type { Citation } from '../sources.js';
import { cite } from '../sources.js';

/** The tests of a full warranty, each true only when the text meets it. */
export interface FullWarrantyTests {
  /** Remedy within a reasonable time and without charge. 15 USC 2304(a)(1). */
  readonly remedyFreeInReasonableTime: boolean;
  /** No limit on how long implied warranties last. 15 USC 2304(a)(2). */
  readonly impliedWarrantiesUnlimited: boolean;
  /** Consequential damages not excluded, or excluded conspicuously on the face. 2304(a)(3). */
  readonly consequentialExclusionConspicuous: boolean;
  /** Refund or replacement after reasonable attempts fail. 15 USC 2304(a)(4). */
  readonly refundOrReplacement: boolean;
  /** No duty on the consumer beyond notice, unless shown reasonable. 15 USC 2304(b). */
  readonly noDutyBeyondNotice: boolean;
  /** Extends to whoever owns the product within the term. 15 USC 2304(b). */
  readonly extendsToEveryOwner: boolean;
  /** Not conditioned on a registration card. 16 CFR 700.7(b). */
  readonly noRegistrationCondition: boolean;
}

const TEST_CITES: Readonly<Record<keyof FullWarrantyTests, Citation>> = {
  remedyFreeInReasonableTime: cite('usc-15-2303', '2304(a)(1)'),
  impliedWarrantiesUnlimited: cite('usc-15-2303', '2304(a)(2)'),
  consequentialExclusionConspicuous: cite('usc-15-2303', '2304(a)(3)'),
  refundOrReplacement: cite('usc-15-2303', '2304(a)(4)'),
  noDutyBeyondNotice: cite('usc-15-2303', '2304(b)'),
  extendsToEveryOwner: cite('usc-15-2303', '2304(b)'),
  noRegistrationCondition: cite('cfr-16-700', '700.7(b)'),
};

/** The tests that are not met, each with its clause; none means the minimum standards are met. */
export function unmetFullWarrantyTests(
  tests: FullWarrantyTests,
): readonly { readonly test: keyof FullWarrantyTests; readonly cite: Citation }[] {
  return (Object.keys(TEST_CITES) as (keyof FullWarrantyTests)[])
    .filter((test) => !tests[test])
    .map((test) => ({ test, cite: TEST_CITES[test] }));
}

/**
 * The title: "full 10 year warranty" where every minimum standard is met, "limited warranty"
 * otherwise. A full warranty states its duration in the title: without one there is no full title.
 * 15 USC 2303(a).
 */
export function warrantyTitle(meetsMinimumStandards: boolean, durationYears?: number): string {
  if (!meetsMinimumStandards || durationYears === undefined) return 'limited warranty';
  return `full ${durationYears} year warranty`;
}

/** A title is required on consumer products of more than 10 dollars. 15 USC 2303(d). */
export const titleRequired = (costUsd: number): boolean => costUsd > 10;

/** One document must disclose the terms where the product costs more than 15 dollars. 701.3(a). */
export const disclosureRuleApplies = (costUsd: number): boolean => costUsd > 15;
