// The generated coverage page, as Markdown on standard output: clause by clause what is calculated
// and by which function, what was left out, what is unconfirmed, and the outside cases by label.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { coverage } from '#engineering';
import { coveragePage, type CaseLine } from './coverage-page.js';

const folder = join(process.cwd(), 'tests', 'standards', 'cases');
const cases: Record<string, readonly CaseLine[]> = {};
for (const file of readdirSync(folder).sort()) {
  if (!file.endsWith('.json')) continue;
  const text = readFileSync(join(folder, file), 'utf8');
  cases[file.slice(0, -'.json'.length)] = JSON.parse(text) as CaseLine[];
}
process.stdout.write(coveragePage(coverage, cases));
