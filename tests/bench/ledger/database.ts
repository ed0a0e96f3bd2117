// A PostgreSQL of the bench's own, with its durability as it comes.

import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { newClient } from '#ledger';
import { startDatabase } from '../../../apps/cli/database.js';
import { migrate } from '../../../apps/cli/migrate.js';

export interface BenchDatabase {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  /** A new empty database on the same server. */
  empty(name: string): Promise<string>;
  stop(): Promise<void>;
}

export async function startBenchDatabase(): Promise<BenchDatabase> {
  const folder = mkdtempSync(path.join(tmpdir(), 'gauge-bench-'));
  chmodSync(folder, 0o755);
  const database = await startDatabase({
    dataFolder: folder,
    settings: { max_connections: '200' },
  });
  await migrate(database.ownerUrl);
  return {
    ownerUrl: database.ownerUrl,
    serviceUrl: database.serviceUrl,
    empty: (name) => makeEmpty(database.ownerUrl, name),
    stop: async () => {
      await database.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function makeEmpty(ownerUrl: string, name: string): Promise<string> {
  const owner = newClient({ connectionString: ownerUrl });
  await owner.connect();
  await owner.query(`DROP DATABASE IF EXISTS ${name}`);
  await owner.query(`CREATE DATABASE ${name}`);
  await owner.end();
  const url = new URL(ownerUrl);
  url.pathname = `/${name}`;
  return url.href;
}
