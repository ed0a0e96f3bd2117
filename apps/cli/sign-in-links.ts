// Links printed at the start, each good once: for the people of the demonstration, or the one that
// sets up a company of one's own.

import { newClient } from '#ledger';
import { v7 as uuid } from 'uuid';
import { newToken, tokenDigest } from '../api/people/passwords.js';
import { SignInLinks } from '../api/people/sign-in-links.js';
import type { Service } from '../api/service.js';
import { DEMONSTRATION, PEOPLE } from './demonstration/people.js';
import { LAST_DAY } from './large/dice.js';
import { isThere, LARGE, STAFF } from './large/staff.js';
import type { Opened } from './open-database.js';

export interface Link {
  readonly who: string;
  readonly where: string;
}

const SETUP_MINUTES = 30;

/** Sets the first administrator's password, once, within thirty minutes. */
export async function firstLink(ownerUrl: string): Promise<Link> {
  const token = newToken();
  const owner = newClient({ connectionString: ownerUrl });
  await owner.connect();
  try {
    await owner.query(
      `INSERT INTO sign_in_link (company_id, token_digest, expires_at)
       VALUES ($1, $2, now() + make_interval(mins => $3))`,
      [uuid(), tokenDigest(token), SETUP_MINUTES],
    );
  } finally {
    await owner.end();
  }
  return { who: `first administrator, within ${SETUP_MINUTES} minutes`, where: `/setup/${token}` };
}

/** None where there is no demonstration: there people sign in by password. */
export async function signInLinks(service: Service, database: Opened): Promise<readonly Link[]> {
  const here = await database.companies();
  const links = service.get(SignInLinks);
  const invited = [
    ...PEOPLE.map((person) => ({ company: DEMONSTRATION.company, person })),
    ...STAFF.filter((each) => isThere(each, LAST_DAY)).map((person) => ({
      company: LARGE.company,
      person,
    })),
  ].filter(({ company }) => here.includes(company));
  return Promise.all(
    invited.map(async ({ company, person: { id, name, roles } }) => ({
      who: `${name} (${roles.join(', ').replaceAll('-', ' ')}${company === LARGE.company ? ', nine years' : ''})`,
      where: `/sign-in/${await links.make(company, id)}`,
    })),
  );
}
