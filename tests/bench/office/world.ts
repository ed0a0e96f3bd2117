// A large company to measure in: a database of its own with its durability as it comes, the
// demonstration, so many jobs beside it, people with open sessions, and the service in a process of
// its own.

import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { v7 as uuid } from 'uuid';
import { Companies } from '../../../apps/api/data/companies.js';
import { Ledgers } from '../../../apps/api/data/ledgers.js';
import { SignInLinks } from '../../../apps/api/people/sign-in-links.js';
import { Settings, startService, type Service } from '../../../apps/api/service.js';
import { fillDemonstration } from '../../../apps/cli/demonstration.js';
import { DEMONSTRATION } from '../../../apps/cli/demonstration/people.js';
import { WORKSHOP } from '../../../apps/cli/demonstration/workshop.js';
import { startBenchDatabase, type BenchDatabase } from '../ledger/database.js';
import { signIn, type BenchClient } from './client.js';
import { fill } from './fill.js';

export interface World {
  readonly address: string;
  readonly database: BenchDatabase;
  readonly people: readonly BenchClient[];
  readonly jobs: number;
  readonly events: number;
  stop(): Promise<void>;
}

export interface Size {
  readonly jobs: number;
  readonly eventsPerJob: number;
  readonly people: number;
}

const { company } = DEMONSTRATION;

export async function makeWorld(size: Size, say: (line: string) => void): Promise<World> {
  const database = await startBenchDatabase();
  const folder = mkdtempSync(path.join(tmpdir(), 'gauge-world-'));
  chmodSync(folder, 0o755);
  let child: Served | undefined;
  const stop = async () => {
    await child?.stop();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    const { tokens, events } = await prepare(database, folder, size, say);
    child = await serve(database.serviceUrl, path.join(folder, 'keys'));
    const { address } = child;
    const people = await Promise.all(tokens.map((token) => signIn(address, token)));
    return { address, database, people, jobs: size.jobs, events, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function prepare(
  database: BenchDatabase,
  folder: string,
  { jobs, eventsPerJob, people }: Size,
  say: (line: string) => void,
): Promise<{ tokens: readonly string[]; events: number }> {
  const service = await startService(
    new Settings({
      serviceUrl: database.serviceUrl,
      host: '127.0.0.1',
      port: 0,
      pages: '.build/office',
      logLevel: 'error',
      version: 'bench',
    }),
  );
  let tokens: readonly string[];
  let template;
  const ids = Array.from({ length: people }, () => uuid());
  try {
    await fillDemonstration(service);
    template = await service.get(Ledgers).ledger.readStream(company, `job/${WORKSHOP.id}`);
    tokens = await addPeople(service, ids);
  } finally {
    await service.stop();
  }
  const started = performance.now();
  const { events } = await fill({
    ownerUrl: database.ownerUrl,
    folder,
    company,
    jobs,
    eventsPerJob,
    template,
    people: ids,
    say,
  });
  say(
    `${jobs.toLocaleString('en-US')} jobs, ${events.toLocaleString('en-US')} events in ` +
      `${Math.round((performance.now() - started) / 1000)} s`,
  );
  return { tokens, events };
}

async function addPeople(service: Service, ids: readonly string[]): Promise<readonly string[]> {
  const { prisma } = service.get(Companies).of(company);
  await prisma.person.createMany({
    data: ids.map((id, i) => ({
      companyId: company,
      id,
      name: `Person ${i + 1}`,
      email: `person-${i + 1}@metal-roofing.example`,
      roles: ['office', 'project-manager'],
    })),
  });
  const tokens: string[] = [];
  for (const id of ids) tokens.push(await service.get(SignInLinks).make(company, id));
  return tokens;
}

const SERVE = 'tests/bench/office/serve.ts';

interface Served {
  readonly address: string;
  stop(): Promise<void>;
}

/** The built service, as it runs for people. */
function serve(serviceUrl: string, keysFolder: string): Promise<Served> {
  const child = spawn(process.execPath, ['--import', './.config/typescript.mjs', SERVE], {
    env: { ...process.env, GAUGE_SERVICE_URL: serviceUrl, GAUGE_KEYS: keysFolder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`the service ended with ${code}`)));
    child.stdout.on('data', (chunk: Buffer) => {
      const [address] = /http:\S+/.exec(chunk.toString()) ?? [];
      if (address) resolve({ address, stop: () => ended(child) });
    });
  });
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGTERM');
  });
