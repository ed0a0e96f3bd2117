// Values from a JSON Schema, and the same with something hostile in one place.

import fc from 'fast-check';

export interface Schema {
  readonly [key: string]: unknown;
  readonly $ref?: string;
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly pattern?: string;
  readonly format?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
}
export type Components = Readonly<Record<string, Schema>>;

const LONGEST = 40;

/** Values that a schema allows, as far as it is written; deep ones get small. */
export function fromSchema(
  schema: Schema,
  components: Components,
  depth = 0,
): fc.Arbitrary<unknown> {
  if (schema.$ref)
    return fromSchema(components[schema.$ref.split('/').at(-1) ?? ''] ?? {}, components, depth);
  const among = schema.anyOf ?? schema.oneOf;
  if (among) return fc.oneof(...among.map((each) => fromSchema(each, components, depth)));
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  switch (schema.type) {
    case 'object':
      return objects(schema, components, depth);
    case 'array': {
      const least = schema.minItems ?? 0;
      return fc.array(fromSchema(schema.items ?? {}, components, depth + 1), {
        minLength: least,
        maxLength: least + (depth > 2 ? 0 : 2),
      });
    }
    case 'string':
      return strings(schema);
    case 'integer':
      return fc.integer({
        min: Math.max(schema.minimum ?? -1000, -1e6),
        max: Math.min(schema.maximum ?? 1000, 1e6),
      });
    case 'number':
      return fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 });
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.jsonValue({ maxDepth: 1 });
  }
}

function objects(schema: Schema, components: Components, depth: number): fc.Arbitrary<unknown> {
  const entries = Object.entries(schema.properties ?? {});
  if (entries.length === 0 && typeof schema.additionalProperties === 'object') {
    return fc.dictionary(
      fc.string({ maxLength: 8 }),
      fromSchema(schema.additionalProperties, components, depth + 1),
      { maxKeys: 3 },
    );
  }
  const required = entries.filter(([key]) => schema.required?.includes(key)).map(([key]) => key);
  const fields = Object.fromEntries(
    entries.map(([key, each]) => [key, fromSchema(each, components, depth + 1)]),
  );
  return fc.record(fields, { requiredKeys: required });
}

function strings(schema: Schema): fc.Arbitrary<string> {
  const range = {
    minLength: Math.min(schema.minLength ?? 0, LONGEST),
    maxLength: Math.min(schema.maxLength ?? LONGEST, LONGEST),
  };
  switch (schema.format) {
    case 'uuid':
      return fc.uuid();
    case 'email':
      return fc.emailAddress();
    case 'date':
      return fc
        .date({ min: new Date('1900-01-02'), max: new Date('2100-01-01'), noInvalidDate: true })
        .map((date) => date.toISOString().slice(0, 10));
    case 'date-time':
      return fc
        .date({ min: new Date('1900-01-02'), max: new Date('2100-01-01'), noInvalidDate: true })
        .map((date) => date.toISOString());
  }
  if (schema.pattern !== undefined)
    return fc.stringMatching(new RegExp(schema.pattern), { size: 'small' });
  return fc.string({ ...range, unit: 'grapheme' });
}

const HOSTILE: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    0,
    -1,
    1e308,
    -0,
    '',
    ' ',
    'x'.repeat(5000),
    [],
    {},
    [[[[[]]]]],
    '\u0000',
    'a\u0000b',
    '\u202e',
    "'; DROP TABLE job_row; --",
    '{"a":1}',
    '../../etc/passwd',
    '%00',
    '=1+1',
    '0000-01-01',
    '9999-12-31',
    '0001-01-01T00:00:00Z',
    '2026-02-30',
    '1e999',
    '-0',
    'NaN',
    '𝟙',
    JSON.parse('{"__proto__": {"polluted": true}, "constructor": {"prototype": {}}}'),
  ),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.jsonValue({ maxDepth: 2 }),
);

/** The value as it is, or with one of its parts replaced, added or left out. */
export function perhapsHostile(values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  return fc.oneof(
    { weight: 2, arbitrary: values },
    {
      weight: 3,
      arbitrary: fc
        .tuple(values, fc.nat(1000), HOSTILE)
        .map(([value, at, bad]) => replaced(value, at, bad)),
    },
    { weight: 1, arbitrary: HOSTILE },
  );
}

function replaced(value: unknown, at: number, bad: unknown): unknown {
  const places = placesIn(value);
  const place = places[at % places.length] ?? [];
  return put(value, place, bad);
}

const placesIn = (value: unknown): readonly (readonly string[])[] =>
  typeof value !== 'object' || value === null
    ? [[]]
    : [
        [],
        ...Object.entries(value).flatMap(([key, each]) =>
          placesIn(each).map((rest) => [key, ...rest]),
        ),
      ];

function put(value: unknown, [key, ...rest]: readonly string[], bad: unknown): unknown {
  if (key === undefined) return bad;
  if (Array.isArray(value))
    return value.map((each, i) => (String(i) === key ? put(each, rest, bad) : (each as unknown)));
  const given = value as Readonly<Record<string, unknown>>;
  return { ...given, [key]: put(given[key], rest, bad) };
}
