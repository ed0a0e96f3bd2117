// The crash drill: service and database are killed at random moments under 32 writers. Nothing
// acknowledged is lost, nothing is there twice, no gap, no fork, the list equals its rebuild
// (checklist 1). FAULTS=long kills 200 times instead of 10.

import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import {
  companyPool,
  createLists,
  createPostgresLedger,
  createSignals,
  newClient,
  openServicePool,
} from '#ledger';
import type { AppendRequest, AppendResult } from '#ledger';
import { findPlace, isAlive } from '../../apps/cli/data-folder.js';
import type { Place } from '../../apps/cli/data-folder.js';
import { migrate } from '../../apps/cli/migrate.js';
import { makeDatabase, makeRoles, serviceUrl } from '../../apps/cli/roles.js';
import { startServer, stopServer } from '../../apps/cli/server.js';
import type { Server } from '../../apps/cli/server.js';
import { compileWithLedger } from '../compiled.js';
import type { Compiled } from '../compiled.js';
import { COUNTED, COUNTED_TABLE, LOG } from './ledger-counted.js';

const KILLS = process.env['FAULTS'] === 'long' ? 200 : 10;
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-crash-'));
let place: Place;
let server: Server;
let compiled: Compiled;

beforeAll(async () => {
  chmodSync(folder, 0o755);
  compiled = compileWithLedger('tests/faults/ledger-writer', 'tests/faults/ledger-counted');
  place = findPlace(folder);
  server = await startServer(place, {});
  const owner = newClient({ connectionString: server.ownerUrl('postgres') });
  await owner.connect();
  await makeRoles(owner, server.servicePassword);
  await makeDatabase(owner, 'drill');
  await owner.end();
  await migrate(server.ownerUrl('drill'));
  const tables = newClient({ connectionString: server.ownerUrl('drill') });
  await tables.connect();
  await tables.query(COUNTED_TABLE);
  await tables.end();
}, 120_000);

afterAll(async () => {
  await stopServer(place);
  compiled.remove();
  rmSync(folder, { recursive: true, force: true });
});

const address = () => serviceUrl(server.ownerUrl('drill'), server.servicePassword);

/** What all service processes together tried and learned. */
const tried = new Map<string, AppendRequest>();
const answers = new Map<string, AppendResult>();
/** Services that ended by themselves. */
const crashes: string[] = [];

function startService(name: string): { process: ChildProcess; ended: Promise<unknown> } {
  const unknown = [...tried.values()].filter((each) => !answers.has(each.command.id));
  const input = JSON.stringify({ serviceUrl: address(), name, unknown });
  const child = spawn(process.execPath, [compiled.program, input], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const lines = createInterface({ input: child.stdout });
  lines.on('line', (line) => {
    if (line.startsWith('try ')) {
      const request = JSON.parse(line.slice(4)) as AppendRequest;
      tried.set(request.command.id, request);
    }
    if (line.startsWith('answer ')) {
      const { id, ...result } = JSON.parse(line.slice(7)) as { id: string } & AppendResult;
      if (!answers.has(id)) answers.set(id, result as AppendResult);
    }
  });
  child.once('exit', (code) => {
    if (code !== 0 && code !== null) crashes.push(`${name} ended with ${code}`);
  });
  const ended = Promise.all([
    new Promise((resolve) => child.once('exit', resolve)),
    new Promise((resolve) => lines.once('close', resolve)),
  ]);
  return { process: child, ended };
}

async function killDatabase(): Promise<void> {
  const file = path.join(place.data, 'postmaster.pid');
  const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
  process.kill(pid, 'SIGKILL');
  // Killed is not yet gone: a server on its way out must not be taken for a running one.
  while (isAlive(pid)) await sleep(5);
  server = await startServer(place, { port: String(server.port) });
}

test('requirement 1: kill -9 of service and database at random moments loses and doubles nothing', async () => {
  const setUp = openServicePool(address(), 1);
  await createPostgresLedger({ pool: companyPool(setUp) }).createLog(LOG);
  await setUp.end();
  let service = startService('k0');
  for (let kill = 1; kill <= KILLS; kill++) {
    await sleep(200 + Math.random() * 600);
    if (kill % 2 === 0) {
      await killDatabase();
    } else {
      service.process.kill('SIGKILL');
      await service.ended;
      service = startService(`k${kill}`);
    }
  }
  await sleep(500);
  service.process.kill('SIGTERM');
  await service.ended;
  expect(crashes).toEqual([]);
  await expectAllKept();
}, 1_200_000);

async function expectAllKept(): Promise<void> {
  const pool = openServicePool(address(), 4);
  const companies = companyPool(pool);
  const signals = createSignals();
  const ledger = createPostgresLedger({ pool: companies, signals });
  try {
    const report = await ledger.verify(LOG, []);
    expect(report.fault).toBeUndefined();
    const events = await ledger.readAll(LOG, { after: 0, limit: 1_000_000 });
    expect(report.events).toBe(events.length);
    const kept = new Map<string, number[]>();
    for (const { command, pos } of events) kept.set(command, [...(kept.get(command) ?? []), pos]);
    for (const [id, positions] of kept) {
      expect(positions.length).toBe(tried.get(id)?.streams.length);
    }
    let acknowledged = 0;
    for (const [id, answer] of answers) {
      const done = answer.kind === 'appended' || answer.kind === 'repeated';
      if (done) acknowledged++;
      expect({ id, kept: kept.get(id) }).toEqual({ id, kept: done ? answer.positions : undefined });
    }
    expect(acknowledged).toBeGreaterThan(KILLS);
    const onFault = (_: string, __: string, fault: unknown) => {
      throw fault;
    };
    const lists = createLists({ ledger, pool: companies, lists: [COUNTED], signals, onFault });
    await lists.catchUp(LOG);
    expect(await lists.rebuild(LOG, 'counted')).toMatchObject({ equal: true, swapped: true });
    await lists.stop();
  } finally {
    await pool.end();
  }
}
