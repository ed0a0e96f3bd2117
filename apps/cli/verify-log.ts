// Verifies a company's whole record in its database, without the service: every entry, every chain, and
// every signed checkpoint, those kept outside the database first.

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type pg from 'pg';
import {
  type Checkpoint,
  companyPool,
  createPostgresLedger,
  createSigner,
  type Ledger,
  openKeyRing,
  openPool,
  timeStampFault,
  verifyInWorkers,
} from '#ledger';
import { originOf } from '../api/data/signing.js';
import { findPlace } from './data-folder.js';
import { serviceUrl as withService } from './roles.js';

export interface LogCheck {
  /** A service role's address; without it the database that runs on the data folder. */
  readonly serviceUrl: string | undefined;
  readonly dataFolder: string;
  readonly company: string | undefined;
  /** Folder of the signing keys and last checkpoints; in the data folder unless given. */
  readonly keysFolder: string | undefined;
  /** Held from elsewhere, such as from a paper. */
  readonly held: { readonly size: number; readonly root: string } | undefined;
  readonly say: (line: string) => void;
}

/** True where all holds. @throws Error with one sentence where nothing can be verified */
export async function verifyWholeLog(check: LogCheck): Promise<boolean> {
  const { say, held } = check;
  const address = check.serviceUrl ?? runningOn(check.dataFolder);
  const pool = openPool({ connectionString: address, max: 2 });
  try {
    const log = check.company ?? (await theOnlyCompany(pool));
    const ledger = createPostgresLedger({ pool: companyPool(pool) });
    const { checkpoints, faults, outside } = await signedBefore(ledger, log, check);
    const all = held
      ? [...checkpoints, { origin: originOf(log), size: held.size, root: base64(held.root) }]
      : checkpoints;
    let shown = 0;
    const report = await verifyInWorkers({
      serviceUrl: address,
      log,
      checkpoints: all,
      workers: 2,
      onProgress: (done, of) => {
        if (done - shown < 50_000 && done < of) return;
        shown = done;
        say(`${done} of ${of} entries`);
      },
    });
    const stampFault = await timeStampFault(ledger, log);
    for (const fault of [...faults, ...(stampFault ? [stampFault] : [])]) say(fault);
    say(
      outside === undefined
        ? 'No checkpoint is kept outside the database; compare with one from a paper: --checkpoint.'
        : `Held to the checkpoint of ${outside.size} entries kept outside the database.`,
    );
    say(`${report.events} entries hold, ${report.checkpoints} of ${all.length} checkpoints met.`);
    if (report.fault) say(`First bad position: ${report.fault.pos}: ${report.fault.says}.`);
    return !report.fault && !stampFault && faults.length === 0;
  } finally {
    await pool.end();
  }
}

async function theOnlyCompany(pool: pg.Pool): Promise<string> {
  const { rows } = await pool.query<{ company_id: string }>('SELECT * FROM door.companies()');
  const [only, another] = rows;
  if (!only) throw new Error('There is no company in this database.');
  if (another)
    throw new Error(
      `Say which company: --company ID, one of ${rows.map((row) => row.company_id).join(', ')}.`,
    );
  return only.company_id;
}

async function signedBefore(
  ledger: Ledger,
  log: string,
  { keysFolder, dataFolder }: LogCheck,
): Promise<{
  checkpoints: readonly Checkpoint[];
  faults: readonly string[];
  outside?: Checkpoint;
}> {
  const folder = keysFolder ?? path.resolve(dataFolder, 'keys');
  const file = path.join(folder, 'signing-key.json');
  // Opening a ring that is not there would make one.
  if (!existsSync(file)) return { checkpoints: [], faults: [] };
  const signer = createSigner({ ledger, folder, origin: originOf, keys: openKeyRing(file) });
  const { outside, kept, faults } = await signer.signed(log);
  if (outside === undefined) return { checkpoints: kept, faults };
  return { checkpoints: [...kept, outside], faults, outside };
}

/** The service role's address of the database that runs on this folder. */
function runningOn(dataFolder: string): string {
  const place = findPlace(path.resolve(dataFolder));
  const pidFile = path.join(place.data, 'postmaster.pid');
  const passwordFile = path.join(place.folder, 'database.json');
  if (!existsSync(pidFile) || !existsSync(passwordFile)) {
    throw new Error(
      `No database runs on ${dataFolder}: start the product first, or set DATABASE_SERVICE_URL.`,
    );
  }
  const port = readFileSync(pidFile, 'utf8').split('\n')[3] ?? '';
  const { service } = JSON.parse(readFileSync(passwordFile, 'utf8')) as { service: string };
  return withService(`postgresql://nobody@127.0.0.1:${port.trim()}/gauge`, service);
}

const base64 = (text: string): Buffer => Buffer.from(text, 'base64');
