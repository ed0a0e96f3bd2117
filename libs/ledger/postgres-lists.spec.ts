import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from '@jest/globals';
import type pg from 'pg';
import { withDatabase } from '../../tests/database.js';
import { companyPool, newClient, openServicePool } from './postgres-pool.js';
import type { Ledger } from './ledger.js';
import type { List, Lists } from './postgres-list.js';
import { COUNTED, COUNTED_TABLE, LOG } from '../../tests/faults/ledger-counted.js';
import { createLists } from './postgres-lists.js';
import { createPostgresLedger } from './postgres-ledger.js';
import { createSignals } from './signals.js';
import { request } from '../../tests/ledger-suite.js';
import { startWakeUp } from './postgres-wake-up.js';
import type { WakeUp } from './postgres-wake-up.js';

const database = withDatabase();
let owner: pg.Client;
let pools: pg.Pool[] = [];
let wakeUps: WakeUp[] = [];
let runners: Lists[] = [];
let faults: unknown[] = [];

beforeAll(async () => {
  owner = newClient({ connectionString: database.ownerUrl });
  await owner.connect();
  await owner.query(COUNTED_TABLE);
});

beforeEach(async () => {
  faults = [];
  await startProcess().ledger.createLog(LOG);
});

afterEach(async () => {
  for (const runner of runners) await runner.stop();
  for (const wakeUp of wakeUps) await wakeUp.stop();
  for (const pool of pools) await pool.end();
  [runners, wakeUps, pools] = [[], [], []];
  await owner.query(`
    ALTER TABLE ledger.event DISABLE TRIGGER kept;
    TRUNCATE ledger.event, ledger.log, ledger.command, ledger.projection, counted;
    ALTER TABLE ledger.event ENABLE TRIGGER kept`);
});

afterAll(async () => {
  await owner.end();
});

/** What one process of the service has. */
function startProcess(lists: readonly List[] = [COUNTED], pageSize = 7) {
  const service = openServicePool(database.serviceUrl, 6);
  pools.push(service);
  const pool = companyPool(service);
  const signals = createSignals();
  const ledger = createPostgresLedger({ pool, signals });
  const onFault = (_: string, __: string, fault: unknown) => faults.push(fault);
  const runner = createLists({ ledger, pool, lists, signals, onFault, pageSize, pollMs: 50 });
  runners.push(runner);
  return { ledger, lists: runner };
}

function connectProcesses(ledger: Ledger, onWake: (log: string | undefined) => void): WakeUp {
  const wakeUp = startWakeUp({
    newClient: () => newClient({ connectionString: database.serviceUrl }),
    onWake,
    onFault: (fault) => faults.push(fault),
  });
  ledger.onAppended((log) => wakeUp.announce(log));
  wakeUps.push(wakeUp);
  return wakeUp;
}

async function fill(ledger: Ledger, streams: number, each: number, from = 0): Promise<number> {
  let last = 0;
  for (let v = from; v < from + each; v++) {
    const done = await Promise.all(
      Array.from({ length: streams }, (_, i) => ledger.append(request(`s${i}`, v, ['one']))),
    );
    for (const result of done) if (result.kind === 'appended') last = Math.max(last, result.last);
  }
  return last;
}

const rows = async (generation = 1) =>
  (
    await owner.query(
      'SELECT stream, n, version FROM counted WHERE generation = $1 ORDER BY stream',
      [generation],
    )
  ).rows as { stream: string; n: number; version: number }[];

test('a list follows, and the caller who waits sees what it wrote', async () => {
  const { ledger, lists } = startProcess();
  lists.follow(LOG);
  const last = await fill(ledger, 3, 5);
  expect(await ledger.waitFor(LOG, 'counted', last, 2000)).toBeGreaterThanOrEqual(last);
  expect(await rows()).toEqual(['s0', 's1', 's2'].map((stream) => ({ stream, n: 5, version: 5 })));
  expect(await ledger.waitFor(LOG, 'counted', last + 1, 30)).toBe(last);
});

test('two processes keep one list and every event counts once', async () => {
  const [one, two] = [startProcess(), startProcess()];
  one.lists.follow(LOG);
  two.lists.follow(LOG);
  const last = await fill(one.ledger, 10, 20);
  await two.ledger.waitFor(LOG, 'counted', last, 5000);
  expect((await rows()).every(({ n, version }) => n === 20 && version === 20)).toBe(true);
  expect(faults).toEqual([]);
});

test('a rebuild equals keeping, also while events come in, and readers get the new rows', async () => {
  const { ledger, lists } = startProcess();
  lists.follow(LOG);
  await fill(ledger, 10, 10);
  const writing = fill(ledger, 10, 10, 10);
  const rebuilt = await lists.rebuild(LOG, 'counted');
  expect(rebuilt).toMatchObject({ generation: 2, equal: true, swapped: true });
  await ledger.waitFor(LOG, 'counted', await writing, 5000);
  expect(await lists.generation(LOG, 'counted')).toBe(2);
  expect((await rows(2)).map((row) => row.n)).toEqual(Array(10).fill(20));
  expect(await rows(1)).toEqual([]);
  expect((await lists.states(LOG)).map((state) => state.generation)).toEqual([2]);
});

test('a list that was altered is found by its rebuild, and swapped only on demand', async () => {
  const { ledger, lists } = startProcess();
  await fill(ledger, 2, 3);
  await lists.catchUp(LOG);
  await owner.query(`UPDATE counted SET n = 99 WHERE stream = 's1'`);
  const seen: number[] = [];
  const onProgress = (pos: number) => seen.push(pos);
  const first = await lists.rebuild(LOG, 'counted', { onProgress });
  expect(first).toMatchObject({ generation: 2, equal: false, swapped: false });
  expect(seen.at(-1)).toBe(6);
  expect(await lists.generation(LOG, 'counted')).toBe(1);
  const second = await lists.rebuild(LOG, 'counted', { acceptDifference: true });
  expect(second).toMatchObject({ generation: 3, equal: false, swapped: true });
  expect((await rows(3)).map((row) => row.n)).toEqual([3, 3]);
  expect((await rows(1)).map((row) => row.n)).toEqual([3, 99]);
  expect(await rows(2)).toEqual([]);
});

test('one list’s fault leaves its rows as they were and does not hold up another', async () => {
  let broken = true;
  const fragile: List = {
    ...COUNTED,
    name: 'fragile',
    apply: async (events, scope, client) => {
      await COUNTED.apply(events, { ...scope, generation: 50 }, client);
      if (broken) throw new Error('out of order');
    },
  };
  const { ledger, lists } = startProcess([fragile, COUNTED]);
  lists.follow(LOG);
  const last = await fill(ledger, 1, 5);
  expect(await ledger.waitFor(LOG, 'counted', last, 2000)).toBe(last);
  expect(await ledger.waitFor(LOG, 'fragile', last, 100)).toBe(0);
  expect(await rows(50)).toEqual([]);
  broken = false;
  expect(await ledger.waitFor(LOG, 'fragile', last, 5000)).toBe(last);
  expect((await rows(50)).map((row) => row.n)).toEqual([5]);
  expect(faults.length).toBeGreaterThan(0);
});

test('another process is woken at once, and nothing is sent while nobody else listens', async () => {
  const [one, two] = [startProcess(), startProcess()];
  connectProcesses(one.ledger, () => undefined);
  await sleep(200);
  const spy = newClient({ connectionString: database.serviceUrl });
  await spy.connect();
  const sent: string[] = [];
  spy.on('notification', (message) => sent.push(message.payload ?? ''));
  await spy.query('LISTEN ledger_wake_up');
  await one.ledger.append(request('a', 0, ['one']));
  await sleep(100);
  expect(sent).toEqual([]);
  const woken: (string | undefined)[] = [];
  connectProcesses(two.ledger, (log) => woken.push(log));
  await sleep(200);
  sent.length = 0;
  for (let v = 1; v <= 40; v++) await one.ledger.append(request('a', v, ['next']));
  await sleep(100);
  expect(new Set(woken)).toEqual(new Set([LOG]));
  expect(sent.length).toBeLessThan(40);
  await spy.end();
});
