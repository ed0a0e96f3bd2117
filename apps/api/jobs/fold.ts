// Jobs as the record tells them: the newest state of each by its version, kept while there is room,
// and any earlier state folded anew.

import { Injectable } from '@nestjs/common';
import { evolve, initial, jobAsOf, type Job } from '#jobs';
import type { Recorded } from '#ledger';
import { Ledgers } from '../data/ledgers.js';
import { jobStream, pastEvent } from './job-stream.js';

const KEPT = 2_000;

export interface AsOf {
  /** What was recorded by then. */
  readonly recordedAt?: string;
  /** What was true by then. */
  readonly effectiveAt?: string;
}

export function fold(job: Job, events: readonly Recorded[]): Job {
  return events.reduce((state, event) => evolve(state, pastEvent(event)), job);
}

@Injectable()
export class Jobs {
  private readonly kept = new Map<string, Job>();

  constructor(private readonly ledgers: Ledgers) {}

  /** As the record stands now; version 0 where there is no such job. */
  async load(company: string, id: string): Promise<Job> {
    const key = `${company}/${id}`;
    const known = this.kept.get(key) ?? initial(id);
    const events = await this.ledgers.ledger.readStream(company, jobStream(id), {
      from: known.version + 1,
    });
    const job = fold(known, events);
    if (job.version > 0) this.keep(key, job);
    return job;
  }

  async asOf(company: string, id: string, at: AsOf): Promise<Job> {
    if (at.recordedAt === undefined && at.effectiveAt === undefined) return this.load(company, id);
    return jobAsOf(id, (await this.events(company, id, at)).map(pastEvent));
  }

  async upTo(company: string, id: string, version: number): Promise<Job> {
    return fold(
      initial(id),
      await this.ledgers.ledger.readStream(company, jobStream(id), { upTo: version }),
    );
  }

  events(company: string, id: string, asOf: AsOf = {}): Promise<readonly Recorded[]> {
    return this.ledgers.ledger.readStream(company, jobStream(id), { asOf });
  }

  since(company: string, id: string, version: number): Promise<readonly Recorded[]> {
    return this.ledgers.ledger.readStream(company, jobStream(id), { from: version + 1 });
  }

  private keep(key: string, job: Job): void {
    this.kept.delete(key);
    this.kept.set(key, job);
    if (this.kept.size <= KEPT) return;
    const [oldest] = this.kept.keys();
    if (oldest !== undefined) this.kept.delete(oldest);
  }
}
