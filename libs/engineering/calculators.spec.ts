// What holds for every calculator: faults named all at once, no number and no exception for bad
// input, arrays in order.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { STRUCTURE_CAUTION } from './calculator.js';
import { calculateAll, calculators, calculatorSchema } from './calculators.js';
import type { Fault } from './check.js';

const faultsOf = (name: string, input: unknown): readonly Fault[] => {
  const made = calculateAll(name, input);
  return made.outcome === 'refused' ? made.faults : [];
};

describe.each(calculators.map((each) => [each.name, each] as const))('%s', (name, one) => {
  const required = Object.keys(one.input).filter((key) => !one.input[key]?.optional);

  test('names every missing key and an unknown one at once', () => {
    const pointers = faultsOf(name, { 'no such key': 1 }).map((each) => each.pointer);
    for (const key of [...required, 'no such key']) expect(pointers).toContain(`/${key}`);
  });

  test('refuses a value of the wrong kind for every key', () => {
    for (const key of Object.keys(one.input)) {
      for (const value of [null, 'zzz', { zzz: 1 }, NaN]) {
        const field = one.input[key];
        if (field?.kind === 'text' && value === 'zzz') continue;
        const pointers = faultsOf(name, { [key]: value }).map((each) => each.pointer);
        expect(pointers.some((each) => each.startsWith(`/${key}`))).toBe(true);
      }
    }
  });

  test('never throws, whatever comes in', () => {
    fc.assert(
      fc.property(fc.anything({ maxDepth: 3 }), (input) => {
        const made = calculateAll(name, input);
        if (made.outcome === 'refused') expect(made.faults.length).toBeGreaterThan(0);
        else expect(Array.isArray(input)).toBe(true);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test('says what it takes and gives', () => {
    const schema = calculatorSchema(one) as { input: { required?: string[] } };
    expect(schema.input.required ?? []).toEqual(required);
    expect(Object.values(one.output).every((says) => says.length > 0)).toBe(true);
  });
});

/** What speaks of no load, span, gauge or attachment: it carries the cautions of its own topic. */
const OF_NO_LOAD = new Set([
  'thermal',
  'hail',
  'colour-difference',
  'colour-convert',
  'coating-mass',
  'corrosion',
  'zinc-life',
]);

test.each(calculators.map((each) => [each.name, each] as const))(
  '%s has its cautions',
  (name, one) => {
    expect(one.cautions.includes(STRUCTURE_CAUTION)).toBe(!OF_NO_LOAD.has(name));
    expect(one.cautions.length).toBeGreaterThan(0);
  },
);

test('an unknown name is told from a refused input', () => {
  expect(calculateAll('no-such', {})).toMatchObject({ outcome: 'unknown' });
});

test('names are there once', () => {
  const names = calculators.map((each) => each.name);
  expect(new Set(names).size).toBe(names.length);
});

test('an array keeps its order and names what was refused in place', () => {
  const made = calculateAll('coating-mass', [{ designation: 'G90' }, {}, { designation: 'Z275' }]);
  expect(made).toMatchObject({
    outcome: 'results',
    anyRefused: true,
    output: [{ total_ozft2: 0.9 }, { faults: [{ pointer: '/designation' }] }, { total_gm2: 275 }],
  });
});
