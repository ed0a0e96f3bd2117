// `npm run -s keys -- show` and `… change --from FINGERPRINT`: the signing key of an installation.

import path from 'node:path';
import { Command } from 'commander';
import type { KeyFolder } from './change-key.js';

interface Options {
  readonly data: string;
  readonly keys?: string;
}

const HELP = `
It works on the database of a running installation, as the service's own role: that of --data, or of
DATABASE_SERVICE_URL where it is set, and on the folder of keys of that installation. Exit codes:
0 done, 1 refused, and why.`;

const program = new Command('npm run -s keys --')
  .description('The key that signs the record: which one is in use, and changing it.')
  .addHelpText('after', HELP)
  .showHelpAfterError();
for (const [name, says] of [
  ['show', 'the key in use, and what a change would do; changes nothing'],
  ['change', 'a new key in the place of the one in use, told in every company’s record'],
] as const) {
  const command = program
    .command(name)
    .description(says)
    .option('--data <folder>', 'data folder of the running installation', '.data')
    .option('--keys <folder>', 'the folder of keys; in the data folder unless given');
  if (name === 'change')
    command.requiredOption('--from <fingerprint>', 'of the key in use, as show prints it');
  command.action(async (options: Options & { readonly from?: string }) => {
    try {
      const { changeKey, showKey } = await import('./change-key.js');
      const at = await folderOf(options);
      await (options.from === undefined ? showKey(at) : changeKey(at, options.from));
    } catch (error) {
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = 1;
    }
  });
}
await program.parseAsync();

async function folderOf({ data, keys }: Options): Promise<KeyFolder> {
  const { runningServiceUrl } = await import('./running-database.js');
  return {
    serviceUrl: process.env['DATABASE_SERVICE_URL'] ?? runningServiceUrl(data),
    keysFolder: path.resolve(keys ?? path.join(data, 'keys')),
    say: (line) => void process.stdout.write(`${line}\n`),
  };
}
