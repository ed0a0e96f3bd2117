// The signing key of an installation: which one is in use, and changing it. The key is the
// installation's and signs for every company in it, so changing it is for whoever keeps the server and
// the folder of keys, and for no company's administrator.

import { existsSync } from 'node:fs';
import path from 'node:path';
import type pg from 'pg';
import {
  companyPool,
  createPostgresLedger,
  createSigner,
  type KeyRing,
  openKeyRing,
  openPool,
} from '#ledger';
import { originOf } from '../api/data/signing.js';
import { fingerprintOf } from '../api/data/public-keys.js';
import { StartRefused } from './server-files.js';

export interface KeyFolder {
  /** The service role's address. */
  readonly serviceUrl: string;
  readonly keysFolder: string;
  readonly say: (line: string) => void;
}

const OPERATOR = { person: 'operator', role: 'operator' };

/** What is in use, and what a change would do; changes nothing. */
export async function showKey(at: KeyFolder): Promise<void> {
  const keys = ringIn(at.keysFolder);
  const companies = await withPool(at.serviceUrl, companiesIn);
  const fingerprint = fingerprintNow(keys);
  at.say(`In use: the key with fingerprint ${fingerprint}.`);
  at.say(`It signs the record of ${named(companies)}. Keys before it: ${formerIn(keys)}.`);
  if (keys.coming('key'))
    at.say('A change was begun and is not finished; changing goes on with it.');
  at.say('A change makes a new key, and an entry in each of these records that both keys sign.');
  at.say('What the key before has signed stays valid. It cannot be taken back: change once more.');
  at.say(`To change it: npm run -s keys -- change --from ${fingerprint}`);
}

/** @throws StartRefused with one sentence where nothing was changed, or not everywhere */
export async function changeKey(at: KeyFolder, from: string): Promise<void> {
  const keys = ringIn(at.keysFolder);
  const now = fingerprintNow(keys);
  if (from !== now)
    throw new StartRefused(
      `Nothing was changed: the key in use has fingerprint ${now}, not ${from}.`,
    );
  await withPool(at.serviceUrl, async (pool) => {
    const ledger = createPostgresLedger({ pool: companyPool(pool) });
    const signer = createSigner({ ledger, folder: at.keysFolder, origin: originOf, keys });
    const companies = await companiesIn(pool);
    const results = await signer.changeKey(companies, OPERATOR);
    const refused = results.flatMap((result, i) =>
      result.kind === 'refused' ? [`${companies[i]}: ${result.reason}`] : [],
    );
    if (refused.length > 0)
      throw new StartRefused(
        `The key before stays in use, because a record could not be signed. ${refused.join(' ')} ` +
          'Once that is settled, the same command goes on with the new key.',
      );
    at.say(`The key is changed; the entry stands in the record of ${named(companies)}.`);
    at.say(`In use now: the key with fingerprint ${fingerprintNow(keys)}.`);
    at.say('Services on this folder of keys sign with it from now on. A service on a copy of the');
    at.say('folder refuses to sign until it has this one. Keep a new copy of the folder offline,');
    at.say('and give the new key, from the page of keys, to whoever held the old one.');
  });
}

/** Opening a ring that is not there would make one. */
function ringIn(folder: string): KeyRing {
  const file = path.join(folder, 'signing-key.json');
  if (!existsSync(file)) throw new StartRefused(`There is no signing key in ${folder}.`);
  return openKeyRing(file);
}

const fingerprintNow = (keys: KeyRing): string => fingerprintOf(keys.signer('key').verifier);
const formerIn = (keys: KeyRing): number => keys.verifiers('key').length - 1;
const named = (companies: readonly string[]): string =>
  companies.length === 1 ? '1 company' : `${companies.length} companies`;

async function companiesIn(pool: pg.Pool): Promise<readonly string[]> {
  const { rows } = await pool.query<{ company_id: string }>('SELECT * FROM door.companies()');
  return rows.map(({ company_id }) => company_id);
}

async function withPool<T>(serviceUrl: string, work: (pool: pg.Pool) => Promise<T>): Promise<T> {
  const pool = openPool({ connectionString: serviceUrl, max: 2 });
  try {
    return await work(pool);
  } finally {
    await pool.end();
  }
}
