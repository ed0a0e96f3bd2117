import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { makeBundle } from './bundle.js';
import { openKeyRing } from './key-ring.js';
import type { KeyRing } from './key-ring.js';
import type { Ledger } from './ledger.js';
import { request } from '../../tests/ledger-suite.js';
import { createMemoryLedger } from './memory-ledger.js';
import { createSigner } from './signer.js';
import type { Signer } from './signer.js';
import { verifyBundle } from './verify-bundle.js';
import { readZip, writeZip } from './zip.js';

const LOG = 'roofers';
const ORIGIN = 'records.example/roofers';
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-bundle-'));
let ledger: Ledger;
let signer: Signer;
let keys: KeyRing;
let bundle: Buffer;
let erased: string;

beforeAll(async () => {
  ledger = createMemoryLedger();
  await ledger.createLog(LOG);
  keys = openKeyRing(path.join(folder, 'keys.json'));
  signer = createSigner({ ledger, keys, folder, origin: (log) => `records.example/${log}` });
  const paper = await ledger.keepIssued(LOG, Buffer.from('%PDF order'), 'application/pdf');
  erased = await ledger.keepIssued(LOG, Buffer.from('%PDF letter'), 'application/pdf');
  await ledger.eraseIssued(LOG, erased);
  const issued = { type: 'order-issued/1', data: { digest: paper } };
  for (let i = 0; i < 30; i++) {
    await ledger.append(request(`job ${i % 3}`, Math.floor(i / 3), [i === 18 ? issued : 'step']));
    if (i % 10 === 7) await signer.sign(LOG);
  }
  await signer.changeKey([LOG], { person: 'p1', role: 'administrator' });
  const result = await makeBundle(
    { ledger, signer, keys },
    {
      log: LOG,
      origin: ORIGIN,
      streams: ['job 0'],
      documents: [
        { name: 'order.pdf', digest: paper },
        { name: 'letter.pdf', digest: erased },
      ],
      attachments: [{ name: 'rules.json', bytes: Buffer.from('{}') }],
    },
  );
  if (result.kind === 'refused') throw new Error(result.reason);
  bundle = result.bytes;
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('a bundle says in words what it shows and what it cannot', () => {
  const report = verifyBundle(bundle, { key: keys.verifiers(ORIGIN)[0]!.text });
  expect(report.ok).toBe(true);
  const said = report.says.join('\n');
  expect(said).toContain('had 31 entries');
  expect(said).toContain('which you hold');
  expect(said).toContain('job 0: versions 1 to 10, unaltered and in this order, at positions 1, 4');
  expect(said).toContain('The log only grew since 3 earlier signed checkpoints.');
  expect(said).toMatch(/order\.pdf is as issued \([0-9a-f]{16}…\), named at position 19\./);
  expect(said).toContain('letter.pdf was issued, and erased on ');
  expect(said).toContain('that no later version exists');
});

test('no entry of another stream is in it', () => {
  const entries = [...readZip(bundle).keys()].filter((name) => /^entries\/\d+\.json$/.test(name));
  expect(entries.length).toBe(11);
});

test('one changed byte in any file that proves something is found, with the entry’s position', () => {
  const files = readZip(bundle);
  for (const [name, bytes] of files) {
    if (name === 'README.txt' || name === 'bundle.json') continue;
    for (const at of [0, Math.floor(bytes.length / 2), bytes.length - 1]) {
      const changed = Buffer.from(bytes);
      changed.writeUInt8(changed.readUInt8(at) ^ 1, at);
      const report = verifyBundle(writeZip(new Map(files).set(name, changed)));
      expect({ name, at, ok: report.ok }).toEqual({ name, at, ok: false });
      const pos = /^entries\/(\d+)/.exec(name)?.[1];
      if (pos !== undefined) expect(report.pos).toBe(Number(pos));
    }
  }
});

test('a document’s digest changed in the table of contents is found', () => {
  const files = readZip(bundle);
  const contents = files.get('bundle.json')!.toString();
  const digest = /"digest":"([0-9a-f]{64})","name":"(order.pdf|rules.json)"/g;
  const digests = [...contents.matchAll(digest)].map((found) => found[1]!);
  expect(digests.length).toBe(2);
  for (const each of digests) {
    const forged = Buffer.from(contents.replace(each, each.replace(/^./, '_')));
    const report = verifyBundle(writeZip(new Map(files).set('bundle.json', forged)));
    expect(report.says.at(-1)).toContain('was altered');
  }
});

test('a file left out is found', () => {
  const files = readZip(bundle);
  for (const name of files.keys()) {
    if (name === 'README.txt') continue;
    const rest = new Map(files);
    rest.delete(name);
    const report = verifyBundle(writeZip(rest));
    expect({ name, ok: report.ok }).toEqual({ name, ok: false });
  }
});

test('versions left out or in another order are found', () => {
  const files = readZip(bundle);
  const contents = JSON.parse(files.get('bundle.json')!.toString()) as {
    streams: { positions: number[] }[];
  };
  const [first] = contents.streams;
  for (const positions of [first!.positions.slice(1), first!.positions.toReversed()]) {
    const streams = [{ ...first, positions }];
    const forged = Buffer.from(JSON.stringify({ ...contents, streams }));
    const report = verifyBundle(writeZip(new Map(files).set('bundle.json', forged)));
    expect(report).toMatchObject({ ok: false, pos: positions[0] });
  }
});

test('a bundle of another key or checkpoint than the held one is refused', async () => {
  const report = verifyBundle(bundle, { key: `${ORIGIN}+00000000+AAAA` });
  expect(report.says.at(-1)).toContain('is not one of the bundle’s keys');
  const [, kept] = await ledger.checkpoints(LOG);
  const root = kept!.root.toString('base64');
  const held = (size: number) => verifyBundle(bundle, { checkpoint: { size, root } });
  expect(held(kept!.size).says.join(' ')).toContain('that you hold is one of the bundle');
  expect(held(kept!.size + 1).ok).toBe(false);
});

test('what is not a bundle is said to be none', () => {
  expect(verifyBundle(Buffer.from('PK nonsense'))).toMatchObject({ ok: false });
  expect(verifyBundle(bundle.subarray(0, 500))).toMatchObject({ ok: false });
  expect(verifyBundle(writeZip(new Map([['bundle.json', Buffer.from('{}')]]))).ok).toBe(false);
});
