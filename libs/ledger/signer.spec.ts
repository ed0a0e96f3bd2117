import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from '@jest/globals';
import { canonical } from './canonical.js';
import { openCheckpoint } from './checkpoint.js';
import { createLedger } from './create-ledger.js';
import { openKeyRing } from './key-ring.js';
import type { Ledger } from './ledger.js';
import { request } from '../../tests/ledger-suite.js';
import { createMemoryStore } from './memory-store.js';
import { openNote } from './note.js';
import { verifyConsistency } from './proof.js';
import { KEY_STREAM } from './key-change.js';
import { createSigner } from './signer.js';
import type { Signer } from './signer.js';
import { formatProof, openProof } from './tlog-proof.js';

const LOG = 'roofers';
const ORIGIN = 'records.example/roofers';
let folder: string;
let ledger: Ledger;
let signer: Signer;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'gauge-signer-'));
  ledger = createLedger(createMemoryStore());
  await ledger.createLog(LOG);
  signer = signerOf(ledger);
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const keys = () => openKeyRing(path.join(folder, 'keys.json'));

function signerOf(of: Ledger): Signer {
  return createSigner({
    ledger: of,
    keys: keys(),
    folder: path.join(folder, 'signed'),
    origin: (log) => `records.example/${log}`,
  });
}

async function append(to: Ledger, count: number): Promise<void> {
  const { pos } = await to.head(LOG);
  for (let i = 0; i < count; i++) await to.append(request(`s${pos + i}`, 0, [`event ${pos + i}`]));
}

async function signed(by = signer) {
  const result = await by.sign(LOG);
  if (result.kind !== 'signed') throw new Error(result.reason);
  return result;
}

test('requirement 12: checkpoints are signed one after another, each continuing all before', async () => {
  const all = [];
  for (const count of [0, 1, 2, 5, 30, 300, 700]) {
    await append(ledger, count);
    all.push((await signed()).checkpoint);
  }
  const last = all.at(-1)!;
  expect(last.size).toBe(1038);
  for (const each of all.slice(1)) {
    const proof = await signer.tree(LOG).consistency(each.size, last.size);
    expect(verifyConsistency(each.size, last.size, each.root, last.root, proof)).toBe(true);
    expect(await signer.tree(LOG).root(each.size)).toEqual(each.root);
  }
});

test('nothing added: the same note; it is kept in the log’s store and in a file of its own', async () => {
  await append(ledger, 3);
  const first = await signed();
  expect((await signed()).note).toBe(first.note);
  expect((await ledger.checkpoints(LOG)).map((each) => each.note)).toEqual([first.note]);
  const [file] = readdirSync(path.join(folder, 'signed'));
  expect(readFileSync(path.join(folder, 'signed', file!), 'utf8')).toBe(first.note);
  expect(statSync(path.join(folder, 'keys.json')).mode & 0o777).toBe(0o600);
});

test('every entry has a proof file, and no other entry passes with it', async () => {
  await append(ledger, 600);
  const { note, checkpoint } = await signed();
  const bodies = (await ledger.readAll(LOG, { after: 0, limit: 1000 })).map((e) => canonical(e));
  for (const pos of [1, 2, 255, 256, 257, 511, 512, 513, 599, 600]) {
    const hashes = await signer.tree(LOG).inclusion(pos, checkpoint.size);
    const file = formatProof(pos, hashes, note);
    const open = (body: string, at = pos) =>
      openProof(file, at, body, keys().verifiers(ORIGIN)).size;
    expect(open(bodies[pos - 1]!)).toBe(600);
    expect(() => open(bodies[pos - 1]!.replace('event', 'Event'))).toThrow('not the one');
    expect(() => open(bodies[pos - 1]!, pos + 1)).toThrow('not one of position');
  }
});

test('requirement 8: a log that is smaller, altered, or another one is not signed', async () => {
  await append(ledger, 20);
  await signed();
  const shorter = createLedger(createMemoryStore());
  await shorter.createLog(LOG);
  await append(shorter, 19);
  const cut = await signerOf(shorter).sign(LOG);
  expect(cut).toMatchObject({ kind: 'refused', reason: expect.stringContaining('fewer than') });
  await append(shorter, 5);
  const other = await signerOf(shorter).sign(LOG);
  expect(other).toMatchObject({ kind: 'refused', reason: expect.stringContaining('altered') });
  await append(ledger, 1);
  expect((await signed(signerOf(ledger))).checkpoint.size).toBe(21);
});

test('a checkpoint row that was not signed here is an alarm', async () => {
  await append(ledger, 2);
  const { root } = await ledger.head(LOG);
  await ledger.keepCheckpoint(LOG, { size: 2, root, note: 'a\n2\nb\n\n— a bm90aGluZw==\n' });
  const result = await signer.sign(LOG);
  expect(result).toMatchObject({
    kind: 'refused',
    reason: expect.stringContaining('not one that'),
  });
});

test('requirement 14: a key change is an entry signed by both keys, and older checkpoints still verify', async () => {
  await append(ledger, 4);
  const before = await signed();
  const old = keys().verifiers(ORIGIN);
  const [changed] = await signer.changeKey([LOG], { person: 'p1', role: 'administrator' });
  const both = changed?.kind === 'signed' ? changed.note : '';
  await append(ledger, 2);
  const after = await signed(signerOf(ledger));
  const now = keys().verifiers(ORIGIN);
  expect(now.length).toBe(2);
  expect(openCheckpoint(before.note, now).size).toBe(4);
  expect(openCheckpoint(both, old).size).toBe(5);
  expect(openCheckpoint(both, now.slice(0, 1)).size).toBe(5);
  expect(openCheckpoint(after.note, now).size).toBe(7);
  expect(() => openCheckpoint(after.note, old)).toThrow('not signed by a key that is known');
  const [entry] = await ledger.readStream(LOG, KEY_STREAM);
  const { note, to } = entry?.data as { note: string; to: string };
  expect(to).toBe(now[0]?.text);
  expect(openNote(note, old)).toBe(openNote(note, now.slice(0, 1)));
});

const BY = { person: 'operator', role: 'operator' };
const keyOf = (each: Signer) =>
  each.sign(LOG).then((result) => (result.kind === 'signed' ? result.note : result.reason));

test('another process on the same folder signs with the new key at once; a copy from before refuses', async () => {
  await append(ledger, 3);
  const other = signerOf(ledger);
  await signed(other);
  const copied = mkdtempSync(path.join(tmpdir(), 'gauge-signer-copy-'));
  cpSync(folder, copied, { recursive: true });
  const old = keys().verifiers(ORIGIN);
  await signer.changeKey([LOG], BY);
  await append(ledger, 1);
  const note = await keyOf(other);
  expect(openCheckpoint(note, keys().verifiers(ORIGIN).slice(0, 1)).size).toBe(5);
  expect(() => openCheckpoint(note, old)).toThrow('not signed by a key that is known');
  const copy = createSigner({
    ledger,
    keys: openKeyRing(path.join(copied, 'keys.json')),
    folder: path.join(copied, 'signed'),
    origin: (log) => `records.example/${log}`,
  });
  expect(await keyOf(copy)).toContain('The record names another signing key');
  rmSync(copied, { recursive: true });
});

test('broken off: the key before stays in use, signs on, and the same key comes when it is called again', async () => {
  await ledger.createLog('second');
  await append(ledger, 3);
  const old = keys().verifiers(ORIGIN);
  const { root } = await ledger.head('second');
  await ledger.keepCheckpoint('second', { size: 0, root, note: 'a\n0\nb\n\n— a bm90aGluZw==\n' });
  const [first, refused] = await signer.changeKey([LOG, 'second'], BY);
  expect([first?.kind, refused?.kind]).toEqual(['signed', 'refused']);
  expect(
    keys()
      .verifiers(ORIGIN)
      .map(({ text }) => text),
  ).toEqual([old[0]!.text]);
  await append(ledger, 1);
  const coming = keys().coming(ORIGIN)!.verifier;
  const between = await keyOf(signerOf(ledger));
  expect(openCheckpoint(between, old).size).toBe(5);
  expect(openCheckpoint(between, [coming]).size).toBe(5);
  await signer.changeKey([LOG], BY);
  expect(
    keys()
      .verifiers(ORIGIN)
      .map(({ text }) => text),
  ).toEqual([coming.text, old[0]!.text]);
  expect(keys().coming(ORIGIN)).toBeUndefined();
  expect(await ledger.readStream(LOG, KEY_STREAM)).toHaveLength(1);
  expect(readdirSync(folder).sort()).toEqual(['keys.json', 'signed']);
});
