// The record: the ledger of all companies, one log each, on the service's connections.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import {
  companyPool,
  createLists,
  createPostgresLedger,
  createSignals,
  newClient,
  openServicePool,
  startWakeUp,
} from '#ledger';
import type {
  AppendRequest,
  AppendResult,
  By,
  ClockStep,
  CompanyPool,
  Ledger,
  Lists,
  NewEvent,
  WakeUp,
} from '#ledger';
import { Log } from '../http/log.js';
import { jobList } from '../jobs/keep-job-list.js';
import { Problem } from '../problems.js';
import { officeList } from '../owner-report/keep-office-list.js';
import { recordClockStep } from './clock-steps.js';
import { digestOf } from './digest.js';
import { Settings } from './settings.js';

export { digestOf } from './digest.js';

@Injectable()
export class Ledgers implements OnApplicationShutdown {
  readonly connections: CompanyPool;
  readonly ledger: Ledger;
  readonly lists: Lists;
  private readonly pool: pg.Pool;
  private readonly wakeUp: WakeUp;
  private readonly listeners = new Set<(log: string | undefined) => void>();

  constructor(settings: Settings, log: Log) {
    this.pool = openServicePool(settings.serviceUrl, 10, 'gauge-record');
    this.connections = companyPool(this.pool);
    const signals = createSignals();
    this.ledger = createPostgresLedger({
      pool: this.connections,
      signals,
      onClockStep: (company, step) => void this.tellStep(log, company, step),
    });
    this.lists = createLists({
      ledger: this.ledger,
      pool: this.connections,
      lists: [jobList(this.ledger), officeList(this.ledger)],
      signals,
      onFault: (company, list, err) => log.error({ company, list, err }, 'a list stands still'),
    });
    this.wakeUp = startWakeUp({
      newClient: () =>
        newClient({
          connectionString: settings.serviceUrl,
          connectionTimeoutMillis: 5000,
        }),
      onWake: (company) => {
        this.lists.wake(company);
        this.tell(company);
      },
      onFault: (err) => log.info({ err }, 'other instances are not heard for a moment'),
    });
    this.ledger.onAppended((company) => {
      this.wakeUp.announce(company);
      this.tell(company);
    });
  }

  /** @throws Problem busy where too much waits already */
  async append(request: AppendRequest): Promise<Exclude<AppendResult, { kind: 'queue-full' }>> {
    const result = await this.ledger.append(request);
    if (result.kind === 'queue-full') {
      throw new Problem('busy', {
        detail: 'Too much is being written just now; try again.',
        retryAfter: 1,
      });
    }
    return result;
  }

  /** Calls back after a commit of any instance, without a name where it is not known whose. */
  onChanged(listener: (company: string | undefined) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private async tellStep(log: Log, company: string, step: ClockStep): Promise<void> {
    const behindMs = Math.round(step.behind / 1000);
    log.error({ company, behindMs }, "the clock was set back behind the record's last entry");
    await recordClockStep(this.ledger, company, step).catch((err: unknown) =>
      log.error({ company, err }, 'a step of the clock was not recorded'),
    );
  }

  private tell(company: string | undefined): void {
    for (const listener of this.listeners) listener(company);
  }

  /** The generation that readers use, and how far it is. */
  async liveList(company: string, list: string): Promise<{ generation: number; pos: number }> {
    return this.connections.use(company, async (client) => {
      const { rows } = await client.query<{ generation: number; pos: number }>({
        name: 'live-list',
        text: `SELECT generation, pos::float8 AS pos FROM ledger.projection
               WHERE log_id = $1 AND name = $2 AND live`,
        values: [company, list],
      });
      return rows[0] ?? { generation: 0, pos: 0 };
    });
  }

  /** An accepted command, by its id. */
  accepted(company: string, id: string): Promise<Accepted | undefined> {
    return this.connections.use(company, async (client) => {
      const { rows } = await client.query<Accepted>(
        `SELECT digest, versions, last_pos::float8 AS last FROM ledger.command
         WHERE log_id = $1 AND command_id = $2`,
        [company, id],
      );
      return rows[0];
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.lists.stop();
    await this.wakeUp.stop();
    await this.ledger.close();
    await this.pool.end();
  }
}

export interface Accepted {
  readonly digest: string;
  /** Each stream's version afterwards. */
  readonly versions: Readonly<{ [stream: string]: number }>;
  readonly last: number;
}

export interface Written {
  readonly company: string;
  readonly by: By;
  readonly commandId: string;
  /** What was asked, for the digest of the command. */
  readonly asked: unknown;
}

/** A request for one stream. */
export const oneStream = (
  { company, by, commandId, asked }: Written,
  stream: string,
  expectedVersion: number,
  events: readonly NewEvent[],
): AppendRequest => ({
  log: company,
  by,
  command: { id: commandId, digest: digestOf(asked) },
  streams: [{ stream, expectedVersion, events }],
});
