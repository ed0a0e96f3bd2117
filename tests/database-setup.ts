// Before a test run: a folder for its database server, which starts only when a test asks for it.
// When the run ends, its server ends and the folder goes; so do those of runs that were killed.

import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const PREFIX = 'gauge-test-';

export default function setUp(): void {
  for (const name of readdirSync(tmpdir())) {
    const run = Number(name.startsWith(PREFIX) ? name.slice(PREFIX.length) : Number.NaN);
    if (Number.isSafeInteger(run) && !isAlive(run)) remove(path.join(tmpdir(), name));
  }
  const folder = path.join(tmpdir(), `${PREFIX}${process.pid}`);
  mkdirSync(folder, { recursive: true, mode: 0o755 });
  process.env['GAUGE_TEST_FOLDER'] = folder;
  process.on('exit', () => remove(folder));
}

function remove(folder: string): void {
  const server = postmaster(folder);
  if (server !== undefined) {
    process.kill(server, 'SIGINT');
    const clock = new Int32Array(new SharedArrayBuffer(4));
    for (let i = 0; i < 200 && isAlive(server); i++) Atomics.wait(clock, 0, 0, 50);
  }
  rmSync(folder, { recursive: true, force: true });
}

function postmaster(folder: string): number | undefined {
  try {
    const file = path.join(folder, 'postgres', 'postmaster.pid');
    const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
    return isAlive(pid) ? pid : undefined;
  } catch {
    return undefined;
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
