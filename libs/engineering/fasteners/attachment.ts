// Attachment of a panel against uplift: what one fastener carries at its spacing, and the spacing
// an uplift asks for. Clips only by entered test: their capacity is never calculated.

import { check, refused, result, step, type Check, type Outcome, type Step } from '../check.js';
import { cite, COMMON_PRACTICE } from '../sources.js';
import { inches, pounds, type Inches, type Pounds, type Psf } from '../units.js';
import {
  pullOver,
  PULLOVER_FORMULA,
  SCREW_OMEGA,
  SCREW_SOURCE,
  screwStrength,
  type ScrewEdition,
  type ScrewJoint,
} from './screw.js';
import { woodWithdrawal, type WoodConnection } from './wood-withdrawal.js';

const TRIBUTARY = cite('mechanics', 'tributary area');

/** Capacity of one fastener in tension, with the limit state that governs it. */
export interface FastenerCapacity {
  readonly capacity: Pounds;
  readonly governs: string;
}

/** A screw into steel: the lesser of allowable pull-out and pull-over (AISI S100 J4.4). */
export function screwCapacity(joint: ScrewJoint): Outcome<FastenerCapacity> {
  const strength = screwStrength(joint);
  if (!strength.ok) return strength;
  const { pullout, pullover } = strength.value;
  const out = pullout.allowable <= pullover.allowable;
  const value = {
    capacity: out ? pullout.allowable : pullover.allowable,
    governs: out ? 'pull-out of the support' : 'pull-over of the sheet',
  };
  return result(value, strength.steps, strength.notes);
}

/** The sheet beneath a head, for pull-over. */
export interface HeadSheet {
  readonly edition: ScrewEdition;
  readonly t1: Inches;
  readonly Fu1: ScrewJoint['Fu1'];
  readonly dw: Inches;
}

/** A fastener into wood: the lesser of withdrawal and pull-over of the sheet. */
export function woodCapacity(wood: WoodConnection, head: HeadSheet): Outcome<FastenerCapacity> {
  const held = woodWithdrawal(wood);
  if (!held.ok) return held;
  const { edition, t1, dw, Fu1 } = head;
  const Omega = SCREW_OMEGA[edition].pullover;
  const over = pounds(pullOver(edition, t1, dw, Fu1) / Omega);
  const formula = `${PULLOVER_FORMULA[edition]} / ${Omega}`;
  const source = cite(SCREW_SOURCE[edition], 'J4.4.2');
  const steps = [...held.steps, step('P_aov', over, 'lb', formula, source)];
  const wins = held.value <= over;
  const value = {
    capacity: wins ? held.value : over,
    governs: wins ? 'withdrawal from the wood' : 'pull-over of the sheet',
  };
  return result(value, steps, held.notes);
}

/** s = 144 P/(q b): inches between fasteners of capacity P under uplift q on width b. */
export function spacingNeeded(uplift: Psf, width: Inches, capacity: Pounds): Inches {
  return inches((144 * capacity) / (Math.abs(uplift) * width));
}

export function spacingStep(uplift: Psf, width: Inches, capacity: Pounds): Step {
  const needed = spacingNeeded(uplift, width, capacity);
  return step('s', needed, 'in', '144 P_a / (q b)', TRIBUTARY);
}

/** Force on one fastener, q s b/144, pounds. */
export function fastenerDemand(uplift: Psf, width: Inches, spacing: Inches): Pounds {
  return pounds((Math.abs(uplift) * width * spacing) / 144);
}

export interface Attachment {
  /** Magnitude or with the minus sign of suction: both mean away from the surface. */
  readonly uplift: Psf;
  readonly tributaryWidth: Inches;
  readonly spacing: Inches;
}

/** Demand on one fastener against its capacity. */
export function attachmentCheck(
  attachment: Attachment,
  fastener: FastenerCapacity,
  capacitySteps: readonly Step[],
): Check {
  const { uplift, tributaryWidth, spacing } = attachment;
  const demand = fastenerDemand(uplift, tributaryWidth, spacing);
  return check(fastener.governs, demand, fastener.capacity, 'lb', [
    ...capacitySteps,
    step('P', demand, 'lb', 'q s b / 144', TRIBUTARY),
    spacingStep(uplift, tributaryWidth, fastener.capacity),
  ]);
}

/** An entered capacity as it stands, with where it comes from. */
export function enteredCapacity(capacity: Pounds): Outcome<FastenerCapacity> {
  if (!(capacity > 0)) {
    return refused({ pointer: '/capacity_lb', message: 'must be over 0 lb' });
  }
  const steps = [step('P_a', capacity, 'lb', 'entered, allowable', COMMON_PRACTICE)];
  return result({ capacity, governs: 'entered capacity' }, steps);
}
