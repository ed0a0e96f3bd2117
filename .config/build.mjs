// The whole build: Prisma's client, swc over everything that runs, and the pages. All of it goes
// into .build, which `node` then runs as it is.

import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { transformFile } from '@swc/core';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);
const OUT = '.build';
const RUNS = ['libs', 'apps/api', 'apps/cli', 'prisma/client'];
/** What stands beside the code and is read at run time. */
const ASSETS = /\.(typ|ttf|otf|json|csv|svg)$/;

const bin = (name) => path.join('node_modules', '.bin', name);

function run(command, args, env = {}) {
  const done = spawnSync(command, args, { env: { ...process.env, ...env }, encoding: 'utf8' });
  if (done.status === 0) return;
  process.stderr.write(`${done.stdout ?? ''}${done.stderr ?? ''}`);
  throw new Error(`${path.basename(command)} ${args.join(' ')} failed`);
}

/** The command only reads the schema; the variable keeps it from fetching an engine it does not need. */
function generateClient() {
  const note = path.join('prisma', 'client', '.made-from');
  const schema = readFileSync('prisma/schema.prisma', 'utf8');
  if (existsSync(note) && readFileSync(note, 'utf8') === schema) return;
  run(bin('prisma'), ['generate', '--config', '.config/prisma.ts'], {
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
    CHECKPOINT_DISABLE: '1',
  });
  writeFileSync(note, schema);
}

function* filesIn(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const name = path.join(folder, entry.name);
    if (entry.isDirectory()) yield* filesIn(name);
    else yield name;
  }
}

async function compile(file) {
  const { code, map } = await transformFile(file, {
    configFile: '.swcrc',
    sourceFileName: path.resolve(file),
  });
  const out = path.join(OUT, file.replace(/\.tsx?$/, '.js'));
  mkdirSync(path.dirname(out), { recursive: true });
  writeFileSync(out, `${code}\n//# sourceMappingURL=${path.basename(out)}.map\n`);
  writeFileSync(`${out}.map`, map ?? '');
}

async function compileAll() {
  const files = RUNS.filter(existsSync).flatMap((folder) => [...filesIn(folder)]);
  for (const folder of RUNS) rmSync(path.join(OUT, folder), { recursive: true, force: true });
  const sources = files.filter((file) => /\.tsx?$/.test(file) && !/\.(d|spec)\.tsx?$/.test(file));
  await Promise.all(sources.map(compile));
  for (const file of files.filter((each) => ASSETS.test(each))) {
    mkdirSync(path.dirname(path.join(OUT, file)), { recursive: true });
    copyFileSync(file, path.join(OUT, file));
  }
}

function buildPages() {
  if (!existsSync('apps/office/index.html')) return;
  const config = ['.config/vite.ts', 'apps/office/vite.config.ts'].find(existsSync);
  run(bin('vite'), [
    'build',
    'apps/office',
    ...(config ? ['--config', config] : []),
    '--outDir',
    path.resolve(OUT, 'office'),
    '--emptyOutDir',
    '--logLevel',
    'warn',
  ]);
  compressPages(path.join(OUT, 'office'));
}

/** Beside each text, so that no request pays for it; left out where it saves little. */
function compressPages(folder) {
  const texts = [...filesIn(folder)].filter((file) => /\.(js|css|html|svg)$/.test(file));
  for (const file of texts) {
    const text = readFileSync(file);
    for (const [ending, small] of [
      ['br', brotliCompressSync(text)],
      ['gz', gzipSync(text, { level: 9 })],
    ]) {
      if (small.length < text.length * 0.9) writeFileSync(`${file}.${ending}`, small);
    }
  }
}

generateClient();
await compileAll();
if (!process.argv.includes('--no-pages')) buildPages();
