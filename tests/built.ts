// The built product as a process of its own, for tests that start, stop and kill it.

import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

const START = path.resolve('.build/apps/cli/start.js');

/** Builds once in a test run, so that what runs is what the sources say. */
export async function build(): Promise<void> {
  const folder = process.env['GAUGE_TEST_FOLDER'] ?? '.';
  const [making, made] = [path.join(folder, 'building'), path.join(folder, 'built')];
  while (!existsSync(made)) {
    try {
      writeFileSync(making, '', { flag: 'wx' });
    } catch {
      await sleep(100);
      continue;
    }
    const done = spawnSync(process.execPath, ['.config/build.mjs', '--no-pages'], {
      encoding: 'utf8',
      env: plainEnv(),
    });
    if (done.status === 0) writeFileSync(made, '');
    rmSync(making, { force: true });
    if (done.status !== 0) throw new Error(`the build failed: ${done.stderr}`);
  }
}

/** Without what the test runner adds for itself. */
function plainEnv(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const { NODE_OPTIONS: _, DATABASE_URL: __, DATABASE_SERVICE_URL: ___, ...env } = process.env;
  return { ...env, NODE_ENV: 'production', ...more };
}

export interface Product {
  readonly process: ChildProcess;
  readonly address: string;
  /** Tokens of the printed links, by the person's name. */
  readonly links: Readonly<Record<string, string>>;
  output(): string;
  kill(signal: NodeJS.Signals): Promise<number | null>;
}

/** Started and ready; @throws Error with its output where it ends before that */
export async function startProduct(
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Product> {
  const { child, exit, output } = launch(args, env);
  for (let waited = 0; waited < 60_000; waited += 50) {
    const address = /Gauge Ledger is at (\S+)/.exec(output())?.[1];
    const isReady = address !== undefined && (await answers(address));
    if (isReady)
      return {
        process: child,
        address,
        links: linksIn(output()),
        output,
        kill: (signal) => (child.kill(signal), exit),
      };
    if (child.exitCode !== null || child.signalCode !== null)
      throw new Error(`ended before it was ready:\n${output()}`);
    await sleep(50);
  }
  child.kill('SIGKILL');
  throw new Error(`was not ready within a minute:\n${output()}`);
}

/** A start that is expected to refuse: its exit code and all it said. */
export async function startRefused(
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
) {
  const { exit, output } = launch(args, env);
  return { code: await exit, said: output().trim() };
}

function launch(args: readonly string[], env: Readonly<Record<string, string>>) {
  const child = spawn(process.execPath, [START, ...args], {
    env: plainEnv(env),
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => (said += String(chunk)));
  const exit = new Promise<number | null>((resolve) =>
    child.once('close', (code) => resolve(code)),
  );
  return { child, exit, output: () => said };
}

const answers = async (address: string): Promise<boolean> =>
  fetch(`${address}/api/health`).then(
    ({ ok }) => ok,
    () => false,
  );

function linksIn(output: string): Record<string, string> {
  const lines = [...output.matchAll(/^ {2}(\S+).*\/(?:sign-in|setup)\/(\S+)$/gm)];
  return Object.fromEntries(lines.map(([, who, token]) => [who ?? '', token ?? '']));
}
