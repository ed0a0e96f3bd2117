// A fresh migrated database for tests that need one, on one server for the whole run. The server is
// the one from the packages, or the one named by TEST_DATABASE_URL (its owner may make databases).

import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { beforeAll } from '@jest/globals';
import type pg from 'pg';
import { newClient } from '#ledger';
import { findPlace } from '../apps/cli/data-folder.js';
import { migrate } from '../apps/cli/migrate.js';
import { makeDatabase, makeRoles, serviceUrl } from '../apps/cli/roles.js';
import { startServer } from '../apps/cli/server.js';

export interface TestDatabase {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  drop(): Promise<void>;
}

/** For one test file: there from its first test on, and gone with the run's server. */
export function withDatabase(): { readonly ownerUrl: string; readonly serviceUrl: string } {
  let database: TestDatabase | undefined;
  beforeAll(async () => {
    database = await freshDatabase();
  }, 120_000);
  const ready = () => {
    if (database === undefined) throw new Error('The database is there only inside tests.');
    return database;
  };
  return {
    get ownerUrl() {
      return ready().ownerUrl;
    },
    get serviceUrl() {
      return ready().serviceUrl;
    },
  };
}

/** A database of one's own; the caller drops it. */
export async function freshDatabase(): Promise<TestDatabase> {
  const server = await sharedServer();
  const name = `test_${randomBytes(6).toString('hex')}`;
  await asOwner(server.url, (owner) => owner.query(`CREATE DATABASE ${name} TEMPLATE ${TEMPLATE}`));
  const ownerUrl = databaseUrl(server.url, name);
  return {
    ownerUrl,
    serviceUrl: serviceUrl(ownerUrl, server.servicePassword),
    drop: () =>
      asOwner(server.url, async (owner) => {
        // Connections that are just ending may end by themselves before they are cut.
        for (let tries = 0; tries < 10; tries++) {
          const gone = await owner.query(`DROP DATABASE IF EXISTS ${name}`).catch(() => undefined);
          if (gone) return;
          await sleep(100);
        }
        await owner.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
      }),
  };
}

interface SharedServer {
  readonly url: string;
  readonly servicePassword: string;
}

const TEMPLATE = 'gauge_template';

/** The first test file that asks makes it; the others wait for its note. */
async function sharedServer(): Promise<SharedServer> {
  const folder = process.env['GAUGE_TEST_FOLDER'];
  if (folder === undefined) throw new Error('The test run was started without its global setup.');
  const note = path.join(folder, 'server.json');
  const making = path.join(folder, 'making');
  for (;;) {
    if (existsSync(note)) return JSON.parse(readFileSync(note, 'utf8')) as SharedServer;
    if (!claim(making)) {
      await sleep(50);
      continue;
    }
    try {
      const server = await makeServer(folder);
      writeFileSync(`${note}.new`, JSON.stringify(server), { mode: 0o600 });
      renameSync(`${note}.new`, note);
    } finally {
      rmSync(making, { force: true });
    }
  }
}

function claim(file: string): boolean {
  try {
    writeFileSync(file, '', { flag: 'wx' });
    return true;
  } catch {
    return false;
  }
}

async function makeServer(folder: string): Promise<SharedServer> {
  const outside = process.env['TEST_DATABASE_URL'];
  const server =
    outside === undefined
      ? await packagedServer(folder)
      : { url: outside, servicePassword: randomBytes(12).toString('hex') };
  await asOwner(server.url, async (owner) => {
    await makeRoles(owner, server.servicePassword);
    await owner.query(`DROP DATABASE IF EXISTS ${TEMPLATE} WITH (FORCE)`);
    await makeDatabase(owner, TEMPLATE);
  });
  await migrate(databaseUrl(server.url, TEMPLATE));
  return server;
}

async function packagedServer(folder: string): Promise<SharedServer> {
  const place = findPlace(folder);
  const server = await startServer(place, { max_connections: '300' });
  return { url: server.ownerUrl('postgres'), servicePassword: server.servicePassword };
}

function databaseUrl(serverUrl: string, name: string): string {
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  return url.href;
}

async function asOwner<T>(url: string, work: (owner: pg.Client) => Promise<T>): Promise<T> {
  const owner = newClient({ connectionString: url });
  await owner.connect();
  try {
    return await work(owner);
  } finally {
    await owner.end();
  }
}
