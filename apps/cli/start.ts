// `npm start`: the database, its migrations, the demonstration the first time, and the service;
// then the address, and links to sign in with.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command, InvalidArgumentError, Option } from 'commander';
import type { Service } from '../api/service.js';
import { StartRefused } from './database.js';
import { openDatabase, type Opened } from './open-database.js';
import { refuseBusyPort } from './port.js';
import type { Link } from './sign-in-links.js';

interface Options {
  readonly data: string;
  readonly port: number;
  readonly host: string;
  readonly empty: boolean;
  readonly demonstration: 'small' | 'large';
}

const LARGE_JOBS = 3_000;

const program = new Command('npm start --')
  .description('Starts Gauge Ledger with everything it needs.')
  .option('--data <folder>', 'where the data lies', '.data')
  .option('--port <number>', 'the port of the pages; 0 for any free one', port, 4310)
  .option('--host <address>', 'the address to listen on', '127.0.0.1')
  .addOption(
    new Option(
      '--demonstration <size>',
      'small: three jobs; large: nine invented years of another company besides',
    )
      .choices(['small', 'large'])
      .conflicts('empty')
      .default('small'),
  )
  .option('--empty', 'without the demonstration: one link sets up your own company', false)
  .showHelpAfterError();

function port(text: string): number {
  const number = Number(text);
  if (!/^\d{1,5}$/.test(text) || number > 65_535)
    throw new InvalidArgumentError('must be 0 to 65535');
  return number;
}

/** The product's folder, whether this runs from the build or from its source. */
const home = path.resolve(
  path.dirname(fileURLToPath(import.meta.url)).replace(/\.build[\\/]apps[\\/]cli$/, 'apps/cli'),
  '../..',
);

async function start(options: Options): Promise<void> {
  await refuseBusyPort(options.host, options.port);
  // The service is read in while the database starts in a process of its own.
  const opening = openDatabase(path.resolve(options.data));
  const [database, api] = await Promise.all([opening, import('../api/service.js')]);
  const { mailFrom, Settings, startService, timeStampsFrom, verifyFrom } = api;
  let service: Service | undefined;
  const stop = stopper(() => service, database);
  try {
    service = await startService(
      new Settings({
        serviceUrl: database.serviceUrl,
        host: options.host,
        port: options.port,
        pages: path.join(home, '.build', 'office'),
        logLevel: process.env['LOG_LEVEL'] ?? 'warn',
        version: (
          JSON.parse(readFileSync(path.join(home, 'package.json'), 'utf8')) as { version: string }
        ).version,
        keysFolder: path.resolve(options.data, 'keys'),
        ...verifyFrom(process.env),
        ...mailFrom(process.env),
        ...timeStampsFrom(process.env),
      }),
    );
    const links = await prepare(service, database, options);
    say(service.address, database.notices, links);
  } catch (error) {
    await service?.stop();
    await database.stop();
    throw error;
  }
  void database.lost.then(() => {
    console.error(
      'The database ended by itself; stopping. The next start finds everything recorded.',
    );
    stop(1);
  });
}

async function prepare(
  service: Service,
  database: Opened,
  { empty, demonstration }: Options,
): Promise<readonly Link[]> {
  const { firstLink, signInLinks } = await import('./sign-in-links.js');
  const [hasCompany, hasDemonstration] = await Promise.all([
    database.hasCompany(),
    database.hasDemonstration(),
  ]);
  if (empty && !hasCompany) return [await firstLink(database.ownerUrl)];
  if (!hasCompany || hasDemonstration)
    await (await import('./demonstration.js')).fillDemonstration(service);
  if (demonstration === 'large') {
    const { fillLarge } = await import('./large/fill-large.js');
    await fillLarge(service, { jobs: LARGE_JOBS, seed: 1, say: (line) => console.log(line) });
  }
  const { PublishRules } = await import('../api/rulebook/publish-rules.js');
  for (const company of await database.companies()) {
    await service.get(PublishRules).ofTheProduct(company, 'product');
  }
  return signInLinks(service, database);
}

function say(address: string, notices: readonly string[], links: readonly Link[]): void {
  for (const notice of notices) console.log(notice);
  console.log(`Gauge Ledger is at ${address}`);
  if (links.length === 0) return;
  const width = Math.max(...links.map(({ who }) => who.length));
  console.log('\nEach of these links works once:');
  for (const { who, where } of links) console.log(`  ${who.padEnd(width)}  ${address}${where}`);
}

/** Drains and stops, once; a second signal does not wait any longer. */
function stopper(service: () => Service | undefined, database: Opened): (code: number) => void {
  let stopping = false;
  const stop = (code: number): void => {
    if (stopping) process.exit(code || 1);
    stopping = true;
    void (async () => {
      await service()?.stop();
      await database.stop();
    })().then(
      () => process.exit(code),
      (error: unknown) => {
        console.error(sentence(error));
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stop(0));
  return stop;
}

const sentence = (error: unknown): string => {
  const { message, code } = error as { message?: string; code?: string };
  if (code === 'EADDRINUSE')
    return 'The port is in use by another program; choose another with --port.';
  return (message ?? String(error)).split('\n')[0] ?? '';
};

program.parse();
start(program.opts<Options>()).catch((error: unknown) => {
  console.error(sentence(error));
  if (!(error instanceof StartRefused) && process.env['LOG_LEVEL'] === 'debug')
    console.error(error);
  process.exit(1);
});
