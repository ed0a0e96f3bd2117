// Checks an evidence bundle: npm run -s verify -- BUNDLE [--key KEY] [--checkpoint "SIZE ROOT"].
// Exit code 0: all holds. 1: something does not, and the last line says what and where. 2: no bundle.

import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { verifyBundle } from '#ledger';
import type { Held } from '#ledger';

const command = new Command('verify')
  .description('Checks an evidence bundle, from the file alone.')
  .argument('<bundle>', 'the zip file')
  .option('--key <key>', 'a signing key you hold: the bundle must be signed by it')
  .option('--checkpoint <text>', 'a checkpoint you hold, as printed: "SIZE ROOT"')
  .parse();

const { key, checkpoint } = command.opts<{ key?: string; checkpoint?: string }>();
const [, size, root] = /^(\d+) (\S+)$/.exec(checkpoint ?? '') ?? [];
if (checkpoint !== undefined && (size === undefined || root === undefined)) {
  fail('A checkpoint is its size and its root: --checkpoint "1042 vBZN…="');
}
const held: Held = {
  ...(key === undefined ? {} : { key }),
  ...(root === undefined ? {} : { checkpoint: { size: Number(size), root } }),
};
const report = verifyBundle(read(command.args[0] ?? ''), held);
for (const sentence of report.says) process.stdout.write(`${sentence}\n`);
process.stdout.write(report.ok ? 'All of it holds.\n' : 'It does not hold.\n');
process.exitCode = report.ok ? 0 : 1;

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
