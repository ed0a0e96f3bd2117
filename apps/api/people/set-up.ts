// The first setting-up: a company, its administrator and its first rules editions, by one link.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { FrontDoor } from '../data/front-door.js';
import { Problem } from '../problems.js';
import { PublishRules } from '../rulebook/publish-rules.js';
import { hashPassword, tokenDigest } from './passwords.js';

export interface FirstAdministrator {
  readonly token: string;
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly company: string;
}

@Injectable()
export class SetUp {
  constructor(
    private readonly door: FrontDoor,
    private readonly rules: PublishRules,
  ) {}

  /** @throws Problem wrong-credentials for a bad link, conflict where the e-mail is taken */
  async company(first: FirstAdministrator): Promise<{ company: string; person: string }> {
    const passwordHash = await hashPassword(first.password);
    const person = uuid();
    const company = await this.door
      .throughLink(tokenDigest(first.token), async (link, client) => {
        if (link.person !== null)
          throw new Problem('wrong-credentials', 'This link signs somebody in.');
        await client.query('INSERT INTO company (id, name) VALUES ($1, $2)', [
          link.company,
          first.company,
        ]);
        await client.query(
          `INSERT INTO person (company_id, id, email, name, password_hash, roles)
         VALUES ($1, $2, $3, $4, $5, '{administrator}')`,
          [link.company, person, first.email, first.name, passwordHash],
        );
        return link.company;
      })
      .catch((error: unknown) => {
        throw isTaken(error)
          ? new Problem('conflict', 'This e-mail address is already in use.')
          : error;
      });
    if (company === undefined) {
      throw new Problem('wrong-credentials', 'This link was used before or has expired.');
    }
    await this.rules.ofTheProduct(company, person);
    return { company, person };
  }
}

const UNIQUE_VIOLATION = '23505';
const isTaken = (error: unknown) => (error as { code?: unknown } | null)?.code === UNIQUE_VIOLATION;
