import { afterAll, afterEach, beforeAll } from '@jest/globals';
import type pg from 'pg';
import { withDatabase } from '../../tests/database.js';
import { companyPool, newClient, openServicePool } from './postgres-pool.js';
import { ledgerSuite } from '../../tests/ledger-suite.js';
import { createPostgresLedger } from './postgres-ledger.js';

const database = withDatabase();
let service: pg.Pool;
let owner: pg.Client;

beforeAll(async () => {
  service = openServicePool(database.serviceUrl, 10);
  owner = newClient({ connectionString: database.ownerUrl });
  await owner.connect();
});

/** The owner clears the logs by switching off what keeps them. */
afterEach(async () => {
  await owner.query(`
    ALTER TABLE ledger.event DISABLE TRIGGER kept;
    ALTER TABLE ledger.checkpoint DISABLE TRIGGER kept;
    TRUNCATE ledger.event, ledger.log, ledger.command, ledger.checkpoint, ledger.issued;
    ALTER TABLE ledger.event ENABLE TRIGGER kept;
    ALTER TABLE ledger.checkpoint ENABLE TRIGGER kept`);
});

afterAll(async () => {
  await service.end();
  await owner.end();
});

ledgerSuite(() => {
  const pool = companyPool(service);
  return { ledger: (options) => createPostgresLedger({ pool, ...options }) };
});
