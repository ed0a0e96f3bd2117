// One named calculation of the calculator: what it takes, what it gives, and how it runs.
// Topics export theirs in `calculators.ts`; the registry in index.ts collects them.

import { refused, type Fault, type Outcome } from './check.js';
import { readInput, type Input, type Shape } from './input.js';

export interface Calculator {
  /** The literal name of `calc NAME`. */
  readonly name: string;
  readonly says: string;
  readonly input: Shape;
  /** Key → what it is, for `--schema`. Keys end in their unit. */
  readonly output: { readonly [key: string]: string };
  readonly cautions: readonly string[];
  /** Reads the input strictly, then calculates. Never throws for bad input. */
  readonly calculate: (input: unknown) => Outcome<Record<string, unknown>>;
}

export function calculator<const S extends Shape>(definition: {
  readonly name: string;
  readonly says: string;
  readonly input: S;
  readonly output: { readonly [key: string]: string };
  readonly cautions?: readonly string[];
  /** Pairs of optional keys of which exactly one is given. */
  readonly either?: readonly (readonly [keyof S & string, keyof S & string])[];
  readonly run: (input: Input<S>) => Outcome<Record<string, unknown>>;
}): Calculator {
  const { name, says, input, output, cautions = [], either = [], run } = definition;
  return {
    name,
    says,
    input,
    output,
    cautions,
    calculate: (value) => {
      const read = readInput(input, value);
      const faults = either.flatMap((pair) => notOneOf(pair, value));
      if (read.ok && faults.length === 0) return run(read.value);
      return refused(...(read.ok ? [] : read.faults), ...faults);
    },
  };
}

function notOneOf([one, other]: readonly [string, string], value: unknown): Fault[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  const given = [one, other].filter((key) => (value as Record<string, unknown>)[key] !== undefined);
  if (given.length === 1) return [];
  return [{ pointer: `/${one}`, message: `needs exactly one of ${one} and ${other}` }];
}

/** The caution that goes with every load, span, gauge and attachment result. */
export const STRUCTURE_CAUTION =
  'An office aid. Local code and the authority having jurisdiction govern and give the wind and snow values; what spans needs a licensed engineer; a panel that passes is not thereby walkable.';

/** One line of the coverage page: a clause, what is done of it and by which function. */
export interface Covered {
  readonly clause: string;
  readonly does: string;
  readonly function: string;
  /** Topics of its outside cases, in tests/standards/cases; several where a case goes through more. */
  readonly cases?: readonly string[];
  /** What the clause also asks and is knowingly not done. */
  readonly left_out?: string;
  /** What has not been confirmed against the standard's own text. */
  readonly unconfirmed?: string;
}
