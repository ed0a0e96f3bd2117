// `rulebook preview FILE`: what a drafted edition would change, over the record of an installation.

import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { draftOf } from '#jobs';
import {
  DraftedEdits,
  impactSentence,
  ANSWER_WORDS,
  RulesEdition,
  type ImpactScope,
} from '#jobs/contract';
import { type CompanyPool, companyPool, createPostgresLedger, openPool } from '#ledger';
import { editionFaults, RULE_BOOK, type Edition } from '#rules';
import { faultsOf } from '../api/http/checked.js';
import { runPreview, type Outcome } from '../api/rulebook/run-preview.js';
import { RULEBOOK, RULES_PUBLISHED } from '../api/rulebook/shelf.js';
import { runningServiceUrl } from './running-database.js';

export interface PreviewOptions {
  readonly data: string;
  readonly company: string;
  readonly scope: ImpactScope;
  readonly json: boolean;
}
/** What went wrong, all of it, in lines that a person reads. */
export class PreviewRefused extends Error {}

export interface Written {
  readonly out: (text: string) => void;
  readonly progress: (text: string) => void;
}

export async function previewFile(
  file: string,
  options: PreviewOptions,
  { out, progress }: Written,
): Promise<void> {
  const given = await readGiven(file);
  const serviceUrl = process.env['DATABASE_SERVICE_URL'] ?? runningServiceUrl(options.data);
  const connections = openPool({ connectionString: serviceUrl, max: 1 });
  try {
    const pool = companyPool(connections);
    const { company, scope } = options;
    const edition = await editionOf(given, pool, company);
    const say = ({ read, of, done }: { read: number; of: number; done: number }) =>
      progress(`\r${of > 0 ? Math.floor((100 * read) / of) : 0} % read, ${done} checked`);
    const outcome = await runPreview({ pool, company, scope, edition, say });
    progress(`\r100 % read, ${outcome.done} checked\n`);
    out(options.json ? asJson(edition, scope, outcome) : asText(edition, scope, outcome));
  } finally {
    await connections.end();
  }
}

type Given = DraftedEdits | z.output<typeof RulesEdition>;

async function readGiven(file: string): Promise<Given> {
  const text = await readFile(file, 'utf8').catch((error: unknown) => {
    throw new PreviewRefused(`${file} cannot be read: ${(error as Error).message}`);
  });
  const json = parsed(text, file);
  const whole = typeof json === 'object' && json !== null && 'entries' in json;
  const read = (whole ? RulesEdition : DraftedEdits).safeParse(json);
  if (read.success) return read.data;
  const faults = faultsOf(read.error.issues).map(
    (each) => `${each.pointer || '/'} ${each.message}`,
  );
  throw new PreviewRefused([`${file} is no drafted edition:`, ...faults].join('\n'));
}

function parsed(text: string, file: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw new PreviewRefused(`${file} is not JSON: ${(error as Error).message}`);
  }
}

/** Edits are laid over the newest edition of the company; a whole edition must be without faults. */
async function editionOf(given: Given, pool: CompanyPool, company: string): Promise<Edition> {
  const events = await createPostgresLedger({ pool }).readStream(company, RULEBOOK);
  const newest = events.filter(({ type }) => type === RULES_PUBLISHED).at(-1);
  if (!newest) throw new PreviewRefused(`Company "${company}" has no rules edition.`);
  const before = (newest.data as { edition: Edition }).edition;
  const faults =
    'entries' in given
      ? editionFaults(given, RULE_BOOK, before).map(({ rule, message }) => `${rule} ${message}`)
      : [];
  const drafted = 'edits' in given ? draftOf(before, given, RULE_BOOK, given.in_force_from) : null;
  const all = [...faults, ...(drafted?.refusals.map(({ words }) => words) ?? [])];
  if (all.length > 0) throw new PreviewRefused(['The edition has faults:', ...all].join('\n'));
  return drafted?.edition ?? (given as Edition);
}

const asJson = (edition: Edition, scope: ImpactScope, outcome: Outcome): string => {
  const { done, counts, position, rows, unlisted } = outcome;
  const words = impactSentence(scope, done, counts);
  return `${JSON.stringify({ edition: edition.number, scope, position, done, counts, words, rows, unlisted }, null, 2)}\n`;
};

const asText = (
  { number, in_force_from }: Edition,
  scope: ImpactScope,
  { done, counts, position, rows, unlisted }: Outcome,
): string =>
  [
    `Edition ${number}, in force from ${in_force_from}, over the record up to entry ${position}.`,
    `${impactSentence(scope, done, counts)}.`,
    'Decisions stand under the edition they name; this is what the draft would say of them.',
    '',
    ...rows.flatMap((row) => [
      `${row.number} ${row.surface_name}, ${row.stage}: ${ANSWER_WORDS[row.answer]}`,
      `  before: ${row.before}`,
      `  after:  ${row.after}`,
      `  why:    ${row.words}`,
    ]),
    ...(unlisted > 0 ? [`${unlisted} more that differ are not listed.`] : []),
    'An office aid: local code and the authority having jurisdiction govern; a licensed engineer',
    'decides what spans.',
    '',
  ].join('\n');
