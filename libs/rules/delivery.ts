// From the supplier's acknowledgment to the finished roof: what came, which lot lies where, what
// the tear-off showed, what was covered, and what was built.

import { COMMON_PRACTICE } from '#engineering';
import { answeredYes, nothingLeft } from './outstanding.js';
import { fail, notApplicable, pass, rule, unknown } from './rule.js';

const gate = {
  version: 1,
  stage: 'delivery',
  class: 'house-policy',
  severity: 'refuse',
  cites: [COMMON_PRACTICE],
} as const;

export const acknowledgmentAgrees = rule({
  ...gate,
  id: 'DELIV-01',
  title: 'The acknowledgment agrees with the order',
  says: "The supplier's acknowledgment is compared with the order line by line.",
  ...nothingLeft('acknowledgment_differences', 'acknowledged otherwise than ordered'),
});

export const countAgrees = rule({
  ...gate,
  id: 'DELIV-02',
  title: 'What came is what was ordered',
  says: 'Every line is counted on receipt; what is short or over is settled.',
  ...nothingLeft('receipt_differences', 'count not settled'),
});

export const damageSettled = rule({
  ...gate,
  id: 'DELIV-03',
  title: 'Damage is settled',
  says: 'Damaged pieces are photographed, set aside and settled before panels are laid.',
  ...nothingLeft('damage_not_settled', 'damage not settled'),
});

export const lotRecorded = rule({
  ...gate,
  id: 'DELIV-04',
  title: 'Every plane has its coil or lot',
  severity: 'require',
  says: 'The coil or lot number of every plane is recorded; a claim cannot be read without it.',
  ...nothingLeft('planes_without_lot', 'no lot recorded'),
});

export const oneLotAPlane = rule({
  ...gate,
  id: 'DELIV-05',
  title: 'One visible plane, one lot',
  says: 'Coils and lots are not mixed on one visible plane unless the owner signs.',
  ...nothingLeft('planes_of_mixed_lots', "mixed lots without the owner's signature"),
});

export const storedDry = rule({
  ...gate,
  id: 'DELIV-06',
  title: 'Bundles are stored dry',
  class: 'guidance',
  severity: 'caution',
  says: 'Bundles lie tilted, ventilated and dry: a wet stack stains, and stains are excluded.',
  ...answeredYes('stored_dry', 'bundles are not stored dry and tilted'),
});

export const tearOffFirst = rule({
  ...gate,
  id: 'DELIV-07',
  title: 'Tear-off checkpoint before panels',
  class: 'physics',
  says:
    'On a reroof, panel laying is on hold until the tear-off checkpoint has confirmed the ' +
    'substrate; dry-in is allowed.',
  reads: ['reroof', 'tear_off_confirmed'],
  settings: {},
  check: ({ reroof, tear_off_confirmed }) => {
    if (reroof === undefined) return unknown('reroof');
    if (!reroof) return notApplicable('not a reroof');
    return tear_off_confirmed
      ? pass()
      : fail('the tear-off checkpoint has not confirmed the substrate: panel laying is on hold');
  },
});

export const coveredWorkShown = rule({
  ...gate,
  id: 'DELIV-08',
  title: 'Covered work is photographed',
  class: 'guidance',
  severity: 'caution',
  says: 'What the panels cover is photographed before: deck, underlayment, clips, fasteners.',
  ...nothingLeft('covered_work_without_photos', 'covered without photos'),
});

export const builtAsApproved = rule({
  ...gate,
  id: 'DELIV-09',
  title: 'Attachment is built as approved',
  class: 'physics',
  says: 'Spacing and kind of fasteners and clips as built are those of the decision, zone by zone.',
  ...nothingLeft('as_built_differences', 'built otherwise than approved'),
});

export const DELIVERY_RULES = [
  acknowledgmentAgrees,
  countAgrees,
  damageSettled,
  lotRecorded,
  oneLotAPlane,
  storedDry,
  tearOffFirst,
  coveredWorkShown,
  builtAsApproved,
] as const;
