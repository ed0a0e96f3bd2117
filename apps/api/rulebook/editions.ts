// Published editions of a company, of rules and of the catalogue: each a stream in its log, read
// once and kept; only what is new is asked for.

import { Injectable } from '@nestjs/common';
import type { Catalogue, PublishedImpact, RuleChange, RunningJobs } from '#jobs';
import type { Recorded } from '#ledger';
import type { Edition } from '#rules';
import { digestOf, Ledgers } from '../data/ledgers.js';
import { CATALOGUE, CATALOGUE_PUBLISHED, RULEBOOK, RULES_PUBLISHED } from './shelf.js';

export { CATALOGUE, RULEBOOK } from './shelf.js';

export interface Published<T> {
  readonly edition: T;
  readonly digest: string;
  readonly number: number;
  readonly inForceFrom: string;
  readonly publishedAt: string;
  readonly by: string;
  readonly reason: string | null;
  /** Of a rules edition: what it changed, and what becomes of jobs under way. */
  readonly changes: readonly RuleChange[];
  readonly runningJobs: RunningJobs | null;
  readonly impact: PublishedImpact | null;
}

export interface Shelf<T> {
  readonly version: number;
  readonly editions: readonly Published<T>[];
}

@Injectable()
export class Editions {
  private readonly rulebooks = new Map<string, Shelf<Edition>>();
  private readonly catalogues = new Map<string, Shelf<Catalogue>>();

  constructor(private readonly ledgers: Ledgers) {}

  rules(company: string): Promise<Shelf<Edition>> {
    const where = { stream: RULEBOOK, published: RULES_PUBLISHED };
    return this.read(this.rulebooks, company, where, ({ number }) => number);
  }

  catalogue(company: string): Promise<Shelf<Catalogue>> {
    const where = { stream: CATALOGUE, published: CATALOGUE_PUBLISHED };
    return this.read(this.catalogues, company, where, ({ edition }) => edition);
  }

  private async read<T extends { readonly in_force_from: string }>(
    shelves: Map<string, Shelf<T>>,
    company: string,
    { stream, published }: { readonly stream: string; readonly published: string },
    numberOf: (edition: T) => number,
  ): Promise<Shelf<T>> {
    const known = shelves.get(company) ?? { version: 0, editions: [] };
    const events = await this.ledgers.ledger.readStream(company, stream, {
      from: known.version + 1,
    });
    if (events.length === 0) return known;
    const more = events
      .filter(({ type }) => type === published)
      .map((event) => publishedBy<T>(event, numberOf));
    const shelf = {
      version: known.version + events.length,
      editions: [...known.editions, ...more],
    };
    const newest = shelves.get(company);
    if (!newest || newest.version < shelf.version) shelves.set(company, shelf);
    return shelf;
  }
}

function publishedBy<T extends { readonly in_force_from: string }>(
  event: Recorded,
  numberOf: (edition: T) => number,
): Published<T> {
  const data = event.data as PublishedData<T>;
  const { edition } = data;
  return {
    edition,
    digest: digestOf(edition),
    number: numberOf(edition),
    inForceFrom: edition.in_force_from,
    publishedAt: event.recordedAt,
    by: event.by.person,
    reason: data.reason ?? null,
    changes: data.changes ?? [],
    runningJobs: data.running_jobs ?? null,
    impact: data.impact ?? null,
  };
}

interface PublishedData<T> {
  readonly edition: T;
  readonly reason?: string | null;
  readonly changes?: readonly RuleChange[];
  readonly running_jobs?: RunningJobs;
  readonly impact?: PublishedImpact;
}

/** The newest edition that is in force on a day. */
export function inForce<T>(shelf: Shelf<T>, day: string): Published<T> | undefined {
  return shelf.editions.filter(({ inForceFrom }) => inForceFrom <= day).at(-1);
}

export type EditionState = 'in force' | 'in force later' | 'retired';

export function stateOf<T>(shelf: Shelf<T>, published: Published<T>, day: string): EditionState {
  if (published.inForceFrom > day) return 'in force later';
  return inForce(shelf, day) === published ? 'in force' : 'retired';
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
