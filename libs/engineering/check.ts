// A calculation that can be printed: its steps, and a check as demand against capacity.
// Formulas are plain functions of quantities; only calculations build steps.

import type { Citation } from './sources.js';

export interface Step {
  /** The standard's own symbol, as plain text: "q_h", "GC_p". */
  readonly symbol: string;
  readonly value: number | string;
  readonly unit: string;
  /** The formula as text, with symbols: "0.00256 K_z K_zt K_d K_e V^2". */
  readonly formula: string;
  readonly cite: Citation;
}

export const step = (
  symbol: string,
  value: number | string,
  unit: string,
  formula: string,
  cite: Citation,
): Step => ({ symbol, value, unit, formula, cite });

/** Demand against capacity. `utilization` is never rounded; over 1 fails. */
export interface Check {
  readonly limitState: string;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  readonly utilization: number;
  readonly passes: boolean;
  readonly steps: readonly Step[];
}

export function check(
  limitState: string,
  demand: number,
  capacity: number,
  unit: string,
  steps: readonly Step[],
): Check {
  if (!(capacity > 0) || !Number.isFinite(demand)) {
    throw new Error(`${limitState}: a check needs a finite demand and a positive capacity`);
  }
  const utilization = Math.abs(demand) / capacity;
  return { limitState, demand, capacity, unit, utilization, passes: utilization <= 1, steps };
}

/** What is wrong with an input: a JSON pointer to the place and a sentence that says what to do. */
export interface Fault {
  readonly pointer: string;
  readonly message: string;
}

/** A result with its steps and notes, or every fault at once and no number. */
export type Outcome<T> =
  | {
      readonly ok: true;
      readonly value: T;
      readonly steps: readonly Step[];
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const result = <T>(
  value: T,
  steps: readonly Step[] = [],
  notes: readonly string[] = [],
): Outcome<T> => ({ ok: true, value, steps, notes });

export const refused = (...faults: readonly Fault[]): Outcome<never> => ({ ok: false, faults });

/** The note that marks a figure whose standard's text has not been read (rule HAZ-02). */
export const TO_BE_CONFIRMED = 'edition text to be confirmed';
