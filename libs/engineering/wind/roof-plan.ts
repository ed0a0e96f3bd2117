// Which zone plan belongs to a roof, and how its planes are laid out for it.

import type { AsceEdition } from '../sources.js';
import type { Degrees } from '../units.js';
import type { RoofShape } from './roof-figure.js';
import * as plans from './zone-plans.table.js';
import type { ZonePlan } from './zone-plans.table.js';

/** Low roofs are laid out as one flat plane, whatever their shape. Limits are inside a class. */
export function planFor(
  edition: AsceEdition,
  shape: RoofShape,
  theta: Degrees,
): { readonly plan: ZonePlan; readonly laidAs: RoofShape } {
  const upTo = (edge: number): boolean => theta <= edge + 1e-6;
  if (shape === 'monoslope' && !upTo(3)) {
    return { plan: upTo(10) ? plans.PLAN_5A : plans.PLAN_5B, laidAs: 'monoslope' };
  }
  if (upTo(7)) {
    return { plan: edition === '7-10' ? plans.PLAN_7_10_FLAT : plans.PLAN_2A, laidAs: 'flat' };
  }
  return { plan: shape === 'hip' ? HIP[edition] : gablePlan(edition, upTo(27)), laidAs: shape };
}

const HIP: Record<AsceEdition, ZonePlan> = {
  '7-10': plans.PLAN_7_10_HIP,
  '7-16': plans.PLAN_7_16_HIP,
  '7-22': plans.PLAN_7_22_HIP,
};

function gablePlan(edition: AsceEdition, to27: boolean): ZonePlan {
  if (edition === '7-10') return plans.PLAN_7_10_GABLE;
  if (edition === '7-16') return plans.PLAN_7_16_GABLE;
  return to27 ? plans.PLAN_7_22_GABLE : plans.PLAN_7_22_STEEP_GABLE;
}
