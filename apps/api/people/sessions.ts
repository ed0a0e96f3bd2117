// Sessions in the database: who a cookie's token stands for, for twelve hours after the last look.

import { Injectable } from '@nestjs/common';
import type { Role } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { FrontDoor, type KnownSession } from '../data/front-door.js';
import type { SignedIn } from '../http/signed-in.js';
import { newToken, tokenDigest } from './passwords.js';

export const SESSION_HOURS = 12;
const lifetime = () => new Date(Date.now() + SESSION_HOURS * 3_600_000);

@Injectable()
export class Sessions {
  constructor(
    private readonly door: FrontDoor,
    private readonly companies: Companies,
  ) {}

  async find(token: string): Promise<SignedIn | undefined> {
    const row = await this.door.session(tokenDigest(token));
    return row && signedIn(row, token);
  }

  async begin(company: string, person: string): Promise<SignedIn> {
    const token = newToken();
    const { prisma } = this.companies.of(company);
    await prisma.session.deleteMany({ where: { personId: person, expiresAt: { lt: new Date() } } });
    await prisma.session.create({
      data: {
        companyId: company,
        tokenDigest: new Uint8Array(tokenDigest(token)),
        personId: person,
        csrf: newToken(),
        expiresAt: lifetime(),
      },
    });
    const begun = await this.find(token);
    if (!begun) throw new Error('a session that was just begun is not there');
    return begun;
  }

  /** Another twelve hours from now. */
  async prolong(session: SignedIn): Promise<SignedIn> {
    const expiresAt = lifetime();
    const { prisma } = this.companies.of(session.company.id);
    await prisma.session.updateMany({ where: mine(session), data: { expiresAt } });
    return { ...session, expiresAt };
  }

  async end(session: SignedIn): Promise<void> {
    await this.companies.of(session.company.id).prisma.session.deleteMany({ where: mine(session) });
  }

  /** Other sessions of the person end. */
  async setPassword(session: SignedIn, passwordHash: string): Promise<void> {
    const { prisma } = this.companies.of(session.company.id);
    const { id } = session.person;
    await prisma.person.updateMany({ where: { id }, data: { passwordHash } });
    await prisma.session.deleteMany({ where: { personId: id, NOT: mine(session) } });
  }

  /** After a change of roles or a removal nobody goes on under the old ones. */
  async endAllOf(company: string, person: string): Promise<void> {
    await this.companies.of(company).prisma.session.deleteMany({ where: { personId: person } });
  }
}

const mine = ({ token }: SignedIn) => ({ tokenDigest: new Uint8Array(tokenDigest(token)) });

function signedIn(row: KnownSession, token: string): SignedIn {
  return {
    company: { id: row.company_id, name: row.company_name },
    person: { id: row.person_id, name: row.name, email: row.email },
    roles: row.roles as readonly Role[],
    csrf: row.csrf,
    expiresAt: row.expires_at,
    token,
  };
}
