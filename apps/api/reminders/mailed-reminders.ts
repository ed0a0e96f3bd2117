// What was mailed to whom. A thing is claimed before it is mailed, by one statement, so that two
// instances never mail it twice; a claim whose instance died is free again after a quarter hour. The
// database's own clock counts, one for all instances.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import type { Addressed } from './due-mail.js';

/** A person gets what falls due in one mail, and the next not before so long; requests come at once. */
const BETWEEN = '12 hours';
const CLAIM_LASTS = '15 minutes';

@Injectable()
export class MailedReminders {
  constructor(private readonly companies: Companies) {}

  /** Those that nobody mailed to this person and nobody is mailing. */
  async claim<T extends Addressed>(
    company: string,
    person: string,
    due: readonly T[],
  ): Promise<readonly T[]> {
    if (due.length === 0) return [];
    const { rows } = await this.companies
      .of(company)
      .pool.query<{ at: number }>(CLAIM, [company, person, JSON.stringify(due.map(thing))]);
    return rows.flatMap(({ at }) => due[at] ?? []);
  }

  async sent(company: string, person: string, due: readonly Addressed[]): Promise<void> {
    await this.companies
      .of(company)
      .pool.query(SENT, [company, person, JSON.stringify(due.map(thing))]);
  }

  /** Not mailed after all: free for the next round. */
  async release(company: string, person: string, due: readonly Addressed[]): Promise<void> {
    await this.companies
      .of(company)
      .pool.query(RELEASE, [company, person, JSON.stringify(due.map(thing))]);
  }
}

const thing = ({ job, kind, about, falls_on }: Addressed, at: number) => ({
  at,
  job: job ?? '',
  kind,
  about,
  falls_on,
});

const GIVEN = `given AS (
  SELECT * FROM jsonb_to_recordset($3::jsonb) AS g(at int, job text, kind text, about text, falls_on date))`;
const SAME = `m.company_id = $1 AND m.person_id = $2 AND m.job = g.job AND m.kind = g.kind
  AND m.about = g.about AND m.falls_on = g.falls_on`;

const CLAIM = `
  WITH ${GIVEN}, recent AS (
    SELECT 1 FROM mailed_reminder WHERE company_id = $1 AND person_id = $2
      AND kind <> 'sign-off-asked' AND sent_at > now() - interval '${BETWEEN}' LIMIT 1
  ), claimed AS (
    INSERT INTO mailed_reminder AS m (company_id, person_id, job, kind, about, falls_on, claimed_at)
    SELECT $1, $2, job, kind, about, falls_on, now() FROM given
    WHERE kind = 'sign-off-asked' OR NOT EXISTS (SELECT FROM recent)
    ON CONFLICT (company_id, person_id, job, kind, about, falls_on) DO UPDATE SET claimed_at = now()
      WHERE m.sent_at IS NULL AND m.claimed_at < now() - interval '${CLAIM_LASTS}'
    RETURNING job, kind, about, falls_on
  )
  SELECT g.at FROM given g JOIN claimed c USING (job, kind, about, falls_on) ORDER BY g.at`;

const SENT = `
  WITH ${GIVEN} UPDATE mailed_reminder m SET sent_at = now() FROM given g WHERE ${SAME}`;

const RELEASE = `
  WITH ${GIVEN} DELETE FROM mailed_reminder m USING given g WHERE ${SAME} AND m.sent_at IS NULL`;
