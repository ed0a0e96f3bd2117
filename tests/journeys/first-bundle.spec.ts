// What a browser loads before the first page can show: under 250 kB gzipped, styles included.

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@jest/globals';

const FOLDER = '.build/office';
const MOST_BYTES = 250_000;
const built = existsSync(path.join(FOLDER, 'index.html'));

(built ? test : test.skip)('the first bundle is under 250 kB gzipped, and no page is in it', () => {
  const page = readFileSync(path.join(FOLDER, 'index.html'), 'utf8');
  const first = new Set(
    [...page.matchAll(/(?:src|href)="\/(assets\/[^"]+\.(?:js|css))"/g)].map(
      ([, file]) => file ?? '',
    ),
  );
  // What the first script imports at once is loaded with it.
  for (const file of first) {
    if (!file.endsWith('.js')) continue;
    const code = readFileSync(path.join(FOLDER, file), 'utf8');
    for (const [, name] of code.matchAll(
      /(?:^|[;}])import\s*(?:[^"'()]*?from\s*)?["']\.\/([^"']+\.js)["']/g,
    ))
      first.add(`assets/${name ?? ''}`);
  }
  expect(first.size).toBeGreaterThan(1);
  const sizes = [...first].map((file) => gzipSync(readFileSync(path.join(FOLDER, file))).length);
  const total = sizes.reduce((sum, each) => sum + each, 0);
  expect(total).toBeGreaterThan(50_000);
  expect(total).toBeLessThan(MOST_BYTES);
  expect([...first].filter((file) => /-page-/.test(file))).toEqual([]);
});
