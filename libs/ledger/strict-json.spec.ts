import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { parseStrict } from './strict-json.js';

test.each<[string, string]>([
  ['{"a":1,"a":2}', 'the name "a" is given twice'],
  ['{"a":1,"\\u0061":2}', 'the name "a" is given twice'],
  ['"\\ud800"', 'a lone surrogate'],
  ['1e400', 'too large'],
  ['[1,]', 'a value is missing'],
  ['{"a":1,}', 'a string is missing'],
  ['01', 'more text after the value'],
  ['"a', 'not closed'],
  ['"a\nb"', 'not closed'],
  ['', 'a value is missing'],
  ['nul', 'a value is missing'],
  ['[1 2]', 'a closing bracket'],
  [`${'['.repeat(200)}${']'.repeat(200)}`, 'deeper than 100 levels'],
])('%s is refused', (text, message) => {
  expect(() => parseStrict(text)).toThrow(message);
});

test('a name such as __proto__ is only a name', () => {
  const value = parseStrict('{"__proto__":{"a":1}}');
  expect(Object.keys(value as object)).toEqual(['__proto__']);
});

test('what JSON.stringify writes reads as JSON.parse reads it', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.constantFrom(undefined, 1, 3), (value, indent) => {
      const text = JSON.stringify(value, undefined, indent);
      expect(parseStrict(text)).toEqual(JSON.parse(text));
    }),
  );
});
