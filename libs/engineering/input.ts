// What a calculator takes: fields with units and ranges, read strictly. Unknown keys, missing keys
// and values outside their range are all named at once; nothing is repaired and nothing defaults
// without saying so. The same description gives the JSON Schema.

import { refused, result, type Fault, type Outcome } from './check.js';

interface Described {
  readonly says: string;
  readonly optional?: true;
}
export interface NumberField extends Described {
  readonly kind: 'number';
  readonly unit: string;
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly below?: number;
  readonly whole?: true;
}
export interface ChoiceField extends Described {
  readonly kind: 'choice';
  readonly of: readonly (string | number)[];
}
export interface FlagField extends Described {
  readonly kind: 'flag';
}
export interface TextField extends Described {
  readonly kind: 'text';
}
export interface ListField extends Described {
  readonly kind: 'list';
  readonly of: Field;
  readonly least?: number;
  readonly most?: number;
}
export interface GroupField extends Described {
  readonly kind: 'group';
  readonly fields: Shape;
}
/** One of several groups, told apart by their keys: the one that most of the given keys belong to. */
export interface EitherField extends Described {
  readonly kind: 'either';
  readonly of: readonly Shape[];
}
export type Field =
  NumberField | ChoiceField | FlagField | TextField | ListField | GroupField | EitherField;
export type Shape = { readonly [key: string]: Field };

type ValueOf<F extends Field> = F extends NumberField
  ? number
  : F extends ChoiceField
    ? F['of'][number]
    : F extends FlagField
      ? boolean
      : F extends TextField
        ? string
        : F extends ListField
          ? readonly ValueOf<F['of']>[]
          : F extends GroupField
            ? Input<F['fields']>
            : F extends EitherField
              ? InputOfAny<F['of'][number]>
              : never;

type InputOfAny<S extends Shape> = S extends Shape ? Input<S> : never;

type OptionalKeys<S extends Shape> = {
  [K in keyof S]: S[K] extends { optional: true } ? K : never;
}[keyof S];

/** The checked value of a shape. */
export type Input<S extends Shape> = {
  readonly [K in Exclude<keyof S, OptionalKeys<S>>]: ValueOf<S[K]>;
} & { readonly [K in OptionalKeys<S>]?: ValueOf<S[K]> };

export function readInput<const S extends Shape>(shape: S, value: unknown): Outcome<Input<S>> {
  const faults: Fault[] = [];
  const read = readGroup(shape, value, '', faults);
  return faults.length > 0 ? refused(...faults) : result(read as Input<S>);
}

function readGroup(shape: Shape, value: unknown, at: string, faults: Fault[]): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    faults.push({ pointer: at, message: 'must be an object' });
    return undefined;
  }
  const given = value as Record<string, unknown>;
  for (const key of Object.keys(given)) {
    if (!Object.hasOwn(shape, key)) {
      faults.push({
        pointer: `${at}/${key}`,
        message: `is not known here; known: ${Object.keys(shape).join(', ')}`,
      });
    }
  }
  const out: Record<string, unknown> = {};
  for (const [key, field] of Object.entries(shape)) {
    if (given[key] === undefined) {
      if (!field.optional)
        faults.push({ pointer: `${at}/${key}`, message: `is missing: ${field.says}` });
      continue;
    }
    out[key] = readField(field, given[key], `${at}/${key}`, faults);
  }
  return out;
}

function readField(field: Field, value: unknown, at: string, faults: Fault[]): unknown {
  const wrong = (message: string): undefined => {
    faults.push({ pointer: at, message });
    return undefined;
  };
  switch (field.kind) {
    case 'number': {
      if (typeof value !== 'number' || !Number.isFinite(value)) {
        return wrong(`must be a number${field.unit ? ` in ${field.unit}` : ''}`);
      }
      const range = rangeFault(field, value);
      return range ? wrong(range) : value;
    }
    case 'choice':
      return field.of.includes(value as string | number)
        ? value
        : wrong(`must be one of ${field.of.join(', ')}`);
    case 'flag':
      return typeof value === 'boolean' ? value : wrong('must be true or false');
    case 'text':
      return typeof value === 'string' && value.trim() !== ''
        ? value
        : wrong('must be a text that is not empty');
    case 'list': {
      if (!Array.isArray(value)) return wrong('must be a list');
      if (field.least !== undefined && value.length < field.least)
        wrong(`needs at least ${field.least}`);
      if (field.most !== undefined && value.length > field.most)
        wrong(`takes at most ${field.most}`);
      return value.map((each, i) => readField(field.of, each, `${at}/${i}`, faults));
    }
    case 'group':
      return readGroup(field.fields, value, at, faults);
    case 'either': {
      const keys = typeof value === 'object' && value !== null ? Object.keys(value) : [];
      const named = (shape: Shape): number =>
        keys.filter((key) => Object.hasOwn(shape, key)).length;
      const most = Math.max(...field.of.map(named));
      const meant = most > 0 ? field.of.find((shape) => named(shape) === most) : undefined;
      if (meant !== undefined) return readGroup(meant, value, at, faults);
      const known = field.of.map((shape) => `{${Object.keys(shape).join(', ')}}`);
      return wrong(`must be ${known.join(' or ')}`);
    }
  }
}

/** Far outside every quantity of this trade, in any unit used here; within, no formula overflows. */
const MAGNITUDE = { least: 1e-30, most: 1e9 } as const;

function rangeFault(field: NumberField, value: number): string | undefined {
  const u = field.unit ? ` ${field.unit}` : '';
  if (field.whole && !Number.isInteger(value)) return 'must be a whole number';
  if (field.least !== undefined && value < field.least)
    return `must be at least ${field.least}${u}`;
  if (field.above !== undefined && value <= field.above) return `must be over ${field.above}${u}`;
  if (field.most !== undefined && value > field.most) return `must be at most ${field.most}${u}`;
  if (field.below !== undefined && value >= field.below) return `must be under ${field.below}${u}`;
  if (Math.abs(value) > MAGNITUDE.most) return `must be within ${MAGNITUDE.most}${u} either way`;
  if (value !== 0 && Math.abs(value) < MAGNITUDE.least) {
    return `must be 0 or at least ${MAGNITUDE.least}${u}`;
  }
  return undefined;
}

/** The shape as JSON Schema (2020-12). */
export function jsonSchema(shape: Shape): Record<string, unknown> {
  const required = Object.entries(shape)
    .filter(([, f]) => !f.optional)
    .map(([k]) => k);
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(shape).map(([k, f]) => [k, fieldSchema(f)])),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  };
}

function fieldSchema(field: Field): Record<string, unknown> {
  const description =
    field.kind === 'number' && field.unit ? `${field.says} (${field.unit})` : field.says;
  switch (field.kind) {
    case 'number':
      return {
        type: field.whole ? 'integer' : 'number',
        description,
        ...(field.above !== undefined
          ? { exclusiveMinimum: field.above }
          : { minimum: field.least ?? -MAGNITUDE.most }),
        ...(field.below !== undefined
          ? { exclusiveMaximum: field.below }
          : { maximum: field.most ?? MAGNITUDE.most }),
      };
    case 'choice':
      return { enum: [...field.of], description };
    case 'flag':
      return { type: 'boolean', description };
    case 'text':
      return { type: 'string', minLength: 1, description };
    case 'list':
      return {
        type: 'array',
        items: fieldSchema(field.of),
        description,
        ...(field.least !== undefined ? { minItems: field.least } : {}),
        ...(field.most !== undefined ? { maxItems: field.most } : {}),
      };
    case 'group':
      return { ...jsonSchema(field.fields), description };
    case 'either':
      return { oneOf: field.of.map(jsonSchema), description };
  }
}
