// Who read or exported what is sensitive: kept in the database for six years, changed by nobody. It
// holds ids; the personal data itself stands nowhere in it.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { Ledgers } from '../data/ledgers.js';
import type { Acting } from '../http/signed-in.js';

/** What counts as sensitive, with its words for the page. */
export const READINGS = {
  'party-details': 'Details of a person or a site',
  'job-list-export': 'Export of the job list',
  'order-export': 'Export of the lines of an order',
  'decision-record': 'Decision record',
  'decision-record-print': 'Print of the decision record',
  paper: 'Issued paper, with names',
  'paper-print': 'Print of an issued paper',
  'paper-record': 'Record of an issued paper',
  evidence: 'Export of the evidence of a job',
  'event-feed': 'Feed of events',
  event: 'An entry of the record',
  accounts: 'Accounts of the company',
  readings: 'This list',
} as const;
export type What = keyof typeof READINGS;

export interface Reader {
  readonly company: string;
  readonly id: string;
  readonly kind: 'person' | 'feed';
}

export interface Reading {
  readonly id: string;
  readonly at: Date;
  readonly reader: string;
  readonly readerKind: 'person' | 'feed';
  readonly what: What;
  readonly about: string;
  readonly why: string | null;
}

export interface Wanted {
  readonly reader?: string | undefined;
  readonly what?: What | undefined;
  readonly about?: string | undefined;
  /** Older than this one. */
  readonly before?: string | undefined;
  readonly limit: number;
}

export const KEPT_YEARS = 6;

@Injectable()
export class Readings {
  constructor(private readonly ledgers: Ledgers) {}

  /** An export: each one counts. It is noted before anything leaves. */
  async exported(reader: Reader, what: What, about: string, why?: string): Promise<void> {
    await this.note(reader, what, [about], why ?? null, null);
  }

  /** Reading on a page: the same once more within the hour is not noted again. */
  async read(reader: Reader, what: What, about: readonly string[]): Promise<void> {
    const hour = new Date();
    hour.setUTCMinutes(0, 0, 0);
    if (about.length > 0) await this.note(reader, what, about, null, hour);
  }

  /** Newest first. */
  async list(company: string, wanted: Wanted): Promise<readonly Reading[]> {
    return this.ledgers.connections.use(company, async (client) => {
      const { rows } = await client.query<Reading>(
        `SELECT id, at, reader, reader_kind AS "readerKind", what, about, why FROM ledger.reading
         WHERE log_id = $1 AND ($2::text IS NULL OR reader = $2) AND ($3::text IS NULL OR what = $3)
           AND ($4::text IS NULL OR about = $4)
           AND ($5::text IS NULL OR (at, id) < (SELECT at, id FROM ledger.reading
             WHERE log_id = $1 AND id = $5))
         ORDER BY at DESC, id DESC LIMIT $6`,
        [
          company,
          wanted.reader ?? null,
          wanted.what ?? null,
          wanted.about ?? null,
          wanted.before ?? null,
          wanted.limit,
        ],
      );
      return rows;
    });
  }

  /** Those whose six years are over; gives how many. */
  async forgetOld(company: string): Promise<number> {
    return this.ledgers.connections.use(company, async (client) => {
      const { rowCount } = await client.query(
        `DELETE FROM ledger.reading
         WHERE log_id = $1 AND at < now() - make_interval(years => $2)`,
        [company, KEPT_YEARS],
      );
      return rowCount ?? 0;
    });
  }

  private async note(
    { company, id: reader, kind }: Reader,
    what: What,
    about: readonly string[],
    why: string | null,
    hour: Date | null,
  ): Promise<void> {
    const ids = about.map(() => uuid());
    await this.ledgers.connections.use(company, (client) =>
      client.query(
        `INSERT INTO ledger.reading (log_id, id, reader, reader_kind, what, about, why, hour)
         SELECT $1, each.id, $2, $3, $4, each.about, $5, $6
         FROM unnest($7::text[], $8::text[]) AS each (id, about)
         ON CONFLICT DO NOTHING`,
        [company, reader, kind, what, why, hour, ids, about],
      ),
    );
  }
}

/** Somebody who is signed in, as a reader. */
export const readerOf = ({ company, person }: Acting): Reader => ({
  company: company.id,
  id: person.id,
  kind: 'person',
});
