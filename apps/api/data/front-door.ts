// The questions asked before the company is known. Each gives one row or none, and only to who knows
// the e-mail, or the token of the session, link, packet visit or calendar.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import { openPool } from '#ledger';
import { Settings } from './settings.js';

export interface KnownPerson {
  readonly company: string;
  readonly person: string;
  readonly passwordHash: string | null;
}

export interface KnownSession {
  readonly company_id: string;
  readonly company_name: string;
  readonly person_id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly string[];
  readonly csrf: string;
  readonly expires_at: Date;
}

export interface UsedLink {
  readonly company: string;
  /** None where the link sets up the company. */
  readonly person: string | null;
}

export interface OpenedPacket {
  readonly company: string;
  readonly job: string;
  readonly request: string;
  readonly engineer: string;
}
export interface PacketVisit extends OpenedPacket {
  /** Of the link that began it. */
  readonly link: Buffer;
}
export interface OpenedCustomerLink {
  readonly company: string;
  readonly job: string;
  readonly party: string;
  readonly papers: unknown;
}

const ATTEMPTS_WITHIN = '15 minutes';

@Injectable()
export class FrontDoor implements OnApplicationShutdown {
  private readonly pool: pg.Pool;

  constructor(settings: Settings) {
    this.pool = openPool({
      connectionString: settings.serviceUrl,
      max: 6,
      application_name: 'gauge-door',
    });
  }

  async person(email: string): Promise<KnownPerson | undefined> {
    const { rows } = await this.pool.query<{
      company_id: string;
      person_id: string;
      password_hash: string | null;
    }>('SELECT * FROM door.sign_in($1)', [email]);
    const [row] = rows;
    return (
      row && { company: row.company_id, person: row.person_id, passwordHash: row.password_hash }
    );
  }

  async session(tokenDigest: Buffer): Promise<KnownSession | undefined> {
    const named = {
      name: 'session',
      text: 'SELECT * FROM door.session($1)',
      values: [tokenDigest],
    };
    return (await this.pool.query<KnownSession>(named)).rows[0];
  }

  async useLink(tokenDigest: Buffer): Promise<UsedLink | undefined> {
    return useLink(this.pool, tokenDigest);
  }

  /** Uses the link up and begins a visit. */
  openPacket(tokenDigest: Buffer, visitDigest: Buffer): Promise<OpenedPacket | undefined> {
    return this.one<OpenedPacket>(
      'SELECT company_id AS company, job, request, engineer FROM door.open_packet($1, $2)',
      tokenDigest,
      visitDigest,
    );
  }

  /** While it lasts, and before it was answered. */
  packetVisit(visitDigest: Buffer): Promise<PacketVisit | undefined> {
    return this.one<PacketVisit>(
      'SELECT company_id AS company, job, request, engineer, token_digest AS link FROM door.packet_visit($1)',
      visitDigest,
    );
  }

  customerLink(tokenDigest: Buffer): Promise<OpenedCustomerLink | undefined> {
    return this.one<OpenedCustomerLink>(
      'SELECT company_id AS company, job, party, papers FROM door.customer_link($1)',
      tokenDigest,
    );
  }

  calendar(tokenDigest: Buffer): Promise<{ company: string; person: string } | undefined> {
    return this.one(
      'SELECT company_id AS company, person_id AS person FROM door.calendar($1)',
      tokenDigest,
    );
  }

  /** Seconds that a further attempt with one of these has to wait; 0 where it is taken now. */
  async mustWait(keys: readonly Buffer[], most: number): Promise<number> {
    const { rows } = await this.pool.query<{ seconds: number }>(
      'SELECT door.must_wait($1::bytea[], $2, $3) AS seconds',
      [keys, most, ATTEMPTS_WITHIN],
    );
    return rows[0]?.seconds ?? 0;
  }

  async attemptFailed(keys: readonly Buffer[]): Promise<void> {
    await this.pool.query('SELECT door.attempt_failed($1::bytea[], $2)', [keys, ATTEMPTS_WITHIN]);
  }

  async attemptSucceeded(keys: readonly Buffer[]): Promise<void> {
    await this.pool.query('SELECT door.attempt_succeeded($1::bytea[])', [keys]);
  }

  /** Ids alone, for what the service does by itself. */
  async companies(): Promise<readonly string[]> {
    const { rows } = await this.pool.query<{ company_id: string }>(
      'SELECT * FROM door.companies()',
    );
    return rows.map((row) => row.company_id);
  }

  private async one<T extends pg.QueryResultRow>(
    text: string,
    ...values: readonly Buffer[]
  ): Promise<T | undefined> {
    return (await this.pool.query<T>(text, [...values])).rows[0];
  }

  /** Uses a link up and works in its company, both or neither. */
  async throughLink<T>(
    tokenDigest: Buffer,
    work: (link: UsedLink, client: pg.PoolClient) => Promise<T>,
  ): Promise<T | undefined> {
    const client = await this.pool.connect();
    try {
      await client.query('BEGIN');
      const link = await useLink(client, tokenDigest);
      if (link) await client.query("SELECT set_config('gauge.company', $1, true)", [link.company]);
      const done = link && (await work(link, client));
      await client.query('COMMIT');
      return done;
    } catch (error) {
      await client.query('ROLLBACK').catch(() => undefined);
      throw error;
    } finally {
      client.release();
    }
  }

  async ready(): Promise<boolean> {
    return (await this.pool.query('SELECT 1')).rowCount === 1;
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.end();
  }
}

async function useLink(on: pg.Pool | pg.PoolClient, digest: Buffer): Promise<UsedLink | undefined> {
  const { rows } = await on.query<{ company_id: string; person_id: string | null }>(
    'SELECT * FROM door.use_link($1)',
    [digest],
  );
  const [row] = rows;
  return row && { company: row.company_id, person: row.person_id };
}
