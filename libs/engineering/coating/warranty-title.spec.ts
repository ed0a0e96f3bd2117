// Titles of written warranties and the thresholds of the law.

import { expect, test } from '@jest/globals';
import {
  disclosureRuleApplies,
  titleRequired,
  unmetFullWarrantyTests,
  warrantyTitle,
  type FullWarrantyTests,
} from './warranty-title.js';

const ALL: FullWarrantyTests = {
  remedyFreeInReasonableTime: true,
  impliedWarrantiesUnlimited: true,
  consequentialExclusionConspicuous: true,
  refundOrReplacement: true,
  noDutyBeyondNotice: true,
  extendsToEveryOwner: true,
  noRegistrationCondition: true,
};

test('one unmet test is named with its clause and forbids the full title', () => {
  expect(unmetFullWarrantyTests(ALL)).toEqual([]);
  for (const test of Object.keys(ALL) as (keyof FullWarrantyTests)[]) {
    const unmet = unmetFullWarrantyTests({ ...ALL, [test]: false });
    expect(unmet.map((each) => each.test)).toEqual([test]);
    expect(unmet[0]?.cite.where).toMatch(/2304|700/);
  }
});

test('the full title states its duration', () => {
  expect(warrantyTitle(true, 10)).toBe('full 10 year warranty');
  expect(warrantyTitle(true)).toBe('limited warranty');
  expect(warrantyTitle(false, 10)).toBe('limited warranty');
});

test('thresholds are "more than"', () => {
  expect([titleRequired(10), titleRequired(10.01)]).toEqual([false, true]);
  expect([disclosureRuleApplies(15), disclosureRuleApplies(15.01)]).toEqual([false, true]);
});
