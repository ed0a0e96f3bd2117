// The launcher's promises: one service for each folder, a killed service's server is taken over, a
// killed server starts again, and what cannot be is one clear sentence with nothing damaged.

import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from '@jest/globals';
import { newClient } from '#ledger';
import { startDatabase } from '../../apps/cli/database.js';
import type { Database } from '../../apps/cli/database.js';
import { findPlace } from '../../apps/cli/data-folder.js';
import { startServer, stopServer } from '../../apps/cli/server.js';

let folder: string;
let running: Database[] = [];

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'gauge-launcher-'));
  chmodSync(folder, 0o755);
});

afterEach(async () => {
  for (const database of running) await database.stop();
  running = [];
  rmSync(folder, { recursive: true, force: true });
});

async function start(): Promise<Database> {
  const database = await startDatabase({ dataFolder: folder });
  running.push(database);
  return database;
}

async function ask(url: string, sql: string): Promise<unknown[]> {
  const client = newClient({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

const postmaster = (): number =>
  Number(readFileSync(path.join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]);

const asRoot = process.getuid?.() === 0 ? test : test.skip;

test('a second start finds all as it was, and passwords are for their owner only', async () => {
  const first = await start();
  await ask(first.ownerUrl, 'CREATE TABLE kept AS SELECT 7 AS n');
  await first.stop();
  const second = await start();
  expect(await ask(second.ownerUrl, 'SELECT n FROM kept')).toEqual([{ n: 7 }]);
  expect(await ask(second.serviceUrl, 'SELECT current_user AS me')).toEqual([{ me: 'gauge_app' }]);
  expect(statSync(path.join(folder, 'database.json')).mode & 0o777).toBe(0o600);
});

test('a folder in use is refused by the number of its process, and goes on undisturbed', async () => {
  const first = await start();
  await expect(start()).rejects.toThrow(`is in use by process ${process.pid}.`);
  expect(await ask(first.serviceUrl, 'SELECT 1 AS n')).toEqual([{ n: 1 }]);
});

test('a server whose service was killed is taken over', async () => {
  const left = await startServer(findPlace(folder), {});
  const taken = await start();
  expect(taken.port).toBe(left.port);
});

test('a killed server is noticed, and starts again with what was committed', async () => {
  const first = await start();
  await ask(first.ownerUrl, 'CREATE TABLE kept AS SELECT 7 AS n');
  process.kill(postmaster(), 'SIGKILL');
  await first.lost;
  const second = await start();
  expect(await ask(second.ownerUrl, 'SELECT n FROM kept')).toEqual([{ n: 7 }]);
});

test('a database of another version is refused and left alone', async () => {
  const place = findPlace(folder);
  await startServer(place, {});
  await stopServer(place);
  const version = path.join(folder, 'postgres', 'PG_VERSION');
  writeFileSync(version, '14\n');
  await expect(start()).rejects.toThrow('is of PostgreSQL 14, this server is PostgreSQL 18.');
  writeFileSync(version, '18\n');
  await start();
});

test('a folder that cannot be is one sentence', async () => {
  const file = path.join(folder, 'a-file');
  writeFileSync(file, '');
  await expect(startDatabase({ dataFolder: path.join(file, 'data') })).rejects.toThrow(
    'cannot be written',
  );
});

asRoot(
  'a folder closed to the server’s user keeps its data where that user can reach it',
  async () => {
    chmodSync(folder, 0o700);
    const database = await start();
    expect(database.notices[0]).toContain('/var/lib/gauge-ledger/');
    expect(await ask(database.serviceUrl, 'SELECT 1 AS n')).toEqual([{ n: 1 }]);
    const elsewhere = /in (\S+),/.exec(database.notices[0] ?? '')?.[1] ?? '';
    await database.stop();
    running = [];
    await sleep(10);
    rmSync(elsewhere, { recursive: true, force: true });
  },
);
