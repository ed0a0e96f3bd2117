// The address of a running installation's database, for commands that only read it: as the service's
// own role, which cannot change what is recorded.

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { findPlace, isAlive, type Passwords } from './data-folder.js';
import { serviceUrl } from './roles.js';
import { StartRefused } from './server-files.js';

/** @throws StartRefused where nothing runs on that folder */
export function runningServiceUrl(dataFolder: string): string {
  const folder = path.resolve(dataFolder);
  const passwordFile = path.join(folder, 'database.json');
  if (!existsSync(passwordFile)) throw new StartRefused(`There is no installation in ${folder}.`);
  const { data } = findPlace(folder);
  const file = path.join(data, 'postmaster.pid');
  const [pid, , , port] = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  if (!isAlive(Number(pid)) || !Number(port)) {
    throw new StartRefused(`Nothing runs on ${folder}: start it first, with npm start.`);
  }
  const { service } = JSON.parse(readFileSync(passwordFile, 'utf8')) as Passwords;
  return serviceUrl(`postgresql://127.0.0.1:${Number(port)}/gauge`, service);
}
