// A screw joint as calculators take it.

import type { Shape } from '../input.js';
import { inches, ksi } from '../units.js';
import { SCREW_EDITIONS, type ScrewEdition, type ScrewJoint } from './screw.js';

export const positive = (says: string, unit: string) =>
  ({ kind: 'number', says, unit, above: 0 }) as const;

export const JOINT = {
  edition: { kind: 'choice', of: SCREW_EDITIONS, says: 'edition of AISI S100' },
  d_in: positive('nominal screw diameter, 0.08 to 0.25', 'in'),
  t1_in: positive('sheet beneath the head', 'in'),
  t2_in: positive('member not beneath the head', 'in'),
  Fu1_ksi: positive('tensile strength of t1 for design', 'ksi'),
  Fu2_ksi: positive('tensile strength of t2 for design', 'ksi'),
  dw_in: positive('larger of head and washer diameter', 'in'),
  tc_in: { ...positive('lesser of penetration and t2; t2 unless given', 'in'), optional: true },
} as const satisfies Shape;

export interface JointInput {
  readonly edition: string;
  readonly d_in: number;
  readonly t1_in: number;
  readonly t2_in: number;
  readonly Fu1_ksi: number;
  readonly Fu2_ksi: number;
  readonly dw_in: number;
  readonly tc_in?: number | undefined;
}

export const joint = (i: JointInput): ScrewJoint => ({
  edition: i.edition as ScrewEdition,
  d: inches(i.d_in),
  t1: inches(i.t1_in),
  t2: inches(i.t2_in),
  Fu1: ksi(i.Fu1_ksi),
  Fu2: ksi(i.Fu2_ksi),
  dw: inches(i.dw_in),
  ...(i.tc_in === undefined ? {} : { tc: inches(i.tc_in) }),
});
