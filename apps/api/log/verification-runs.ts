// The runs of verification of one company's log, as they are kept: what was found, and how far an
// unfinished one came.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import type { LogReport, VerifyProgress } from '#ledger';
import { Ledgers } from '../data/ledgers.js';

export interface Run {
  readonly run: string;
  /** Nobody: nightly. */
  readonly askedBy: string | null;
  readonly startedAt: Date;
  readonly updatedAt: Date;
  readonly finishedAt: Date | null;
  readonly done: number;
  readonly head: number;
  readonly met: number;
  readonly lastMet: number;
  readonly checkpoint: number | null;
  readonly result: 'sound' | 'damaged' | null;
  readonly faultPos: number | null;
  readonly faultSays: string | null;
  readonly trouble: string | null;
}

interface Standing extends Run {
  readonly frontier: Buffer;
  readonly lastAt: number;
}

export interface Found {
  readonly report: LogReport;
  readonly checkpoint: number | null;
  readonly fault: { readonly pos: number | null; readonly says: string } | undefined;
}

const COLUMNS = `run, asked_by AS "askedBy", started_at AS "startedAt", updated_at AS "updatedAt",
  finished_at AS "finishedAt", done::float8 AS done, head::float8 AS head, met,
  last_met::float8 AS "lastMet", checkpoint::float8 AS checkpoint, result,
  fault_pos::float8 AS "faultPos", fault_says AS "faultSays", trouble`;

@Injectable()
export class VerificationRuns {
  constructor(private readonly ledgers: Ledgers) {}

  /** Newest first. */
  async last(company: string, count: number): Promise<readonly Run[]> {
    return this.rows<Run>(
      company,
      `SELECT ${COLUMNS} FROM ledger.verification WHERE log_id = $1
       ORDER BY started_at DESC, run DESC LIMIT $2`,
      [count],
    );
  }

  /** The run under way and the last one that came to an end. */
  async standing(company: string): Promise<{ open: Run | undefined; last: Run | undefined }> {
    const one = async (which: string) =>
      (
        await this.rows<Run>(
          company,
          `SELECT ${COLUMNS} FROM ledger.verification WHERE log_id = $1 AND ${which} LIMIT 1`,
        )
      )[0];
    const [open, last] = await Promise.all([
      one('finished_at IS NULL ORDER BY started_at DESC'),
      one('finished_at IS NOT NULL ORDER BY finished_at DESC'),
    ]);
    return { open, last };
  }

  /** One that was asked for and not finished is that one. */
  async begin(company: string, askedBy: string | null): Promise<string> {
    const { open } = await this.standing(company);
    if (open) return open.run;
    const run = uuid();
    await this.rows(
      company,
      'INSERT INTO ledger.verification (log_id, run, asked_by) VALUES ($1, $2, $3)',
      [run, askedBy],
    );
    return run;
  }

  /** Where an unfinished run stands; from its beginning, undefined. */
  async progress(company: string, run: string): Promise<VerifyProgress | undefined> {
    const [row] = await this.rows<Standing>(
      company,
      `SELECT ${COLUMNS}, frontier, last_at::float8 AS "lastAt"
       FROM ledger.verification WHERE log_id = $1 AND run = $2`,
      [run],
    );
    if (!row || row.done === 0) return undefined;
    const { done: size, frontier, lastAt, met, lastMet } = row;
    return { size, frontier, lastAt, met, lastMet };
  }

  /** What the log's own row says, if it is there, and whether any entry is. */
  async head(company: string): Promise<{ head: number | null; hasEntries: boolean }> {
    const [row] = await this.rows<{ head: number | null; hasEntries: boolean }>(
      company,
      `SELECT (SELECT head::float8 FROM ledger.log WHERE log_id = $1) AS head,
         EXISTS (SELECT FROM ledger.event WHERE log_id = $1) AS "hasEntries"`,
    );
    return row ?? { head: null, hasEntries: false };
  }

  async keep(company: string, run: string, head: number, at: VerifyProgress): Promise<void> {
    await this.rows(
      company,
      `UPDATE ledger.verification SET updated_at = now(), trouble = NULL, head = $3, done = $4,
         frontier = $5, last_at = $6, met = $7, last_met = $8
       WHERE log_id = $1 AND run = $2 AND finished_at IS NULL AND done < $4`,
      [run, head, at.size, at.frontier, at.lastAt, at.met, at.lastMet],
    );
  }

  async finish(company: string, run: string, { report, checkpoint, fault }: Found): Promise<void> {
    await this.rows(
      company,
      `UPDATE ledger.verification SET updated_at = now(), finished_at = now(), trouble = NULL,
         done = $3, head = greatest(head, $3), met = $4, last_met = $5, checkpoint = $6,
         result = $7, fault_pos = $8, fault_says = $9
       WHERE log_id = $1 AND run = $2 AND finished_at IS NULL`,
      [
        run,
        report.events,
        report.checkpoints,
        report.lastMet,
        checkpoint,
        fault ? 'damaged' : 'sound',
        fault?.pos ?? null,
        fault?.says ?? null,
      ],
    );
  }

  /** It stands still, and is gone on with later. */
  async stopped(company: string, run: string, why: string): Promise<void> {
    await this.rows(
      company,
      `UPDATE ledger.verification SET updated_at = now(), trouble = $3
       WHERE log_id = $1 AND run = $2 AND finished_at IS NULL`,
      [run, why],
    );
  }

  private rows<R extends object>(
    company: string,
    text: string,
    values: readonly unknown[] = [],
  ): Promise<R[]> {
    return this.ledgers.connections.use(
      company,
      async (client) => (await client.query(text, [company, ...values])).rows as R[],
    );
  }
}
