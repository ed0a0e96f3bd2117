// The faces every paper is set in, and words made printable in them.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { coverageOf } from './glyphs.js';

const FACES = [
  'DejaVuSansCondensed',
  'DejaVuSansCondensed-Bold',
  'DejaVuSansCondensed-Oblique',
  'DejaVuSans',
  'DejaVuSans-Bold',
  'DejaVuSansMono',
] as const;

const { resolve } = createRequire(import.meta.url);

export const FONTS: readonly Buffer[] = FACES.map((face) =>
  readFileSync(resolve(`dejavu-fonts-ttf/ttf/${face}.ttf`)),
);

const COVERED = FONTS.map(coverageOf).reduce(
  (all, each) => new Set([...all].filter((code) => each.has(code))),
);

/** Private-use code points, which an archival PDF must not hold. */
const PRIVATE = /[\u{e000}-\u{f8ff}\u{f0000}-\u{10ffff}]/u;

/**
 * Words with every letter that no face can print shown as its code point, "[U+738B]"; line breaks
 * and tabs stay. The attached JSON always holds the original.
 */
export function printable(words: string): string {
  let out = '';
  for (const letter of words.normalize('NFC')) {
    const code = letter.codePointAt(0) ?? 0;
    const plain =
      letter === '\n' ||
      letter === '\t' ||
      (code >= 0x20 && COVERED.has(code) && !PRIVATE.test(letter));
    out += plain ? letter : `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`;
  }
  return out;
}

/** The same for every text inside plain data; keys are ours and stay. */
export function printableData(data: unknown): unknown {
  if (typeof data === 'string') return printable(data);
  if (Array.isArray(data)) return data.map(printableData);
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, printableData(value)]),
  );
}
