// Dump and restore: into a fresh server all goes on, and an old copy in place of the log is refused
// by the signer (checklist 8, 12).

import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type pg from 'pg';
import {
  canonical,
  companyPool,
  createLists,
  createPostgresLedger,
  createSigner,
  newClient,
  openServicePool,
} from '#ledger';
import { createSignals, formatProof, openCheckpoint, openKeyRing, openProof } from '#ledger';
import { verifyConsistency } from '#ledger';
import type { Ledger, Lists, Signer } from '#ledger';
import { findPlace } from '../../apps/cli/data-folder.js';
import { migrate } from '../../apps/cli/migrate.js';
import { makeDatabase, makeRoles, serviceUrl } from '../../apps/cli/roles.js';
import { startServer, stopServer } from '../../apps/cli/server.js';
import { freshDatabase } from '../database.js';
import type { TestDatabase } from '../database.js';
import { copyLedger } from './ledger-copy.js';
import { COUNTED, COUNTED_TABLE, LOG } from './ledger-counted.js';

const ORIGIN = 'records.example/roofers';
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-restore-'));
const pools: pg.Pool[] = [];
let first: TestDatabase;
let old: TestDatabase;

interface Service {
  readonly ledger: Ledger;
  readonly lists: Lists;
  readonly signer: Signer;
}

beforeAll(async () => {
  chmodSync(folder, 0o755);
  [first, old] = [await freshDatabase(), await freshDatabase()];
  await asOwner(first.ownerUrl, COUNTED_TABLE);
}, 120_000);

afterAll(async () => {
  for (const pool of pools) await pool.end();
  await first.drop();
  await old.drop();
  await stopServer(findPlace(folder));
  rmSync(folder, { recursive: true, force: true });
});

async function asOwner(url: string, sql: string): Promise<void> {
  const owner = newClient({ connectionString: url });
  await owner.connect();
  await owner.query(sql);
  await owner.end();
}

/** The service on one database; its keys and last checkpoints lie in the same folder as before. */
function serviceOn(url: string): Service {
  const raw = openServicePool(url, 4);
  pools.push(raw);
  const pool = companyPool(raw);
  const signals = createSignals();
  const ledger = createPostgresLedger({ pool, signals });
  const onFault = (_: string, __: string, fault: unknown) => {
    throw fault;
  };
  const lists = createLists({ ledger, pool, lists: [COUNTED], signals, onFault });
  const keys = openKeyRing(path.join(folder, 'keys.json'));
  const signed = path.join(folder, 'signed');
  const signer = createSigner({ ledger, keys, folder: signed, origin: () => ORIGIN });
  return { ledger, lists, signer };
}

async function write({ ledger, lists, signer }: Service, count: number): Promise<string> {
  const { pos } = await ledger.head(LOG);
  for (let i = pos; i < pos + count; i++) {
    const result = await ledger.append({
      log: LOG,
      command: { id: `c${i}`, digest: 'd' },
      by: { person: 'p', role: 'r' },
      streams: [
        {
          stream: `s${i % 3}`,
          expectedVersion: Math.floor(i / 3),
          events: [{ type: 't/1', data: { i } }],
        },
      ],
    });
    expect(result.kind).toBe('appended');
  }
  await lists.catchUp(LOG);
  const signed = await signer.sign(LOG);
  return signed.kind === 'signed' ? signed.note : signed.reason;
}

test('requirement 12: restored into a fresh server, positions, proofs, commands and lists go on', async () => {
  const before = serviceOn(first.serviceUrl);
  await before.ledger.createLog(LOG);
  await write(before, 12);
  await copyLedger(first.ownerUrl, old.ownerUrl);
  const paper = await write(before, 15);

  const server = await startServer(findPlace(folder), {});
  const owner = newClient({ connectionString: server.ownerUrl('postgres') });
  await owner.connect();
  await makeRoles(owner, server.servicePassword);
  await makeDatabase(owner, 'restored');
  await owner.end();
  const ownerUrl = server.ownerUrl('restored');
  await migrate(ownerUrl);
  await asOwner(ownerUrl, COUNTED_TABLE);
  await copyLedger(first.ownerUrl, ownerUrl);

  const after = serviceOn(serviceUrl(ownerUrl, server.servicePassword));
  expect((await after.lists.rebuild(LOG, 'counted', { acceptDifference: true })).swapped).toBe(
    true,
  );
  const note = await write(after, 9);
  const verifiers = openKeyRing(path.join(folder, 'keys.json')).verifiers(ORIGIN);
  const [held, now] = [openCheckpoint(paper, verifiers), openCheckpoint(note, verifiers)];
  expect([held.size, now.size]).toEqual([27, 36]);
  const proof = await after.signer.tree(LOG).consistency(27, 36);
  expect(verifyConsistency(27, 36, held.root, now.root, proof)).toBe(true);
  const events = await after.ledger.readAll(LOG, { after: 0, limit: 100 });
  for (const event of events) {
    const hashes = await after.signer.tree(LOG).inclusion(event.pos, 36);
    const file = formatProof(event.pos, hashes, note);
    expect(openProof(file, event.pos, canonical(event), verifiers).size).toBe(36);
  }
  const again = events[3]!;
  const repeated = await after.ledger.append({
    log: LOG,
    command: { id: again.command, digest: 'd' },
    by: again.by,
    streams: [{ stream: 's0', expectedVersion: 1, events: [{ type: 't/1', data: { i: 3 } }] }],
  });
  expect(repeated).toMatchObject({ kind: 'repeated', positions: [4] });
  expect(await after.ledger.verify(LOG, [held, now])).toMatchObject({ fault: undefined });
  expect(await after.lists.rebuild(LOG, 'counted')).toMatchObject({ pos: 36, equal: true });
}, 60_000);

test('requirement 8: an old copy in the log’s place is not signed, also after it grew past the checkpoint', async () => {
  await asOwner(old.ownerUrl, COUNTED_TABLE);
  const restored = serviceOn(old.serviceUrl);
  expect((await restored.ledger.head(LOG)).pos).toBe(12);
  expect(await restored.signer.sign(LOG)).toMatchObject({
    kind: 'refused',
    reason: expect.stringContaining('an old copy of the database was restored'),
  });
  expect(await write(restored, 40)).toContain('entries up to there were altered');
});
