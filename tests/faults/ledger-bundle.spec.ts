// One published evidence bundle, kept as a file: it says what was approved, a second verifier in
// another language agrees, and both find an altered copy. All names and keys in it are invented.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from '@jest/globals';
import { createMemoryLedger, createSigner, makeBundle, openKeyRing, verifyBundle } from '#ledger';
import type { Ledger } from '#ledger';
import { expectApproved } from '../approve.js';

const LOG = 'roofers';
const ORIGIN = 'records.example/roofers';
const file = fileURLToPath(new URL('../approved/evidence-bundle.zip', import.meta.url));
const checker = fileURLToPath(new URL('./check_bundle.py', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-published-'));

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** The same every time: clock, salts, ids and key are fixed. The key is for this file only. */
async function makePublished(): Promise<Buffer> {
  const own = mkdtempSync(path.join(folder, 'made-'));
  const keyFile = path.join(own, 'keys.json');
  writeFileSync(keyFile, JSON.stringify({ seed: '5a'.repeat(32), former: [] }), { mode: 0o600 });
  const keys = openKeyRing(keyFile);
  let n = 0;
  const next = () => (++n).toString(16).padStart(32, '0');
  const random = { salt: next, id: () => `event-${next()}` };
  const ledger = createMemoryLedger({ now: () => Date.parse('2026-11-25') * 1000, random });
  await ledger.createLog(LOG);
  const signer = createSigner({ ledger, keys, folder: own, origin: () => ORIGIN });
  const paper = await ledger.keepIssued(LOG, Buffer.from('Order 1, as issued.\n'), 'text/plain');
  for (let i = 0; i < 25; i++) {
    await append(ledger, i, i === 20 ? { digest: paper } : { step: String(i) });
    if (i === 9) await signer.sign(LOG);
  }
  const made = await makeBundle(
    { ledger, signer, keys },
    {
      log: LOG,
      origin: ORIGIN,
      streams: ['job-2'],
      documents: [{ name: 'order-1.txt', digest: paper }],
      attachments: [{ name: 'rules.json', bytes: Buffer.from('{"edition":"1"}') }],
    },
  );
  if (made.kind === 'refused') throw new Error(made.reason);
  return made.bytes;
}

async function append(ledger: Ledger, i: number, data: object): Promise<void> {
  await ledger.append({
    log: LOG,
    command: { id: `command-${i}`, digest: 'd' },
    by: { person: 'person-1', role: 'estimator' },
    streams: [
      {
        stream: `job-${i % 3}`,
        expectedVersion: Math.floor(i / 3),
        events: [{ type: 'measured/1', data }],
      },
    ],
  });
}

if (process.env['APPROVE'] === '1') {
  test('the published bundle is written anew', async () => {
    writeFileSync(file, await makePublished());
  });
}

test('the published bundle says what was approved', () => {
  const report = verifyBundle(readFileSync(file));
  expect(report.ok).toBe(true);
  expectApproved('evidence-bundle.txt', `${report.says.join('\n')}\n`);
});

test('a bundle made today from the same events says the same', async () => {
  const published = verifyBundle(readFileSync(file));
  expect(verifyBundle(await makePublished())).toEqual(published);
});

const tools = ['python3', 'openssl'].filter(
  (tool) =>
    spawnSync(tool, ['--version']).status !== 0 && spawnSync(tool, ['version']).status !== 0,
);
const second = tools.length === 0 ? test : test.skip;
const why = tools.length === 0 ? '' : ` (not here: ${tools.join(', ')})`;

second(`a verifier in Python with OpenSSL agrees, and finds every altered byte${why}`, () => {
  const check = (bundle: string) => spawnSync('python3', [checker, bundle], { encoding: 'utf8' });
  const good = check(file);
  expect({ status: good.status, says: good.stderr }).toEqual({ status: 0, says: '' });
  expect(good.stdout).toContain('8 entries of job-2');
  const bytes = readFileSync(file);
  const copy = path.join(folder, 'altered.zip');
  // Local content only: the directory at the end holds names and sizes that nobody signs.
  for (let at = 200; at < bytes.length * 0.7; at += Math.floor(bytes.length / 15)) {
    const altered = Buffer.from(bytes);
    altered.writeUInt8(altered.readUInt8(at) ^ 4, at);
    writeFileSync(copy, altered);
    const ours = verifyBundle(altered).ok;
    expect({ at, ours, theirs: check(copy).status === 0 }).toEqual({ at, ours, theirs: ours });
  }
});
