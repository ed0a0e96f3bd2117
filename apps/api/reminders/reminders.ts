// What falls due in a company by a day: rows of the list, and licenses of the register.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { OFFICE_LIST } from '../owner-report/keep-office-list.js';

export interface Reminder {
  readonly kind: string;
  readonly about: string;
  /** null for a license. */
  readonly job: string | null;
  readonly number: string | null;
  readonly name: string;
  readonly falls_on: string;
  readonly words: string;
  /** Of a license: the account of its holder, where there is one. */
  readonly holder?: string | null;
}

const MOST = 2_000;
const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

@Injectable()
export class Reminders {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
  ) {}

  /** Soonest first; what is overdue stands on top, from a day on where one is given. The oldest give way. */
  async until(company: string, day: string, from = '1900-01-01'): Promise<readonly Reminder[]> {
    const { prisma } = this.companies.of(company);
    const { generation } = await this.ledgers.liveList(company, OFFICE_LIST);
    const [rows, licenses] = await Promise.all([
      prisma.reminder.findMany({
        where: { generation, fallsOn: { lte: new Date(day), gte: new Date(from) } },
        orderBy: { fallsOn: 'desc' },
        take: MOST,
      }),
      prisma.license.findMany({
        where: { expires: { lte: new Date(day), gte: new Date(from) }, standing: 'active' },
        orderBy: { expires: 'desc' },
        take: MOST,
      }),
    ]);
    const all: Reminder[] = [
      ...rows.map((row) => ({
        kind: row.kind,
        about: row.about,
        job: row.job,
        number: row.number,
        name: row.jobName,
        falls_on: dayOf(row.fallsOn),
        words: row.words,
      })),
      ...licenses.map(({ id, person, name, number, jurisdiction, expires }) => ({
        holder: person,
        kind: 'license-expiring',
        about: id,
        job: null,
        number: null,
        name,
        falls_on: dayOf(expires),
        words: `License ${number} (${jurisdiction}) of ${name} expires on ${dayOf(expires)}`,
      })),
    ];
    return all.sort((a, b) => a.falls_on.localeCompare(b.falls_on));
  }
}
