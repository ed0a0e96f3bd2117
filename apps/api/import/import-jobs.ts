// Opens all jobs of a checked file in one request to the log, or none of them.

import { createHash, randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { decide, initial, roleFor, type Context } from '#jobs';
import type { StreamAppend } from '#ledger';
import { Prisma } from '#prisma';
import { Companies } from '../data/companies.js';
import { digestOf, Ledgers } from '../data/ledgers.js';
import type { SignedIn } from '../http/signed-in.js';
import { Contexts } from '../jobs/contexts.js';
import { numberStream } from '../jobs/execute-on-job.js';
import { JOB_LIST } from '../jobs/job-list.js';
import { jobStream } from '../jobs/job-stream.js';
import { commit } from '../people/parties.js';
import { Problem } from '../problems.js';
import { readJobCsv, type ImportedJob, type RowFault } from './job-csv.js';

export interface Checked {
  /** SHA-256 of the file: what is confirmed is what was checked. */
  readonly digest: string;
  readonly jobs: number;
  readonly faults: readonly RowFault[];
}

const LISTS_WAIT_MS = 5_000;

@Injectable()
export class ImportJobs {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
    private readonly contexts: Contexts,
  ) {}

  async check(
    asking: SignedIn,
    text: string,
  ): Promise<Checked & { readonly read: readonly ImportedJob[] }> {
    const { jobs, faults } = readJobCsv(text, uuid);
    const context = await this.contexts.of(asking);
    const taken = await this.taken(asking.company.id, jobs);
    const all = [...faults, ...taken, ...jobs.flatMap((job) => refusedRow(job, context))].sort(
      (a, b) => a.row - b.row,
    );
    return { digest: fileDigest(text), jobs: jobs.length, faults: all, read: jobs };
  }

  async confirm(
    asking: SignedIn,
    text: string,
    checked: string,
  ): Promise<{ jobs: number; listsAt: number }> {
    if (fileDigest(text) !== checked)
      throw new Problem('conflict', 'This is not the file that was checked: check it first.');
    const company = asking.company.id;
    const commandId = `import/${checked}`;
    const before = await this.ledgers.accepted(company, commandId);
    if (before)
      return {
        jobs: Object.keys(before.versions).filter((stream) => stream.startsWith('job/')).length,
        listsAt: before.last,
      };
    const { read, faults } = await this.check(asking, text);
    if (faults.length > 0) {
      throw new Problem('malformed', {
        faults: faults.map(({ row, column, message }) => ({
          pointer: `/row/${row}/${column}`,
          message,
        })),
      });
    }
    const context = await this.contexts.of(asking);
    const parties = await this.keepParties(asking, read);
    const result = await this.ledgers
      .append({
        log: company,
        by: { person: asking.person.id, role: roleFor('open-job', asking.roles) ?? '' },
        command: { id: commandId, digest: digestOf({ checked }) },
        streams: read.flatMap((job) => streams(job, parties.commitments, context)),
      })
      .catch(async (error: unknown) => {
        await this.forget(company, parties.ids);
        throw error;
      });
    if (result.kind === 'wrong-version' || result.kind === 'command-reused') {
      await this.forget(company, parties.ids);
      throw new Problem(
        'conflict',
        'Somebody opened a job with one of these numbers meanwhile: nothing was imported; check the file again.',
      );
    }
    if (result.kind === 'repeated') await this.forget(company, parties.ids);
    return {
      jobs: read.length,
      listsAt: await this.ledgers.ledger.waitFor(company, JOB_LIST, result.last, LISTS_WAIT_MS),
    };
  }

  private async taken(company: string, jobs: readonly ImportedJob[]): Promise<readonly RowFault[]> {
    const wanted = new Map(
      jobs.map(({ row, command }) => [
        numberStream(command.number),
        { row, number: command.number },
      ]),
    );
    const { rows } = await this.ledgers.connections.use(company, (client) =>
      client.query<{ stream: string }>(
        'SELECT stream_id AS stream FROM ledger.event WHERE log_id = $1 AND version = 1 AND stream_id = ANY($2)',
        [company, [...wanted.keys()]],
      ),
    );
    return rows.flatMap(({ stream }) => {
      const known = wanted.get(stream);
      return known
        ? [{ row: known.row, column: 'number', message: `there is a job ${known.number} already` }]
        : [];
    });
  }

  private async keepParties({ company, person }: SignedIn, jobs: readonly ImportedJob[]) {
    const given = jobs.flatMap(({ customer, site }) => [
      { ...customer, kind: 'person' },
      { ...site, kind: 'site' },
    ]);
    const rows = given.map(({ id, kind, details }) => {
      const salt = randomBytes(16);
      return {
        companyId: company.id,
        id,
        version: 1,
        latest: true,
        kind,
        name: details.name,
        details,
        salt,
        commitment: commit(salt, details),
        createdBy: person.id,
      };
    });
    await this.companies.of(company.id).prisma.party.createMany({ data: rows });
    return {
      ids: rows.map(({ id }) => id),
      commitments: new Map(rows.map(({ id, commitment }) => [id, commitment])),
    };
  }

  /** Nothing of an import that was not done stays. */
  private async forget(company: string, ids: readonly string[]): Promise<void> {
    await this.companies.of(company).prisma.party.updateMany({
      where: { id: { in: [...ids] } },
      data: {
        name: null,
        details: Prisma.DbNull,
        salt: null,
        erasedAt: new Date(),
        erasedBy: 'import',
        reason: 'the import was not done',
      },
    });
  }
}

const fileDigest = (text: string): string => createHash('sha256').update(text).digest('hex');

function refusedRow({ row, command }: ImportedJob, context: Context): readonly RowFault[] {
  const decision = decide(initial('import'), command, context);
  return decision.ok
    ? []
    : decision.refusals.map(({ words, pointer }) => ({
        row,
        column: pointer?.split('/')[1] ?? '',
        message: words,
      }));
}

function streams(
  { command, customer, site }: ImportedJob,
  commitments: ReadonlyMap<string, string>,
  context: Context,
): readonly StreamAppend[] {
  const id = uuid();
  const known = (party: string) => ({ id: party, commitment: commitments.get(party) ?? '' });
  const complete = { ...command, site: known(site.id), parties: { customer: known(customer.id) } };
  const decision = decide(initial(id), complete, context);
  if (!decision.ok)
    throw new Error(
      `a checked row is refused: ${decision.refusals.map(({ words }) => words).join(' ')}`,
    );
  return [
    {
      stream: jobStream(id),
      expectedVersion: 0,
      events: decision.events.map(({ type, data }) => ({ type, data })),
    },
    {
      stream: numberStream(command.number),
      expectedVersion: 0,
      events: [{ type: 'job-number-taken/1', data: { job: id } }],
    },
  ];
}
