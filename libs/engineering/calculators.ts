// Every calculator by its name, and how one input or a list of inputs goes through it. The command
// line and the HTTP route both end in `calculateAll`.

import type { Calculator } from './calculator.js';
import type { Fault, Step } from './check.js';
import { coatingCalculators } from './coating/calculators.js';
import { combinationsCalculators } from './combinations/calculators.js';
import { fastenersCalculators } from './fasteners/calculators.js';
import { hailCalculators } from './hail/calculators.js';
import { jsonSchema } from './input.js';
import { panelCalculators } from './panel/calculators.js';
import { snowCalculators } from './snow/calculators.js';
import { citationText } from './sources.js';
import { thermalCalculators } from './thermal/calculators.js';
import { windCalculators } from './wind/calculators.js';

export const calculators: readonly Calculator[] = [
  ...windCalculators,
  ...snowCalculators,
  ...combinationsCalculators,
  ...panelCalculators,
  ...fastenersCalculators,
  ...thermalCalculators,
  ...hailCalculators,
  ...coatingCalculators,
];

const BY_NAME: ReadonlyMap<string, Calculator> = new Map(
  calculators.map((each) => [each.name, each]),
);

export const calculatorNamed = (name: string): Calculator | undefined => BY_NAME.get(name);

/**
 * What came of an input. `results`: its output, an array where the input was one, in which a
 * refused element is `{faults}`; `anyRefused` tells whether there is one. `refused`: the faults
 * of a single input. `unknown`: no calculator has that name.
 */
export type Calculated =
  | { readonly outcome: 'results'; readonly output: unknown; readonly anyRefused: boolean }
  | { readonly outcome: 'refused'; readonly faults: readonly Fault[] }
  | { readonly outcome: 'unknown'; readonly message: string };

export interface CalculateOptions {
  /** Adds `steps` to every result. */
  readonly steps?: boolean;
}

/**
 * Calculates one input object or each of an array. Every result has its output keys at the top
 * level with `notes`, `cautions` and, when asked, `steps` beside them. Never throws for bad input.
 */
export function calculateAll(
  name: string,
  input: unknown,
  options: CalculateOptions = {},
): Calculated {
  const one = calculatorNamed(name);
  if (one === undefined) {
    const known = calculators.map((each) => each.name).join(', ');
    return { outcome: 'unknown', message: `There is no calculator "${name}". Known: ${known}.` };
  }
  if (!Array.isArray(input)) {
    const output = calculateOne(one, input, options);
    return 'faults' in output
      ? { outcome: 'refused', faults: output.faults }
      : { outcome: 'results', output: output.result, anyRefused: false };
  }
  let anyRefused = false;
  const output = input.map((each) => {
    const made = calculateOne(one, each, options);
    if (!('faults' in made)) return made.result;
    anyRefused = true;
    return made;
  });
  return { outcome: 'results', output, anyRefused };
}

function calculateOne(
  one: Calculator,
  input: unknown,
  { steps = false }: CalculateOptions,
): { readonly result: Record<string, unknown> } | { readonly faults: readonly Fault[] } {
  const made = one.calculate(input);
  if (!made.ok) return { faults: made.faults };
  return {
    result: {
      ...made.value,
      notes: made.notes,
      cautions: one.cautions,
      ...(steps ? { steps: made.steps.map(printedStep) } : {}),
    },
  };
}

const printedStep = ({ symbol, value, unit, formula, cite }: Step): Record<string, unknown> => ({
  symbol,
  value,
  unit,
  formula,
  clause: citationText(cite),
});

/** What a calculator takes, as JSON Schema 2020-12, and gives, key by key. */
export function calculatorSchema(one: Calculator): Record<string, unknown> {
  return {
    name: one.name,
    says: one.says,
    input: { $schema: 'https://json-schema.org/draft/2020-12/schema', ...jsonSchema(one.input) },
    output: {
      ...one.output,
      notes: 'what to know about this result',
      cautions: 'what always goes with such results',
    },
  };
}
