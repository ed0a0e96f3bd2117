// Starts the PostgreSQL that comes with the packages on one data folder, or takes over the one that
// a killed service left running there.

import path from 'node:path';
import type pg from 'pg';
import { newClient } from '#ledger';
import { findPlace, holdStart } from './data-folder.js';
import type { Place } from './data-folder.js';
import { makeDatabase, makeRoles, serviceUrl } from './roles.js';
import { StartRefused } from './server-files.js';
import { startServer, stopServer } from './server.js';
import type { Settings } from './server.js';

export { StartRefused } from './server-files.js';

export interface Database {
  /** For migrations only. */
  readonly ownerUrl: string;
  /** For the service: bound by row-level security. */
  readonly serviceUrl: string;
  readonly port: number;
  /** Sentences worth saying at start, such as where the data had to go. */
  readonly notices: readonly string[];
  /** Resolves when the server ends without having been asked to. */
  readonly lost: Promise<void>;
  stop(): Promise<void>;
}

export interface StartOptions {
  readonly dataFolder: string;
  /** Server settings besides ours. */
  readonly settings?: Settings;
}

const NAME = 'gauge';
const SERVICE_LOCK = 7_240_001;

/** @throws StartRefused with one clear sentence; nothing is damaged then. */
export async function startDatabase(options: StartOptions): Promise<Database> {
  const place = findPlace(path.resolve(options.dataFolder));
  const release = holdStart(place.folder);
  try {
    const server = await startServer(place, options.settings ?? {});
    try {
      const lock = await takeServiceLock(place, server.ownerUrl('postgres'));
      await makeRoles(lock, server.servicePassword);
      await makeDatabase(lock, NAME);
      return { ...held(place, lock), port: server.port, notices: place.notices, ...urls(server) };
    } catch (error) {
      if (server.started) await stopServer(place);
      throw error;
    }
  } finally {
    release();
  }
}

function urls(server: Awaited<ReturnType<typeof startServer>>) {
  const ownerUrl = server.ownerUrl(NAME);
  return { ownerUrl, serviceUrl: serviceUrl(ownerUrl, server.servicePassword) };
}

function held(place: Place, lock: pg.Client): Pick<Database, 'lost' | 'stop'> {
  let stopping = false;
  const lost = new Promise<void>((resolve) => {
    lock.on('end', () => {
      if (!stopping) resolve();
    });
  });
  const stop = async () => {
    stopping = true;
    await lock.end().catch(() => undefined);
    await stopServer(place);
  };
  return { lost, stop };
}

/** The lock lives as long as the service: a live server without it was left by a killed one. */
async function takeServiceLock(place: Place, url: string): Promise<pg.Client> {
  const client = newClient({ connectionString: url, application_name: `gauge ${process.pid}` });
  await client.connect();
  const taken = await client.query('SELECT pg_try_advisory_lock($1) AS ok', [SERVICE_LOCK]);
  if (taken.rows[0].ok === true) return client;
  const holder = await client.query(
    `SELECT a.application_name AS name FROM pg_locks l JOIN pg_stat_activity a USING (pid)
     WHERE l.locktype = 'advisory' AND l.objid = $1 AND l.granted`,
    [SERVICE_LOCK],
  );
  await client.end();
  const pid = String(holder.rows[0]?.name ?? '').split(' ')[1] ?? 'unknown';
  throw new StartRefused(`The folder ${place.folder} is in use by process ${pid}.`);
}
