// Point 5: every pair of colors that the look puts together is far enough apart, light and dark,
// computed from the values themselves.

import { readFileSync } from 'node:fs';
import { expect, test } from '@jest/globals';

test('5: every pair of colors of the look is far enough apart, light and dark', () => {
  const css = readFileSync('apps/office/style/values.css', 'utf8');
  const blocks = [css.slice(0, css.indexOf('@media')), css.slice(css.indexOf("data-look='dark'"))];
  for (const block of blocks) {
    const value = (name: string) => new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(block)?.[1] ?? '';
    for (const [text, under] of TEXT_PAIRS)
      expect([text, under, contrast(value(text), value(under)) >= 4.5]).toEqual([
        text,
        under,
        true,
      ]);
    for (const [edge, under] of EDGE_PAIRS)
      expect([edge, under, contrast(value(edge), value(under)) >= 3]).toEqual([edge, under, true]);
  }
});

const TEXT_PAIRS = [
  ['ink', 'page'],
  ['ink', 'sheet'],
  ['ink', 'sunk'],
  ['quiet', 'page'],
  ['quiet', 'sheet'],
  ['accent', 'page'],
  ['accent', 'sheet'],
  ['on-accent', 'accent'],
  ['ready', 'ready-soft'],
  ['blocked', 'blocked-soft'],
  ['waiting', 'waiting-soft'],
  ['plain', 'plain-soft'],
  ['ink', 'accent-soft'],
  ['ink', 'waiting-soft'],
  ['blocked', 'sheet'],
] as const;
const EDGE_PAIRS = [
  ['edge', 'sheet'],
  ['edge', 'page'],
  ['focus', 'page'],
  ['focus', 'sheet'],
  ['accent', 'sheet'],
] as const;

/** WCAG 2.2 contrast ratio of two colors like #0d5560. */
function contrast(a: string, b: string): number {
  const light = (color: string) => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5]
      .map((i) => Number.parseInt(color.slice(i, i + 2), 16) / 255)
      .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [x, y] = [light(a), light(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}
