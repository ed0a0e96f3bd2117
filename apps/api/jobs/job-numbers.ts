// The next number of the year, YYYY-NNNN. The number is taken in the record itself, so that no two
// jobs ever share one; a number taken in the meantime is passed over.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import { Problem } from '../problems.js';

/** Many open jobs at once: each time at least one of them gets its number. */
const TRIES = 100;

@Injectable()
export class JobNumbers {
  constructor(private readonly companies: Companies) {}

  async withNumber<T>(
    company: string,
    wanted: string | undefined,
    open: (number: string) => Promise<T>,
  ): Promise<T> {
    if (wanted !== undefined) return open(wanted);
    const year = String(new Date().getUTCFullYear());
    let next = (await this.newest(company, year)) + 1;
    for (let attempt = 1; ; attempt++) {
      try {
        return await open(`${year}-${String(next).padStart(4, '0')}`);
      } catch (error) {
        const taken =
          error instanceof Problem && error.kind === 'conflict' && error.details.taken === true;
        if (!taken || attempt === TRIES) throw error;
        next = Math.max(next, await this.newestInRecord(company, year)) + 1;
      }
    }
  }

  private async newest(company: string, year: string): Promise<number> {
    const rows = await this.companies.of(company).prisma.$queryRaw<{ newest: number | null }[]>`
      SELECT max(substring(number FROM 6)::int) AS newest FROM job_row
      WHERE number ~ ${`^${year}-[0-9]{4,8}$`}`;
    return rows[0]?.newest ?? 0;
  }

  /** The list may be behind, most of all after a crash; the record is not. */
  private async newestInRecord(company: string, year: string): Promise<number> {
    const { rows } = await this.companies.of(company).pool.query<{ newest: number | null }>(
      `SELECT max(substring(stream_id FROM length($2) + 1)::int) AS newest FROM ledger.event
       WHERE log_id = $1 AND stream_id >= $2 AND stream_id < $3 AND stream_id ~ ('^' || $2 || '[0-9]{4,8}$')`,
      [company, `job-number/${year}-`, `job-number/${year}.`],
    );
    return rows[0]?.newest ?? 0;
  }
}
