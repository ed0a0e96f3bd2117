// The generated coverage page, as Markdown on standard output: clause by clause what is calculated
// and by which function, the cases by label, what was left out, what is unconfirmed, what is not met.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { coverage } from '#engineering';
import { coveragePage, type CaseLine, type NotMet } from './coverage-page.js';

const standards = join(process.cwd(), 'tests', 'standards');
const read = <T>(...path: readonly string[]): T =>
  JSON.parse(readFileSync(join(standards, ...path), 'utf8')) as T;

const cases: Record<string, readonly CaseLine[]> = {};
for (const file of readdirSync(join(standards, 'cases')).sort()) {
  if (!file.endsWith('.json')) continue;
  cases[file.slice(0, -'.json'.length)] = read<CaseLine[]>('cases', file);
}
process.stdout.write(coveragePage(coverage, cases, read<NotMet>('not-met.json')));
