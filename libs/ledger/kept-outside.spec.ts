import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from '@jest/globals';
import { request } from '../../tests/ledger-suite.js';
import { createLedger } from './create-ledger.js';
import { keptOutside } from './kept-outside.js';
import { openKeyRing } from './key-ring.js';
import type { Ledger } from './ledger.js';
import { createMemoryStore } from './memory-store.js';
import { createSigner } from './signer.js';

const LOG = 'roofers';
let folder: string;

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'gauge-outside-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const inFile = () => readFileSync(path.join(folder, `${LOG}.checkpoint`), 'utf8');

test('a smaller one kept later does not take the place of the larger', () => {
  const outside = keptOutside(folder);
  expect(outside.read(LOG)).toEqual([]);
  outside.keep(LOG, 9, 'nine');
  outside.keep(LOG, 7, 'seven');
  expect([outside.read(LOG), inFile()]).toEqual([['nine'], 'nine']);
  outside.keep(LOG, 10, 'ten');
  expect([outside.read(LOG), inFile()]).toEqual([['ten'], 'ten']);
  expect(readdirSync(folder).sort()).toEqual([`${LOG}.checkpoint`, `${LOG}.checkpoint.10`]);
  expect(outside.read('roof')).toEqual([]);
});

test('what somebody wrote into the file is read as well, and not taken for the last', () => {
  const outside = keptOutside(folder);
  outside.keep(LOG, 9, 'nine');
  writeFileSync(path.join(folder, `${LOG}.checkpoint`), 'other');
  expect(outside.read(LOG)).toEqual(['nine', 'other']);
  rmSync(path.join(folder, `${LOG}.checkpoint.9`));
  expect(outside.read(LOG)).toEqual(['other']);
});

test('three processes keeping at once: the largest is there at the end, and at every moment before', async () => {
  const root = path.resolve(import.meta.dirname, '../..');
  const hooks = pathToFileURL(path.join(root, '.config/typescript.mjs')).href;
  const part = pathToFileURL(path.join(root, 'libs/ledger/kept-outside.ts')).href;
  const LAST = 240;
  const text = `
    import { keptOutside } from ${JSON.stringify(part)};
    const outside = keptOutside(process.argv[1]);
    let seen = 0;
    for (let size = Number(process.argv[2]); size <= ${LAST}; size += 3) {
      outside.keep('${LOG}', size, String(size));
      const [largest] = outside.read('${LOG}').map(Number);
      if (largest < Math.max(seen, size)) throw new Error(largest + ' after ' + Math.max(seen, size));
      seen = largest;
    }`;
  const process3 = (first: number) =>
    new Promise<string>((resolve) => {
      const args = [
        '--conditions=gauge-source',
        '--import',
        hooks,
        '--input-type=module',
        '-e',
        text,
      ];
      const child = spawn(process.execPath, [...args, folder, String(first)], { cwd: root });
      let said = '';
      child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
      child.on('close', (code) => resolve(code === 0 ? 'done' : said));
    });
  expect(await Promise.all([1, 2, 3].map(process3))).toEqual(['done', 'done', 'done']);
  expect([keptOutside(folder).read(LOG), inFile()]).toEqual([[String(LAST)], String(LAST)]);
}, 60_000);

test('two signers at once: neither is refused for the other, and cutting back to the smaller is found', async () => {
  const store = createMemoryStore();
  const ledger = createLedger(store);
  await ledger.createLog(LOG);
  const signerOf = (of: Ledger) =>
    createSigner({
      ledger: of,
      keys: openKeyRing(path.join(folder, 'keys.json')),
      folder,
      origin: (log) => `records.example/${log}`,
    });
  const add = async (to: Ledger, count: number) => {
    const { pos } = await to.head(LOG);
    for (let i = 0; i < count; i++) await to.append(request(`s${pos + i}`, 0, ['one']));
  };
  await add(ledger, 5);
  const other = signerOf(ledger);
  // While the first one has read the head and not yet signed, the second signs a larger one.
  const slow = signerOf({
    ...ledger,
    head: async (log) => {
      const head = await ledger.head(log);
      await add(ledger, 2);
      expect(await other.sign(LOG)).toMatchObject({ kind: 'signed', checkpoint: { size: 7 } });
      return head;
    },
  });
  expect(await slow.sign(LOG)).toMatchObject({ kind: 'signed', checkpoint: { size: 5 } });
  expect((await other.signed(LOG)).outside?.size).toBe(7);
  expect(inFile()).toContain('\n7\n');
  const cut = createLedger(createMemoryStore());
  await cut.createLog(LOG);
  for (const event of await ledger.readAll(LOG, { after: 0, limit: 6 }))
    await cut.append(request(event.stream, 0, ['one']));
  expect(await signerOf(cut).sign(LOG)).toMatchObject({
    kind: 'refused',
    reason: expect.stringContaining('6 entries, fewer than'),
  });
});
