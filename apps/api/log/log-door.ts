// What the log's own jobs ask before any company is known: each question gives one row or none.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import { newClient, openPool } from '#ledger';
import { Settings } from '../data/settings.js';

export interface NextToVerify {
  readonly company: string;
  /** The run to go on with, if one was begun. */
  readonly run: string | null;
}

export interface VerificationSummary {
  readonly damaged: number;
  readonly never: number;
  /** Since the oldest of the last finished runs; null where there is none. */
  readonly oldestSeconds: number | null;
}

export interface FeedReader {
  readonly company: string;
  readonly id: string;
  readonly name: string;
}

/** One verification at a time on one database, whichever instance of the service it runs in. */
const VERIFICATION_LOCK = 7_240_002;

export interface HeldLock {
  /** Rejects nothing: resolves when the lock is lost with its connection. */
  readonly lost: Promise<void>;
  release(): Promise<void>;
}

@Injectable()
export class LogDoor implements OnApplicationShutdown {
  private readonly pool: pg.Pool;

  constructor(private readonly settings: Settings) {
    this.pool = openPool({
      connectionString: settings.serviceUrl,
      max: 2,
      application_name: 'gauge-log-door',
    });
  }

  async nextToVerify(
    since: Date | null,
    passedOver: readonly string[],
  ): Promise<NextToVerify | undefined> {
    const { rows } = await this.pool.query<NextToVerify>(
      'SELECT log_id AS company, run FROM door.next_to_verify($1, $2)',
      [since, passedOver],
    );
    return rows[0];
  }

  async summary(): Promise<VerificationSummary> {
    const { rows } = await this.pool.query<VerificationSummary>(
      `SELECT damaged, never, oldest_seconds AS "oldestSeconds" FROM door.verification_summary()`,
    );
    return rows[0] ?? { damaged: 0, never: 0, oldestSeconds: null };
  }

  async feed(tokenDigest: Buffer): Promise<FeedReader | undefined> {
    const { rows } = await this.pool.query<FeedReader>(
      'SELECT log_id AS company, id, name FROM door.feed($1)',
      [tokenDigest],
    );
    return rows[0];
  }

  /** Undefined where another instance has it. It lives as long as its connection. */
  async takeLock(): Promise<HeldLock | undefined> {
    const client = newClient({
      connectionString: this.settings.serviceUrl,
      application_name: 'gauge-verification-lock',
      keepAlive: true,
    });
    const lost = new Promise<void>((resolve) => {
      client.once('end', resolve);
      client.on('error', () => resolve());
    });
    await client.connect();
    const { rows } = await client.query<{ ok: boolean }>('SELECT pg_try_advisory_lock($1) AS ok', [
      VERIFICATION_LOCK,
    ]);
    const release = () => client.end().catch(() => undefined);
    if (rows[0]?.ok === true) return { lost, release };
    await release();
    return undefined;
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.end();
  }
}
