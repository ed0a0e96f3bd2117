// What keeps a person or a site from being erased: a legal hold on them, or on a job whose record names
// them, and a retention period that has not ended.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { JOB_LIST } from '../jobs/job-list.js';
import { jobStream } from '../jobs/job-stream.js';
import {
  endOf,
  standing,
  yearsInWords,
  type Disposal,
  type Ground,
  type PartyKind,
} from './disposal.js';

@Injectable()
export class KeepsFromErasure {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
  ) {}

  /** In sentences; empty where nothing keeps it. */
  async of(
    company: string,
    disposal: Disposal,
    { party, ground }: { readonly party: string; readonly ground: Ground },
  ): Promise<readonly string[]> {
    const found: string[] = [];
    for (const { id, on, placed } of standing(disposal)) {
      const covers =
        on.kind === 'party' ? on.id === party : await this.names(company, on.id, party);
      const where = on.kind === 'party' ? '' : ' on a job that names them';
      if (covers)
        found.push(
          `A legal hold${where}, placed on ${placed.at.slice(0, 10)}, stands: "${placed.why}" (${id}).`,
        );
    }
    const period =
      ground === 'asked-by-law' ? undefined : await this.period(company, disposal, party);
    return period === undefined ? found : [...found, period];
  }

  /** Any entry of the job, the earliest too: who was replaced since is covered as well. */
  private async names(company: string, job: string, party: string): Promise<boolean> {
    const entries = await this.ledgers.ledger.readStream(company, jobStream(job));
    return entries.some(({ data }) => JSON.stringify(data).includes(party));
  }

  private async period(
    company: string,
    { years: periods }: Disposal,
    party: string,
  ): Promise<string | undefined> {
    const { prisma } = this.companies.of(company);
    const row = await prisma.party.findFirst({ where: { id: party, latest: true } });
    const years = row === null ? null : periods[row.kind as PartyKind];
    if (row === null || years === null) return undefined;
    const { generation } = await this.ledgers.liveList(company, JOB_LIST);
    const { _max } = await prisma.jobRow.aggregate({
      where: { generation, OR: [{ customer: party }, { site: party }] },
      _max: { updatedAt: true },
    });
    const since = _max.updatedAt && _max.updatedAt > row.createdAt ? _max.updatedAt : row.createdAt;
    const end = endOf(since, years);
    if (end <= new Date()) return undefined;
    return (
      `The office keeps details of a ${row.kind} for ${yearsInWords(years)} after the last entry about ` +
      `them: until ${end.toISOString().slice(0, 10)}. Before that only what the law asks for is erased.`
    );
  }
}
