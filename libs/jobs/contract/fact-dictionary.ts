// The fact dictionary's use: a path names one fact of one thing ("site/exposure", "building/b1/width",
// "surface/s1/slope"), and a value is checked against what its fact allows.

import { FACTS, type FactDefinition, type FactOn } from './facts.table.js';

export { FACTS, type FactDefinition, type FactKind, type FactOn } from './facts.table.js';

export type FactName = keyof typeof FACTS;
export const FACT_NAMES = Object.keys(FACTS) as readonly FactName[];
export const factDefinition = (name: FactName): FactDefinition => FACTS[name];

/** The value of a fact as it is recorded. */
export type Spacing = { readonly zone?: string | undefined; readonly v: string };
export type FactValue =
  | { readonly v: string; readonly u: string }
  | string
  | boolean
  | readonly string[]
  | readonly Spacing[];

export type Path = string;
export function factPath(on: FactOn, id: string | null, name: FactName): Path {
  return on === 'site' || on === 'job' ? `${on}/${name}` : `${on}/${id}/${name}`;
}
export const contentPath = (surface: string, stage: string, field: string): Path =>
  `surface/${surface}/${stage}/${field}`;

/** Why a value is not one of this fact, in a sentence; undefined where it is. */
export function factValueFault(name: FactName, value: unknown): string | undefined {
  const definition = factDefinition(name);
  switch (definition.kind) {
    case 'amount':
      return amountFault(value, definition);
    case 'choice':
      return definition.of.includes(value as string)
        ? undefined
        : `must be one of ${definition.of.join(', ')}`;
    case 'flag':
      return typeof value === 'boolean' ? undefined : 'must be true or false';
    case 'text':
      return typeof value === 'string' && value.trim() !== '' ? undefined : 'must be a text';
    case 'day':
      return typeof value === 'string' &&
        /^\d{4}-\d\d-\d\d$/.test(value) &&
        !Number.isNaN(Date.parse(value))
        ? undefined
        : 'must be a date like 2026-02-14';
    case 'choices':
      return Array.isArray(value) &&
        value.every((each) => definition.of.includes(each as string)) &&
        new Set(value).size === value.length
        ? undefined
        : `must list some of ${definition.of.join(', ')}, each once`;
    case 'spacings': {
      if (!Array.isArray(value) || value.length === 0) return 'must list at least one spacing';
      const faults = value.map((each: { v?: unknown }) =>
        amountFault({ v: each?.v, u: definition.unit }, definition),
      );
      const bad = faults.findIndex((fault) => fault !== undefined);
      return bad < 0 ? undefined : `line ${bad + 1} ${faults[bad]}`;
    }
  }
}

function amountFault(
  value: unknown,
  { unit, least, most }: { unit: string; least: number; most: number },
): string | undefined {
  const given = value as { v?: unknown; u?: unknown } | null;
  if (typeof given !== 'object' || given === null || given.u !== unit)
    return `must be an amount in ${unit}`;
  const number =
    typeof given.v === 'string' && /^-?\d+(\.\d+)?$/.test(given.v) ? Number(given.v) : NaN;
  if (!Number.isFinite(number)) return `must be a decimal number in ${unit}`;
  return number >= least && number <= most
    ? undefined
    : `must be between ${least} and ${most} ${unit}`;
}
