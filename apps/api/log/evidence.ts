// The evidence of a job in one file that verifies anywhere: its entries, papers, sign-offs, the rules and
// catalogue they rest on, each with its proof, and the documents that its entries name.

import { Injectable } from '@nestjs/common';
import { decisionRecord, type PastEvent } from '#jobs';
import { canonical, type BundleRequest } from '#ledger';
import { Companies } from '../data/companies.js';
import { Signing } from '../data/signing.js';
import { Log } from '../http/log.js';
import { Jobs } from '../jobs/fold.js';
import { jobStream, pastEvent } from '../jobs/job-stream.js';
import { paperStream, Papers, type IssuedRow } from '../papers/papers.js';
import { Problem } from '../problems.js';
import { trailStream } from '../sign-off/trail.js';

const RESTS_ON = ['rulebook', 'catalogue'];
/** Of all attached files together; what does not fit is left out and stays named by its entry. */
const MOST_BYTES = 200_000_000;
const DIGESTS = /\b[0-9a-f]{64}\b/g;

@Injectable()
export class Evidence {
  constructor(
    private readonly jobs: Jobs,
    private readonly papers: Papers,
    private readonly companies: Companies,
    private readonly signing: Signing,
    private readonly log: Log,
  ) {}

  /** @throws Problem not-found, or conflict where nothing can be signed */
  async ofJob(company: string, job: string): Promise<{ number: string; bytes: Buffer }> {
    const events = (await this.jobs.events(company, job)).map(pastEvent);
    if (events.length === 0) throw new Problem('not-found', 'There is no such job.');
    const issued = await this.issued(company, job);
    const requests = events.flatMap((event) =>
      event.type === 'sign-off-requested/1' ? [event.data.request] : [],
    );
    const made = await this.signing.bundle({
      log: company,
      streams: [
        jobStream(job),
        ...issued.map((row) => paperStream(job, row as Parameters<typeof paperStream>[1])),
        ...requests.map((request) => trailStream(job, request)),
        ...RESTS_ON,
      ],
      documents: issued.map(({ paper, about, pdfDigest }) => ({
        name: `${paper}-${about}.pdf`,
        digest: pdfDigest,
      })),
      attachments: [
        {
          name: 'decision-record.json',
          bytes: Buffer.from(canonical(plain(decisionRecord(job, events, {})))),
        },
        ...(await this.files(company, events)),
      ],
    });
    if (!made) throw new Problem('conflict', NOTHING_SIGNED);
    if (made.kind === 'refused') {
      this.log.error({ company, reason: made.reason }, 'ALARM: evidence was refused a signature');
      throw new Problem('conflict', `No evidence can be signed now. ${made.reason}`);
    }
    const opened = events[0]?.data as { number?: string } | undefined;
    return { number: opened?.number ?? job, bytes: made.bytes };
  }

  /** Every paper is printed first, so that its print is part of the evidence. */
  private async issued(company: string, job: string): Promise<readonly IssuedRow[]> {
    for (const name of (await this.papers.ofJob(company, job)) ?? []) {
      await this.papers
        .print(company, job, name)
        .catch((err: unknown) => this.log.error({ company, job, err }, 'a paper was not printed'));
    }
    return this.papers.rows(company, job);
  }

  private async files(
    company: string,
    events: readonly PastEvent[],
  ): Promise<BundleRequest['attachments']> {
    const named = [...new Set(JSON.stringify(events).match(DIGESTS) ?? [])];
    const { prisma } = this.companies.of(company);
    const found = await prisma.file.findMany({
      where: { digest: { in: named } },
      select: { digest: true, name: true, size: true },
      orderBy: { size: 'asc' },
    });
    const files: { name: string; bytes: Uint8Array }[] = [];
    let total = 0;
    for (const { digest, name, size } of found) {
      total += size;
      if (total > MOST_BYTES) break;
      const file = await prisma.file.findFirst({ where: { digest }, select: { bytes: true } });
      if (file)
        files.push({ name: `${digest.slice(0, 12)}-${plainName(name)}`, bytes: file.bytes });
    }
    return files;
  }
}

const NOTHING_SIGNED =
  'This installation signs nothing: it was started without a folder for its signing key.';
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
/** What every file system and zip reader takes. */
const plainName = (name: string): string => name.replace(/[^A-Za-z0-9._-]+/g, '_').slice(-80);
