// Faults of bad input: every one, each with its pointer.

import { expect, test } from '@jest/globals';
import { z } from 'zod';
import { Command } from '#jobs/contract';
import { Problem } from '../problems.js';
import { Checked } from './checked.js';

const check = (schema: z.ZodType, value: unknown, type: 'body' | 'query' = 'body'): unknown => {
  try {
    return new Checked().transform(value, {
      type,
      metatype: undefined,
      data: undefined,
      schema,
    } as never);
  } catch (error) {
    return (error as Problem).details.faults?.map(({ pointer }) => pointer);
  }
};

test('all faults are named at once, with RFC 6901 pointers', () => {
  const schema = z.strictObject({ 'a/b': z.string(), list: z.array(z.object({ n: z.number() })) });
  expect(check(schema, { 'a/b': 1, list: [{ n: 'x' }], more: 1 })).toEqual([
    '/a~1b',
    '/list/0/n',
    '/more',
  ]);
});

test('of several shapes the one nearly met is spoken of', () => {
  const command = {
    type: 'assess-hazards',
    surface: 's1',
    hazards: { wind: { method: 'entered' }, snow: { method: 'x' } },
  };
  expect(check(Command, command)).toEqual(
    expect.arrayContaining(['/hazards/wind/basis', '/hazards/wind/zones', '/hazards/snow/method']),
  );
});

test('a query names its place', () => {
  expect(check(z.object({ size: z.coerce.number().max(200) }), { size: '500' }, 'query')).toEqual([
    '/query/size',
  ]);
});

test('NUL is refused wherever it stands', () => {
  expect(check(z.unknown(), { a: ['x\0'] })).toEqual(['/a/0']);
  expect(check(z.unknown(), { 'k\0': 1 })).toEqual(['']);
});

test('what has no schema passes as it is', () => {
  expect(
    new Checked().transform(7, { type: 'body', metatype: undefined, data: undefined } as never),
  ).toBe(7);
});
