import { createContext, runInContext } from 'node:vm';
import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { canonical } from './canonical.js';
import { parseStrict } from './strict-json.js';

test('names are sorted by UTF-16 code units at every level, lists are not', () => {
  expect(canonical({ b: [3, { z: 1, a: '€' }], a: -0 })).toBe('{"a":0,"b":[3,{"a":"€","z":1}]}');
});

test.each<[string, unknown, string]>([
  ['undefined', { a: [{ b: undefined }] }, '/a/0/b: undefined is not JSON'],
  ['a function', { a: () => 1 }, '/a: function is not JSON'],
  ['a bigint', 1n, 'the value: bigint is not JSON'],
  ['a symbol', { a: Symbol('s') }, '/a: symbol is not JSON'],
  ['a name that is a symbol', { [Symbol('s')]: 1 }, 'only plain objects'],
  ['a Date', { a: new Date(0) }, '/a: only plain objects'],
  ['a Map', new Map(), 'only plain objects'],
  ['a class instance', Object.create({}), 'only plain objects'],
  ['a hole', { a: Array(2) }, '/a/0: undefined is not JSON'],
  ['not a number', [Number.NaN], '/0: NaN is not a JSON number'],
  ['infinity', { 'a/b~': Infinity }, '/a~1b~0: Infinity is not a JSON number'],
  ['a lone surrogate', { a: 'x\ud800' }, '/a: a lone surrogate'],
  ['a lone surrogate in a name', { '\udead': 1 }, 'a lone surrogate'],
])('requirement 5: %s is refused with its place', (_, value, message) => {
  expect(() => canonical(value)).toThrow(message);
});

test('a cycle is refused, not followed for ever', () => {
  const cycle: Record<string, unknown> = {};
  cycle['self'] = cycle;
  expect(() => canonical(cycle)).toThrow('deeper than 100 levels');
});

test('plain objects of another realm are plain', () => {
  const other: unknown = runInContext('({ b: 1, a: [2] })', createContext({}));
  expect(canonical(other)).toBe('{"a":[2],"b":1}');
});

test('reading back gives the same value, and writing it again the same text', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
      const text = canonical(value);
      expect(canonical(parseStrict(text))).toBe(text);
      expect(canonical(JSON.parse(text))).toBe(text);
    }),
  );
});
