// Tokens that read a company's feed of events and nothing else; only their digests are kept.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { Ledgers } from '../data/ledgers.js';
import { newToken, tokenDigest } from '../people/passwords.js';
import { Problem } from '../problems.js';

export interface FeedToken {
  readonly id: string;
  readonly name: string;
  readonly madeBy: string;
  readonly madeAt: Date;
  readonly endedAt: Date | null;
}

@Injectable()
export class FeedTokens {
  constructor(private readonly ledgers: Ledgers) {}

  async list(company: string): Promise<readonly FeedToken[]> {
    return this.ledgers.connections.use(company, async (client) => {
      const { rows } = await client.query<FeedToken>(
        `SELECT id, name, made_by AS "madeBy", made_at AS "madeAt", ended_at AS "endedAt"
         FROM ledger.feed_token WHERE log_id = $1 ORDER BY made_at DESC, id`,
        [company],
      );
      return rows;
    });
  }

  /** The token is shown this once. */
  async make(
    company: string,
    person: string,
    name: string,
  ): Promise<{ id: string; token: string }> {
    const [id, token] = [uuid(), newToken()];
    await this.ledgers.connections.use(company, (client) =>
      client.query(
        `INSERT INTO ledger.feed_token (log_id, id, token_digest, name, made_by)
         VALUES ($1, $2, $3, $4, $5)`,
        [company, id, tokenDigest(token), name, person],
      ),
    );
    return { id, token };
  }

  /** It opens nothing from now on; that there was one stays known. */
  async end(company: string, id: string): Promise<void> {
    const ended = await this.ledgers.connections.use(company, async (client) => {
      const { rowCount } = await client.query(
        `UPDATE ledger.feed_token SET ended_at = now()
         WHERE log_id = $1 AND id = $2 AND ended_at IS NULL`,
        [company, id],
      );
      return rowCount;
    });
    if (ended === 0) throw new Problem('not-found', 'There is no such token that still works.');
  }
}
