// Verification as people run it: the whole log by worker threads, a bundle on the command line with
// nothing but the file (checklist 10, 11, 13). FAULTS=long verifies 100,000 entries of 1.6 kB.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type pg from 'pg';
import { companyPool, createPostgresLedger, newClient, openPool } from '#ledger';
import { compileWithLedger } from '../compiled.js';
import type { Compiled } from '../compiled.js';
import { withDatabase } from '../database.js';

const LOG = 'roofers';
const LONG = process.env['FAULTS'] === 'long';
const ENTRIES = LONG ? 100_000 : 12_000;
const PER_STREAM = 500;

describe('a whole log', () => {
  const database = withDatabase();
  let compiled: Compiled;
  let owner: pg.Client;

  beforeAll(async () => {
    compiled = compileWithLedger('tests/faults/ledger-verifier');
    owner = newClient({ connectionString: database.ownerUrl });
    await owner.connect();
    const service = openPool({ connectionString: database.serviceUrl });
    const ledger = createPostgresLedger({ pool: companyPool(service) });
    await ledger.createLog(LOG);
    const data = { said: 'x'.repeat(1200) };
    for (let i = 0; i < ENTRIES / PER_STREAM; i++) {
      const events = Array.from({ length: PER_STREAM }, () => ({ type: 'said/1', data }));
      const result = await ledger.append({
        log: LOG,
        command: { id: `c${i}`, digest: 'd' },
        by: { person: 'p', role: 'r' },
        streams: [{ stream: `s${i}`, expectedVersion: 0, events }],
      });
      expect(result.kind).toBe('appended');
    }
    await service.end();
  }, 300_000);

  afterAll(async () => {
    await owner.end();
    compiled.remove();
  });

  function verify(): { events: number; fault?: { pos: number; says: string } } {
    const input = JSON.stringify({ serviceUrl: database.serviceUrl, log: LOG });
    const run = spawnSync(process.execPath, [compiled.program, input], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    return JSON.parse(run.stdout) as ReturnType<typeof verify>;
  }

  // How long it takes is for the bench to say (requirement 13).
  test('worker threads verify it all', () => {
    const report = verify();
    expect(report).toMatchObject({ events: ENTRIES });
    expect(report.fault).toBeUndefined();
  });

  test('an edit by the owner is found by the next verification, with its position', async () => {
    await owner.query(`
      ALTER TABLE ledger.event DISABLE TRIGGER kept;
      UPDATE ledger.event SET body = replace(body, '"said":"x', '"said":"y') WHERE pos = 7777`);
    expect(verify().fault).toEqual({
      pos: 7777,
      says: 'the body does not have the recorded hash',
    });
  });
});

describe('a bundle on the command line', () => {
  const published = fileURLToPath(new URL('../approved/evidence-bundle.zip', import.meta.url));
  const folder = mkdtempSync(path.join(tmpdir(), 'gauge-verify-'));
  let compiled: Compiled;

  beforeAll(() => {
    compiled = compileWithLedger('apps/cli/verify');
    writeFileSync(
      path.join(folder, 'no-network.cjs'),
      `const never = () => { throw new Error('no network here'); };
       require('node:net').Socket.prototype.connect = never;
       require('node:dns').lookup = never;
       require('node:dgram').Socket.prototype.send = never;`,
    );
  });

  afterAll(() => {
    compiled.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Without an environment, that is no address of a database and no proxy; and any connection throws. */
  const node = (...args: string[]) =>
    spawnSync(process.execPath, ['--require', path.join(folder, 'no-network.cjs'), ...args], {
      encoding: 'utf8',
      env: {},
    });
  const run = (...args: string[]) => node(compiled.program, ...args);

  test('the guard of these tests lets nothing connect', () => {
    for (const code of [
      `fetch('http://127.0.0.1:50999/').catch((e) => { console.log(String(e.cause ?? e)); })`,
      `try { require('net').connect(9, '127.0.0.1') } catch (e) { console.log(String(e)) }`,
    ])
      expect(node('-e', code).stdout).toContain('no network here');
  });

  test('requirement 11: a good one ends with 0 and says what it shows', () => {
    const good = run(published);
    expect(good.status).toBe(0);
    expect(good.stdout).toContain('job-2: versions 1 to 8, unaltered and in this order');
    expect(good.stdout.trim().endsWith('All of it holds.')).toBe(true);
  });

  test('requirement 11: an altered one ends with 1 at the first fault, with its position where it has one', () => {
    const bytes = readFileSync(published);
    const altered = path.join(folder, 'altered.zip');
    const at = bytes.indexOf('entries/12.json') + 'entries/12.json'.length + 40;
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    writeFileSync(altered, bytes);
    const bad = run(altered);
    expect(bad.status).toBe(1);
    expect(bad.stdout).toContain('entries/12.json');
    expect(bad.stdout.trim().endsWith('It does not hold.')).toBe(true);
  });

  test('a checkpoint or key one holds is compared', () => {
    expect(run(published, '--checkpoint', '25 AAAA').status).toBe(1);
    expect(run(published, '--checkpoint', 'nonsense').status).toBe(2);
    expect(run(published, '--key', 'records.example/roofers+00000000+AAAA').status).toBe(1);
  });

  test('no file ends with 2 and one sentence', () => {
    const none = run(path.join(folder, 'nothing.zip'));
    expect(none.status).toBe(2);
    expect(none.stderr).toContain('cannot be read');
  });
});
