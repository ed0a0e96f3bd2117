// Checks an evidence bundle: npm run -s verify -- BUNDLE [--key KEY] [--checkpoint "SIZE ROOT"]
// [--authority FILE]
// or the whole record in its database: npm run -s verify -- --log [--company ID].
// Exit code 0: all holds. 1: something does not, and the last lines say what and where. 2: cannot tell.

import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { verifyBundle } from '#ledger';
import type { Held } from '#ledger';

const command = new Command('verify')
  .description('Checks an evidence bundle from the file alone, or with --log the whole record.')
  .argument('[bundle]', 'the zip file')
  .option('--log', 'the whole record in the database of DATABASE_SERVICE_URL or of --data')
  .option('--company <id>', 'with --log, where the database holds several companies')
  .option('--data <folder>', 'with --log: where the product keeps its data', '.data')
  .option('--keys <folder>', 'with --log: where the signing keys and last checkpoints are')
  .option('--key <key>', 'a signing key you hold: the bundle must be signed by it')
  .option('--checkpoint <text>', 'a checkpoint you hold, as printed: "SIZE ROOT"')
  .option('--authority <file>', 'certificates of a time-stamping authority you hold, PEM')
  .parse();

interface Options {
  readonly key?: string;
  readonly checkpoint?: string;
  readonly authority?: string;
  readonly log?: true;
  readonly company?: string;
  readonly data: string;
  readonly keys?: string;
}
const { key, checkpoint, authority, log, company, data, keys } = command.opts<Options>();
const [, size, root] = /^(\d+) (\S+)$/.exec(checkpoint ?? '') ?? [];
if (checkpoint !== undefined && (size === undefined || root === undefined)) {
  fail('A checkpoint is its size and its root: --checkpoint "1042 vBZN…="');
}
const held: Held = {
  ...(key === undefined ? {} : { key }),
  ...(root === undefined ? {} : { checkpoint: { size: Number(size), root } }),
  ...(authority === undefined ? {} : { authority: read(authority).toString() }),
};
const line = (sentence: string) => void process.stdout.write(`${sentence}\n`);
if (log) await wholeLog();
else if (command.args[0] === undefined) fail('Name a bundle, or say --log.');
else bundle(command.args[0]);

function bundle(file: string): void {
  const report = verifyBundle(read(file), held);
  for (const sentence of report.says) line(sentence);
  end(report.ok);
}

async function wholeLog(): Promise<void> {
  // Read in only here: a bundle needs no database.
  const { verifyWholeLog } = await import('./verify-log.js');
  const serviceUrl = process.env['DATABASE_SERVICE_URL'];
  const check = { serviceUrl, dataFolder: data, company, keysFolder: keys, say: line };
  const ok = await verifyWholeLog({ ...check, held: held.checkpoint }).catch((error: unknown) =>
    fail((error as Error).message),
  );
  end(ok);
}

function end(ok: boolean): void {
  line(ok ? 'All of it holds.' : 'It does not hold.');
  process.exitCode = ok ? 0 : 1;
}

function read(file: string): Buffer {
  try {
    return readFileSync(file);
  } catch (error) {
    return fail(`${file} cannot be read: ${(error as Error).message}`);
  }
}

function fail(sentence: string): never {
  process.stderr.write(`${sentence}\n`);
  process.exit(2);
}
