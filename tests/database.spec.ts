// The database of the tests is what the product's launcher and migrations make.

import { expect, test } from '@jest/globals';
import { newClient } from '#ledger';
import { withDatabase } from './database.js';

const database = withDatabase();

async function ask(url: string, sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = newClient({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows as Record<string, unknown>[];
  } finally {
    await client.end();
  }
}

test('the migrations are recorded the way Prisma records them', async () => {
  const rows = await ask(
    database.ownerUrl,
    'SELECT migration_name AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL ORDER BY 1',
  );
  expect(rows[0]).toEqual({ name: '20261125080000_ledger' });
});

test('the service is neither superuser nor owner, and cannot pass the company walls', async () => {
  const rows = await ask(
    database.serviceUrl,
    'SELECT rolsuper, rolbypassrls FROM pg_roles WHERE rolname = current_user',
  );
  expect(rows).toEqual([{ rolsuper: false, rolbypassrls: false }]);
});

test.each(['log', 'event', 'command', 'checkpoint', 'time_stamp', 'issued', 'projection'])(
  'without a company even an empty ledger.%s is an error',
  async (table) => {
    await expect(ask(database.serviceUrl, `SELECT * FROM ledger.${table}`)).rejects.toThrow(
      'No company is set',
    );
  },
);
