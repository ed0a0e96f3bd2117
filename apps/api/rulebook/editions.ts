// Published editions of a company, of rules and of the catalogue: each a stream in its log, read
// once and kept; only what is new is asked for.

import { Injectable } from '@nestjs/common';
import type { Catalogue } from '#jobs';
import type { Edition } from '#rules';
import { digestOf, Ledgers } from '../data/ledgers.js';

export interface Published<T> {
  readonly edition: T;
  readonly digest: string;
  readonly number: number;
  readonly inForceFrom: string;
  readonly publishedAt: string;
  readonly by: string;
  readonly reason: string | null;
}

interface Shelf<T> {
  readonly version: number;
  readonly editions: readonly Published<T>[];
}

export const RULEBOOK = 'rulebook';
export const CATALOGUE = 'catalogue';

@Injectable()
export class Editions {
  private readonly rulebooks = new Map<string, Shelf<Edition>>();
  private readonly catalogues = new Map<string, Shelf<Catalogue>>();

  constructor(private readonly ledgers: Ledgers) {}

  rules(company: string): Promise<Shelf<Edition>> {
    return this.read(this.rulebooks, company, RULEBOOK, ({ number }) => number);
  }

  catalogue(company: string): Promise<Shelf<Catalogue>> {
    return this.read(this.catalogues, company, CATALOGUE, ({ edition }) => edition);
  }

  private async read<T extends { readonly in_force_from: string }>(
    shelves: Map<string, Shelf<T>>,
    company: string,
    stream: string,
    numberOf: (edition: T) => number,
  ): Promise<Shelf<T>> {
    const known = shelves.get(company) ?? { version: 0, editions: [] };
    const events = await this.ledgers.ledger.readStream(company, stream, {
      from: known.version + 1,
    });
    if (events.length === 0) return known;
    const more = events.map((event): Published<T> => {
      const { edition, reason = null } = event.data as { edition: T; reason?: string | null };
      return {
        edition,
        digest: digestOf(edition),
        number: numberOf(edition),
        inForceFrom: edition.in_force_from,
        publishedAt: event.recordedAt,
        by: event.by.person,
        reason,
      };
    });
    const shelf = {
      version: known.version + events.length,
      editions: [...known.editions, ...more],
    };
    const newest = shelves.get(company);
    if (!newest || newest.version < shelf.version) shelves.set(company, shelf);
    return shelf;
  }
}

/** The newest edition that is in force on a day. */
export function inForce<T>(shelf: Shelf<T>, day: string): Published<T> | undefined {
  return shelf.editions.filter(({ inForceFrom }) => inForceFrom <= day).at(-1);
}

/** "in force", "not yet in force" or "superseded". */
export function stateOf<T>(shelf: Shelf<T>, published: Published<T>, day: string): string {
  if (published.inForceFrom > day) return 'not yet in force';
  return inForce(shelf, day) === published ? 'in force' : 'superseded';
}

/** Stands in until a company publishes its first catalogue: nothing is made yet. */
export const EMPTY_CATALOGUE: Catalogue = {
  edition: 0,
  in_force_from: '0001-01-01',
  summary: 'No catalogue is published yet.',
  profiles: [],
  made: [],
  charts: [],
  assemblies: [],
  fasteners: [],
  terms: [],
};
