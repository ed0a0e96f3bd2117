// Races and rollbacks: positions stay 1, 2, 3, … without gap or fork under fifty writers, two
// processes and statements that fail at random (checklist 3, 4); other databases of the server do
// not matter.

import { afterAll, beforeAll, beforeEach, expect, test } from '@jest/globals';
import type pg from 'pg';
import { companyPool, createPostgresLedger, newClient, openServicePool } from '#ledger';
import type { AppendRequest, AppendResult, CompanyPool, Ledger } from '#ledger';
import { freshDatabase, withDatabase } from '../database.js';
import { expectSound, request } from '../ledger-suite.js';

const database = withDatabase();
let service: pg.Pool;
let logs = 0;
let log: string;

beforeAll(() => {
  service = openServicePool(database.serviceUrl, 12);
});

afterAll(async () => {
  await service.end();
});

beforeEach(async () => {
  log = `log-${++logs}`;
  await createPostgresLedger({ pool: companyPool(service) }).createLog(log);
});

/** One statement in five is rolled back; in one of five such cases it was not, and its answer is lost. */
function failingPool(): CompanyPool {
  const pool = companyPool(service);
  return { ...pool, use: (company, work) => pool.use(company, (client) => work(failing(client))) };
}

/** The statements of one connection, one after another. */
function failing(client: pg.PoolClient): pg.PoolClient {
  let turn: Promise<unknown> = Promise.resolve();
  const query = async (statement: pg.QueryConfig): Promise<pg.QueryResult> => {
    const fails = statement.name === 'ledger-commit' && Math.random() < 0.2;
    if (!fails) return client.query(statement);
    const rollBack = Math.random() < 0.8;
    if (rollBack) await client.query('BEGIN');
    await client.query(statement);
    if (rollBack) await client.query('ROLLBACK');
    throw new Error('rolled back');
  };
  const inTurn = (statement: pg.QueryConfig) => {
    const result = turn.then(() => query(statement));
    turn = result.catch(() => undefined);
    return result;
  };
  return { query: inTurn } as unknown as pg.PoolClient;
}

async function untilAnswered(ledger: Ledger, each: AppendRequest): Promise<AppendResult> {
  for (;;) {
    try {
      return await ledger.append(each);
    } catch (error) {
      expect(String(error)).toContain('rolled back');
    }
  }
}

test('requirements 3 and 4: fifty writers in two processes, a fifth of all statements rolled back', async () => {
  const two = [0, 1].map(() => createPostgresLedger({ pool: failingPool() }));
  let kept = 0;
  const write = async (writer: number) => {
    let version = 0;
    for (let i = 0; i < 8; i++) {
      const stream = `s${writer % 6}`;
      const events = Array.from({ length: 1 + (i % 3) }, (_, n) => `${writer}-${i}-${n}`);
      const each = { ...request(stream, version, events), log };
      const result = await untilAnswered(two[writer % 2]!, each);
      if (result.kind === 'appended' || result.kind === 'repeated') {
        kept += result.positions.length;
        version = result.versions[stream]!;
      }
      if (result.kind === 'wrong-version') version = result.actual;
    }
  };
  await Promise.all(Array.from({ length: 50 }, (_, writer) => write(writer)));
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  const all = await expectSound(ledger, log);
  expect(all.length).toBe(kept);
  expect(await ledger.verify(log, [])).toMatchObject({ events: kept, fault: undefined });
}, 60_000);

test('a writer with no company set is a fault, and the log is as it was', async () => {
  const bare: CompanyPool = {
    use: async (_, work) => {
      const client = await service.connect();
      try {
        await client.query("SELECT set_config('gauge.company', '', false)");
        return await work(client);
      } finally {
        client.release(true);
      }
    },
    transaction: () => Promise.reject(new Error('not used here')),
  };
  const wrong = createPostgresLedger({ pool: bare });
  await expect(wrong.append({ ...request('a', 0, ['one']), log })).rejects.toThrow(
    'No company is set',
  );
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  expect((await ledger.head(log)).pos).toBe(0);
});

test('a connection of another company cannot move this log', async () => {
  const pool = companyPool(service);
  const other: CompanyPool = { ...pool, use: (_, work) => pool.use('somebody-else', work) };
  const wrong = createPostgresLedger({ pool: other });
  await expect(wrong.append({ ...request('a', 0, ['one']), log })).rejects.toThrow(
    `There is no log ${log}, or it cannot be seen`,
  );
});

test('an idle transaction in another database of the server holds nothing up', async () => {
  const elsewhere = await freshDatabase();
  const idle = newClient({ connectionString: elsewhere.ownerUrl });
  await idle.connect();
  await idle.query('BEGIN; CREATE TABLE t (); SELECT pg_current_xact_id()');
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  for (let v = 0; v < 20; v++) await ledger.append({ ...request('a', v, ['one']), log });
  const seen = await ledger.readAll(log, { after: 0, limit: 100 });
  expect(seen.length).toBe(20);
  await idle.end();
  await elsewhere.drop();
});
