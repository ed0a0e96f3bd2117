// A check as it is kept in the record: decimal text with units, its source and its steps. Whether it
// passes is exact; what is shown has four decimals and never hides an excess.

import { amount, cite, COMMON_PRACTICE, display } from '#engineering';
import type { CheckRecord, StepRecord } from '../contract/evaluation.js';

export function record(
  limitState: string,
  direction: 'inward' | 'outward',
  demand: number,
  capacity: number,
  source: string,
  calculated = false,
  steps: readonly StepRecord[] = [],
  unit = 'psf',
): CheckRecord {
  if (!(capacity > 0) || !Number.isFinite(demand)) {
    throw new Error(`${limitState}: a check needs a finite demand and a positive capacity`);
  }
  const asked = Math.abs(demand);
  const utilization = asked / capacity;
  const ratio = [
    {
      symbol: 'demand',
      value: display(asked, 4),
      unit,
      formula: GOVERNING[direction],
      cite: COMBINATIONS,
    },
    {
      symbol: 'capacity',
      value: display(capacity, 4),
      unit,
      formula: source,
      cite: COMMON_PRACTICE,
    },
    {
      symbol: 'utilization',
      value: display(utilization, 4),
      unit: '',
      formula: 'demand / capacity',
      cite: COMMON_PRACTICE,
    },
  ];
  return {
    limit_state: limitState,
    direction,
    demand: amount(demand, 2, unit),
    capacity: amount(capacity, 2, unit),
    utilization: shown(utilization),
    passes: utilization <= 1,
    source,
    calculated,
    steps: steps.length === 0 ? ratio : [...steps, ...ratio],
  };
}

const GOVERNING = {
  inward: 'governing combination, inward',
  outward: 'governing combination, outward',
} as const;
const COMBINATIONS = cite('asce-7-16', '2.4');

/** Four decimals, and never shown as 1.0000 where it is over. */
function shown(utilization: number): string {
  const text = utilization.toFixed(4);
  return utilization > 1 && Number(text) <= 1 ? '1.0001' : text;
}
