// `npm run -s calc -- NAME`: the calculator on the command line.

import { readFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { runCalc } from './calculate.js';

const reply = await runCalc(process.argv.slice(2), {
  readStdin: () => (process.stdin.isTTY ? Promise.resolve('') : text(process.stdin)),
  readFile: (path) => readFile(path, 'utf8'),
});
process.stdout.write(reply.stdout);
process.stderr.write(reply.stderr);
process.exitCode = reply.exitCode;
