// The editions of a company as decisions name them: by number, with the digest each was published
// under. Read from the record as it stands when a preview or a replay begins.

import type { Catalogue, Shelf } from '#jobs';
import { createPostgresLedger, type CompanyPool, type Recorded } from '#ledger';
import { RULE_BOOK, type Edition } from '#rules';
import { digestOf } from '../data/digest.js';

export const RULEBOOK = 'rulebook';
export const CATALOGUE = 'catalogue';
export const RULES_PUBLISHED = 'rules-edition-published/1';
export const CATALOGUE_PUBLISHED = 'catalogue-edition-published/1';

export async function readShelf(pool: CompanyPool, company: string): Promise<Shelf> {
  const ledger = createPostgresLedger({ pool });
  const [rules, catalogues] = await Promise.all([
    ledger.readStream(company, RULEBOOK),
    ledger.readStream(company, CATALOGUE),
  ]);
  return shelfOf(rules, catalogues);
}

export function shelfOf(rules: readonly Recorded[], catalogues: readonly Recorded[]): Shelf {
  const rulesBy = byNumber<Edition>(rules, RULES_PUBLISHED, ({ number }) => number);
  const catalogueBy = byNumber<Catalogue>(catalogues, CATALOGUE_PUBLISHED, (each) => each.edition);
  return {
    book: RULE_BOOK,
    rules: (number) => rulesBy.get(number),
    catalogue: (number) => catalogueBy.get(number),
  };
}

interface Digested<T> {
  readonly edition: T;
  readonly digest: string;
}

function byNumber<T>(
  events: readonly Recorded[],
  type: string,
  numberOf: (edition: T) => number,
): ReadonlyMap<number, Digested<T>> {
  const published = events.filter((event) => event.type === type);
  return new Map(
    published.map(({ data }) => {
      const { edition } = data as { edition: T };
      return [numberOf(edition), { edition, digest: digestOf(edition) }];
    }),
  );
}
