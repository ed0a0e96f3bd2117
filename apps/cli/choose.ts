// `calc choose`: one surface or a list of them against a catalogue edition, the demonstration one unless
// a file is named. Today's date decides which tests have expired.

import { createHash } from 'node:crypto';
import type { Calculated } from '#engineering';
import { Catalogue, choose, DEFAULT_POLICY, type Context } from '#jobs';
import { EDITION_2, RULE_BOOK } from '#rules';
import { canonical, type Json } from '#ledger';
import { demonstrationCatalogue } from './demonstration/catalogue.js';

export function chooseAll(input: unknown, catalogueText?: string): Calculated {
  const catalogue = readCatalogue(catalogueText);
  if ('faults' in catalogue) return { outcome: 'refused', faults: catalogue.faults };
  const context = contextOf(catalogue.catalogue);
  if (!Array.isArray(input)) {
    const one = choose(input, context);
    return one.ok
      ? { outcome: 'results', output: one.value, anyRefused: false }
      : { outcome: 'refused', faults: one.faults };
  }
  const all = input.map((each) => choose(each, context));
  return {
    outcome: 'results',
    output: all.map((each) => (each.ok ? each.value : { faults: each.faults })),
    anyRefused: all.some(({ ok }) => !ok),
  };
}

function readCatalogue(
  text: string | undefined,
): { catalogue: Catalogue } | { faults: { pointer: string; message: string }[] } {
  if (text === undefined) return { catalogue: demonstrationCatalogue() };
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return {
      faults: [{ pointer: '/catalogue', message: `is not JSON: ${(error as Error).message}` }],
    };
  }
  const read = Catalogue.safeParse(json);
  if (read.success) return { catalogue: read.data };
  return {
    faults: read.error.issues.map(({ path, message }) => ({
      pointer: `/catalogue/${path.join('/')}`,
      message,
    })),
  };
}

const digestOf = (value: unknown): string =>
  createHash('sha256')
    .update(canonical(value as Json))
    .digest('hex');

const contextOf = (catalogue: Catalogue): Context => ({
  by: { person: 'calculator', roles: ['project-manager'] },
  at: new Date().toISOString(),
  book: RULE_BOOK,
  edition: EDITION_2,
  editionDigest: digestOf(EDITION_2),
  catalogue,
  catalogueDigest: digestOf(catalogue),
  policy: DEFAULT_POLICY,
});
