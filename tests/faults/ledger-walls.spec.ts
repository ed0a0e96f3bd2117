// Company walls and kept rows, tried by SQL as the service role and as the owner (checklist 2).

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type pg from 'pg';
import { companyPool, createPostgresLedger, openPool, serviceRoleFaults } from '#ledger';
import { withDatabase } from '../database.js';

const database = withDatabase();
const TABLES = ['log', 'event', 'command', 'checkpoint', 'time_stamp', 'issued', 'projection'];
let service: pg.Pool;
let owner: pg.Pool;

beforeAll(async () => {
  service = openPool({ connectionString: database.serviceUrl, max: 1 });
  owner = openPool({ connectionString: database.ownerUrl, max: 1 });
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  for (const log of ['ours', 'theirs']) {
    await ledger.createLog(log);
    await ledger.append({
      log,
      command: { id: 'c', digest: 'd' },
      by: { person: 'p', role: 'r' },
      streams: [{ stream: 's', expectedVersion: 0, events: [{ type: 't/1', data: {} }] }],
    });
  }
  await owner.query(`
    INSERT INTO ledger.projection SELECT log_id, 'list', 1, 0, true FROM ledger.log;
    INSERT INTO ledger.checkpoint SELECT log_id, 1, root, 'note' FROM ledger.log;
    INSERT INTO ledger.time_stamp SELECT log_id, 1, root, root, 'pem' FROM ledger.log;
    INSERT INTO ledger.issued (log_id, digest, media_type, bytes)
      SELECT log_id, root, 'text/plain', 'x' FROM ledger.log`);
});

afterAll(async () => {
  await service.end();
  await owner.end();
});

async function as(company: string, sql: string): Promise<pg.QueryResult> {
  await service.query("SELECT set_config('gauge.company', $1, false)", [company]);
  return service.query(sql);
}

test.each(TABLES)('of ledger.%s a company sees its own rows and no other', async (table) => {
  const rows = async (company: string) =>
    (await as(company, `SELECT log_id FROM ledger.${table}`)).rows;
  expect(await rows('ours')).toEqual([{ log_id: 'ours' }]);
  expect(await rows('theirs')).toEqual([{ log_id: 'theirs' }]);
  expect(await rows('nobody')).toEqual([]);
});

test.each(TABLES)('without a company ledger.%s is an error, not an empty list', async (table) => {
  await expect(as('', `SELECT * FROM ledger.${table}`)).rejects.toThrow('No company is set');
});

test.each([
  [`UPDATE ledger.log SET head = 0 WHERE log_id = 'theirs'`],
  [`UPDATE ledger.projection SET pos = 9 WHERE log_id = 'theirs'`],
  [`DELETE FROM ledger.command WHERE log_id = 'theirs'`],
])('another company’s row cannot be changed: %s', async (sql) => {
  expect((await as('ours', sql)).rowCount).toBe(0);
});

test('a row cannot be written into another company’s log', async () => {
  const sql = `INSERT INTO ledger.projection VALUES ('theirs', 'mine', 1, 0, false)`;
  await expect(as('ours', sql)).rejects.toThrow('row-level security');
});

const CHANGES = [
  `UPDATE ledger.event SET type = 'x'`,
  'DELETE FROM ledger.event',
  'TRUNCATE ledger.event',
  `UPDATE ledger.checkpoint SET note = 'x'`,
  'DELETE FROM ledger.checkpoint',
  `UPDATE ledger.time_stamp SET trusted = 'x'`,
  'DELETE FROM ledger.time_stamp',
];

test.each(CHANGES)('requirement 2: the service cannot: %s', async (sql) => {
  await expect(as('ours', sql)).rejects.toThrow('permission denied');
});

test.each([
  'ALTER TABLE ledger.event ADD COLUMN x int',
  'ALTER TABLE ledger.event DISABLE TRIGGER ALL',
  'DROP TABLE ledger.event',
  'ALTER TABLE ledger.event DISABLE ROW LEVEL SECURITY',
  'DROP POLICY company ON ledger.event',
])('requirement 2: the service cannot: %s', async (sql) => {
  await expect(as('ours', sql)).rejects.toThrow('must be owner');
});

test.each(CHANGES)('requirement 2: even the owner is refused: %s', async (sql) => {
  await expect(owner.query(sql)).rejects.toThrow('is refused: it is kept as written');
});

test('the service role is fit to serve, and the owner is not', async () => {
  expect(await serviceRoleFaults(service)).toEqual([]);
  expect((await serviceRoleFaults(owner)).join(' ')).toContain('is a superuser');
});
