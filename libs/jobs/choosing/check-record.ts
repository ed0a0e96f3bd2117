// A check as it is kept in the record: decimal text with units, its source and its steps. Whether it
// passes is exact; what is shown has four decimals and never hides an excess.

import { amount, check, cite, COMMON_PRACTICE, step, type Step } from '#engineering';
import type { CheckRecord } from '../contract/evaluation.js';
import { stepRecord } from './step-record.js';

export function record(
  limitState: string,
  direction: 'inward' | 'outward',
  demand: number,
  capacity: number,
  source: string,
  calculated = false,
  steps: readonly Step[] = [],
  unit = 'psf',
): CheckRecord {
  const made = check(limitState, demand, capacity, unit, [
    ...steps,
    step('demand', Math.abs(demand), unit, `governing combination, ${direction}`, cite('asce-7-16', '2.4')),
    step('capacity', capacity, unit, source, COMMON_PRACTICE),
    step('utilization', Math.abs(demand) / capacity, '', 'demand / capacity', COMMON_PRACTICE),
  ]);
  return {
    limit_state: limitState,
    direction,
    demand: amount(demand, 2, unit),
    capacity: amount(capacity, 2, unit),
    utilization: shown(made.utilization),
    passes: made.passes,
    source,
    calculated,
    steps: made.steps.map(stepRecord),
  };
}

/** Four decimals, and never shown as 1.0000 where it is over. */
function shown(utilization: number): string {
  const text = utilization.toFixed(4);
  return utilization > 1 && Number(text) <= 1 ? '1.0001' : text;
}

