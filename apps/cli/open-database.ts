// The migrated database to work on: the one of DATABASE_URL, or our own in the data folder.

import type pg from 'pg';
import { newClient } from '#ledger';
import { startDatabase, StartRefused } from './database.js';
import { DEMONSTRATION } from './demonstration/people.js';
import { migrate } from './migrate.js';

export interface Opened {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  readonly notices: readonly string[];
  readonly lost: Promise<void>;
  hasCompany(): Promise<boolean>;
  hasDemonstration(): Promise<boolean>;
  /** Of every company here; only the owner of the tables sees them all. */
  companies(): Promise<readonly string[]>;
  stop(): Promise<void>;
}

/** @throws StartRefused with one sentence */
export async function openDatabase(dataFolder: string): Promise<Opened> {
  const { DATABASE_URL: ownerUrl, DATABASE_SERVICE_URL: serviceUrl } = process.env;
  if ((ownerUrl === undefined) !== (serviceUrl === undefined)) {
    throw new StartRefused('DATABASE_URL and DATABASE_SERVICE_URL are set together or not at all.');
  }
  const database =
    ownerUrl !== undefined && serviceUrl !== undefined
      ? outside(ownerUrl, serviceUrl)
      : await startDatabase({ dataFolder });
  try {
    await migrate(database.ownerUrl);
    if (ownerUrl !== undefined) await letServe(database.ownerUrl, database.serviceUrl);
  } catch (error) {
    await database.stop();
    throw new StartRefused(`The database cannot be brought up to date: ${firstLine(error)}`);
  }
  return {
    ownerUrl: database.ownerUrl,
    serviceUrl: database.serviceUrl,
    notices: database.notices,
    lost: database.lost,
    stop: () => database.stop(),
    hasCompany: () => exists(database.ownerUrl, 'SELECT FROM company'),
    hasDemonstration: () =>
      exists(database.ownerUrl, `SELECT FROM company WHERE id = '${DEMONSTRATION.company}'`),
    companies: () =>
      asOwner(database.ownerUrl, async (owner) =>
        (await owner.query<{ id: string }>('SELECT id FROM company')).rows.map(({ id }) => id),
      ),
  };
}

const firstLine = (error: unknown): string =>
  ((error as Error).message || String((error as { code?: string }).code ?? error))
    .trim()
    .split('\n')[0] ?? '';

function outside(ownerUrl: string, serviceUrl: string) {
  const never = new Promise<void>(() => undefined);
  return {
    ownerUrl,
    serviceUrl,
    notices: [] as readonly string[],
    lost: never,
    stop: () => Promise.resolve(),
  };
}

/** Makes the role of DATABASE_SERVICE_URL one of those that serve. */
async function letServe(ownerUrl: string, serviceUrl: string): Promise<void> {
  const role = decodeURIComponent(new URL(serviceUrl).username);
  await asOwner(ownerUrl, async (owner) => {
    const { rows } = await owner.query<{ member: boolean }>(
      `SELECT pg_has_role(rolname, 'gauge_service', 'MEMBER') AS member
       FROM pg_roles WHERE rolname = $1`,
      [role],
    );
    if (!rows[0]) throw new Error(`there is no role ${role}, which DATABASE_SERVICE_URL names.`);
    if (!rows[0].member)
      await owner.query(`GRANT gauge_service TO ${owner.escapeIdentifier(role)}`);
  });
}

const exists = (url: string, query: string): Promise<boolean> =>
  asOwner(
    url,
    async (owner) =>
      ((await owner.query(`SELECT EXISTS (${query}) AS found`)).rows[0] as { found: boolean })
        .found,
  );

async function asOwner<T>(url: string, work: (owner: pg.Client) => Promise<T>): Promise<T> {
  const owner = newClient({ connectionString: url });
  await owner.connect();
  try {
    return await work(owner);
  } finally {
    await owner.end();
  }
}
