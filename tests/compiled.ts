// Compiles the ledger and one program of the tests into a folder of its own, for tests that need a
// process or a thread beside the one that Jest runs them in.

import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformFileSync } from '@swc/core';

export interface Compiled {
  /** The program as a file that node runs. */
  readonly program: string;
  /** The ledger's compiled index. */
  readonly ledger: string;
  remove(): void;
}

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** The program and what it needs besides the ledger: paths from the project's root without ".ts". */
export function compileWithLedger(program: string, ...needs: readonly string[]): Compiled {
  const folder = mkdtempSync(path.join(tmpdir(), 'gauge-compiled-'));
  const sources = readdirSync(path.join(root, 'libs/ledger'))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.spec.ts'))
    .map((name) => `libs/ledger/${name.slice(0, -3)}`);
  for (const source of [...sources, program, ...needs]) {
    const { code } = transformFileSync(path.join(root, `${source}.ts`), {
      configFile: path.join(root, '.swcrc'),
      sourceMaps: false,
    });
    const out = path.join(folder, '.build', `${source}.js`);
    mkdirSync(path.dirname(out), { recursive: true });
    writeFileSync(out, code);
  }
  copyFileSync(path.join(root, 'package.json'), path.join(folder, 'package.json'));
  symlinkSync(path.join(root, 'node_modules'), path.join(folder, 'node_modules'));
  return {
    program: path.join(folder, '.build', `${program}.js`),
    ledger: path.join(folder, '.build/libs/ledger/index.js'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
