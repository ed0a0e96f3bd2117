// The folder an installation keeps its database in: where it lies, who is starting on it, and how it
// is made the first time.

import { createHash, randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { canReach, copyServerFiles, findServerFiles, run, StartRefused } from './server-files.js';
import type { ServerFiles } from './server-files.js';

export interface Place {
  readonly files: ServerFiles;
  /** The server's own folder. */
  readonly data: string;
  /** Ours: passwords, the server's log. */
  readonly folder: string;
  readonly notices: readonly string[];
}

export interface Passwords {
  readonly owner: string;
  readonly service: string;
}

export const OWNER = 'gauge_owner';

/** Where the data lies: in the data folder, unless the server's user cannot reach that one. */
export function findPlace(dataFolder: string): Place {
  const files = findServerFiles();
  makeFolder(dataFolder);
  const data = path.join(dataFolder, 'postgres');
  const reachable = canReach(files, '-x', dataFolder);
  if (reachable && canReach(files, '-x', path.join(files.bin, 'postgres'))) {
    return { files, data, folder: dataFolder, notices: [] };
  }
  const id = createHash('sha256').update(dataFolder).digest('hex').slice(0, 12);
  const elsewhere = path.join('/var/lib/gauge-ledger', id);
  makeFolder(elsewhere);
  const copied = copyServerFiles(files, path.join(elsewhere, 'server'));
  return {
    files: copied,
    data: reachable ? data : path.join(elsewhere, 'postgres'),
    folder: dataFolder,
    notices: [
      reachable
        ? `The database server's programs were copied to ${elsewhere}, where its user can run them.`
        : `The database lies in ${elsewhere}, because its user cannot reach ${dataFolder}.`,
    ],
  };
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o755 });
    writeFileSync(path.join(folder, '.writable'), '');
    rmSync(path.join(folder, '.writable'));
  } catch (error) {
    throw new StartRefused(`The folder ${folder} cannot be written: ${(error as Error).message}.`);
  }
}

/** Keeps two starts on one folder apart until the server itself can tell them apart. */
export function holdStart(folder: string): () => void {
  const file = path.join(folder, 'starting.pid');
  for (;;) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      return () => rmSync(file, { force: true });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      const holder = Number(readFileSync(file, 'utf8'));
      if (isAlive(holder) && holder !== process.pid) {
        throw new StartRefused(`The folder ${folder} is in use by process ${holder}.`);
      }
      rmSync(file, { force: true });
    }
  }
}

/** A zombie, which a container without a reaping first process keeps, is not alive. */
export function isAlive(pid: number): boolean {
  if (!Number.isSafeInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  const stat = `/proc/${pid}/stat`;
  return !existsSync(stat) || !/\) Z /.test(readFileSync(stat, 'utf8'));
}

/** Makes the server's folder the first time, whole or not at all; gives the passwords. */
export async function preparedData(place: Place): Promise<Passwords> {
  const passwordFile = path.join(place.folder, 'database.json');
  if (existsSync(path.join(place.data, 'PG_VERSION'))) {
    await checkVersion(place);
    if (!existsSync(passwordFile)) {
      throw new StartRefused(`${passwordFile} with the database's passwords is missing.`);
    }
    return JSON.parse(readFileSync(passwordFile, 'utf8')) as Passwords;
  }
  const passwords = { owner: secret(), service: secret() };
  writeFileSync(passwordFile, JSON.stringify(passwords), { mode: 0o600 });
  chmodSync(passwordFile, 0o600);
  await initialize(place, passwords.owner);
  return passwords;
}

const secret = (): string => randomBytes(24).toString('base64url');

async function initialize(place: Place, password: string): Promise<void> {
  const fresh = `${place.data}.new`;
  const passwordFile = `${place.data}.password`;
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh, { mode: 0o700 });
  writeFileSync(passwordFile, password, { mode: 0o600 });
  const user = place.files.user;
  if (user !== undefined) for (const f of [fresh, passwordFile]) chownSync(f, user.uid, user.gid);
  const made = await run(place.files, 'initdb', [
    '-D',
    fresh,
    '-U',
    OWNER,
    `--pwfile=${passwordFile}`,
    '--encoding=UTF8',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--auth=scram-sha-256',
  ]);
  rmSync(passwordFile, { force: true });
  if (made.code !== 0) {
    rmSync(fresh, { recursive: true, force: true });
    throw new StartRefused(`The database could not be made in ${place.data}: ${made.said}`);
  }
  renameSync(fresh, place.data);
}

async function checkVersion(place: Place): Promise<void> {
  const has = readFileSync(path.join(place.data, 'PG_VERSION'), 'utf8').trim();
  const { said } = await run(place.files, 'postgres', ['--version']);
  const ours = /(\d+)\./.exec(said)?.[1];
  if (has !== ours) {
    throw new StartRefused(
      `The database in ${place.data} is of PostgreSQL ${has}, this server is PostgreSQL ${ours}.`,
    );
  }
}
