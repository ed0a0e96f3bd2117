// Links that are good once: to hand to a new person, and for the people of the demonstration.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import { newToken, tokenDigest } from './passwords.js';

const DAY_MS = 24 * 3_600_000;

@Injectable()
export class SignInLinks {
  constructor(private readonly companies: Companies) {}

  /** The token of a link that signs this person in once, within two days. */
  async make(company: string, person: string): Promise<string> {
    const token = newToken();
    await this.companies.of(company).prisma.signInLink.create({
      data: {
        companyId: company,
        tokenDigest: new Uint8Array(tokenDigest(token)),
        personId: person,
        expiresAt: new Date(Date.now() + 2 * DAY_MS),
      },
    });
    return token;
  }
}
