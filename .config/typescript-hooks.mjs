// Module hooks: "./x.js" finds "./x.ts" where only that exists, and swc strips the types.

import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from '@swc/core';

export async function resolve(specifier, context, next) {
  if (/^\.{1,2}\//.test(specifier) && specifier.endsWith('.js')) {
    const source = new URL(specifier.replace(/\.js$/, '.ts'), context.parentURL);
    if (existsSync(source)) return next(source.href, context);
  }
  return next(specifier, context);
}

export async function load(url, context, next) {
  if (!url.startsWith('file:') || !url.endsWith('.ts')) return next(url, context);
  const filename = fileURLToPath(url);
  const { code } = await transform(await readFile(filename, 'utf8'), {
    filename, configFile: fileURLToPath(new URL('../.swcrc', import.meta.url)), sourceMaps: 'inline',
  });
  return { format: 'module', source: code, shortCircuit: true };
}
