// `npm run -s rulebook -- page`: the whole rulebook as Markdown on standard output.

import { ALL_RULES, CASES, EDITION_1, EDITION_2 } from '#rules';
import { rulebookPage } from './rulebook-page.js';

const USAGE = 'Usage: npm run -s rulebook -- page';

const [command, ...more] = process.argv.slice(2);
if (command === 'page' && more.length === 0) {
  const editions = [EDITION_1, EDITION_2];
  process.stdout.write(rulebookPage({ rules: ALL_RULES, cases: CASES, editions }));
} else {
  process.stderr.write(`${USAGE}\n`);
  process.exitCode = 2;
}
