// A step of a calculation as it is kept: numbers as decimal text, rounded once.

import { display, type Step } from '#engineering';
import type { StepRecord } from '../contract/evaluation.js';

export function stepRecord(step: Step): StepRecord {
  return {
    symbol: step.symbol,
    value: typeof step.value === 'number' ? display(step.value, 4) : step.value,
    unit: step.unit,
    formula: step.formula,
    cite: step.cite,
  };
}
