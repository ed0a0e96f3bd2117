import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { formatMicros, normalTime, parseMicros } from './time.js';

const micros = fc.integer({ min: -30_000_000_000_000_000 + 3e15, max: 9_000_000_000_000_000 });

test('a time is read back from its text, and texts sort as times do', () => {
  fc.assert(
    fc.property(micros, micros, (a, b) => {
      expect(parseMicros(formatMicros(a))).toBe(a);
      expect(formatMicros(a) < formatMicros(b)).toBe(a < b);
    }),
  );
});

test.each([
  ['2026-11-25T08:00:00Z', '2026-11-25T08:00:00.000000Z'],
  ['2026-11-25T08:00:00.5Z', '2026-11-25T08:00:00.500000Z'],
  ['2024-02-29T23:59:59.000001Z', '2024-02-29T23:59:59.000001Z'],
])('%s is kept as %s', (text, normal) => {
  expect(normalTime(text)).toBe(normal);
});

test.each([
  '2026-02-29T00:00:00Z',
  '2026-11-25T24:00:00Z',
  '2026-11-25T08:00:60Z',
  '2026-11-25T08:00:00',
  '2026-11-25T08:00:00+00:00',
  '2026-11-25 08:00:00Z',
  '2026-11-25T08:00:00.1234567Z',
  '0026-11-25T08:00:00Z',
  '',
])('"%s" is not a time', (text) => {
  expect(() => parseMicros(text)).toThrow(RangeError);
});
