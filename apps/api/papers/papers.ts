// Issued papers. Issuing records the paper's canonical content in the log, in a stream of its own, with
// ids in place of names; its print carries that entry as record.json and the proof of it, is kept by
// the digest of its bytes, and is the same bytes ever after. An erased person's prints go.

import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { noticesSince, type Notice, type PastEvent } from '#jobs';
import type { Attachment } from '#documents';
import { canonical, type By, type Recorded } from '#ledger';
import { Companies } from '../data/companies.js';
import { Ledgers, oneStream } from '../data/ledgers.js';
import { Signing } from '../data/signing.js';
import { Log } from '../http/log.js';
import { Jobs } from '../jobs/fold.js';
import { pastEvent } from '../jobs/job-stream.js';
import { Problem } from '../problems.js';
import {
  foldPaper,
  issuedBy,
  printPaper,
  templateOf,
  type Content,
  type PaperKind,
  type PaperName,
} from './paper-kinds.js';
import { PaperNames } from './paper-names.js';

const RECORD = 'record.json';
const PROOF = 'proof.txt';
export type PaperSize = 'letter' | 'a4';
export const PAPER_ISSUED = 'paper-issued/1';

export interface PaperIssued {
  readonly paper: PaperKind;
  readonly about: string;
  readonly job: string;
  readonly size: PaperSize;
  /** With ids, never with names. */
  readonly content: Content;
  readonly typesetting: {
    readonly compiler: string;
    readonly template: string;
    readonly digest: string;
  };
}

export interface NoticedPaper extends PaperName {
  readonly notices: readonly Notice[];
}

export interface IssuedRow {
  readonly paper: string;
  readonly about: string;
  readonly pos: number;
  readonly recordDigest: string;
  readonly pdfDigest: string;
  readonly issuedAt: Date;
}

const noPaper = () => new Problem('not-found', 'There is no such paper.');
export const paperStream = (job: string, { paper, about }: PaperName): string =>
  `paper/${job}/${paper}/${about}`;

@Injectable()
export class Papers {
  constructor(
    private readonly ledgers: Ledgers,
    private readonly companies: Companies,
    private readonly jobs: Jobs,
    private readonly names: PaperNames,
    private readonly signing: Signing,
    private readonly log: Log,
  ) {}

  /** What the job's entries issue, oldest first. */
  async ofJob(company: string, job: string): Promise<readonly NoticedPaper[] | undefined> {
    const events = await this.past(company, job);
    return events.length === 0
      ? undefined
      : events.flatMap((event) => {
          const name = issuedBy(event);
          return name ? [{ ...name, notices: noticesSince(events, event) }] : [];
        });
  }

  /** As it reads today, with names. */
  async read(company: string, job: string, name: PaperName): Promise<Content> {
    const events = await this.past(company, job);
    const bare = foldPaper(job, events, name, {});
    if (!bare) throw noPaper();
    return foldPaper(job, events, name, (await this.names.of(company, bare)).names) ?? bare;
  }

  /** After an entry that issues papers; what fails here is made up for when the paper is asked for. */
  async recordAfter(company: string, job: string, issued: readonly PaperName[]): Promise<void> {
    for (const name of issued) {
      await this.record(company, job, name).catch((err: unknown) =>
        this.log.error({ company, job, ...name, err }, 'a paper was not recorded'),
      );
    }
  }

  /** @throws Problem not-found where it was not issued */
  async recorded(company: string, job: string, name: PaperName): Promise<Recorded> {
    const [known] = await this.ledgers.ledger.readStream(company, paperStream(job, name));
    if (!known) throw noPaper();
    return known;
  }

  /** The entry of the log that is this paper; made where it is not there yet. */
  async record(
    company: string,
    job: string,
    name: PaperName,
    asked?: { by: By; size: PaperSize },
  ): Promise<Recorded> {
    const stream = paperStream(job, name);
    const [known] = await this.ledgers.ledger.readStream(company, stream);
    if (known) return known;
    const events = await this.past(company, job);
    const content = foldPaper(job, events, name, {});
    const by = asked?.by ?? events.find((event) => sameName(issuedBy(event), name))?.by;
    if (!content || !by) throw noPaper();
    const { typesetting } = await import('#documents');
    const data: PaperIssued = {
      ...name,
      job,
      size: asked?.size ?? 'letter',
      content,
      typesetting: typesetting(templateOf(name.paper)),
    };
    const request = oneStream({ company, by, commandId: stream, asked: name }, stream, 0, [
      { type: PAPER_ISSUED, data: plain(data) },
    ]);
    await this.ledgers.append(request);
    this.signing.soon(company);
    const [recorded] = await this.ledgers.ledger.readStream(company, stream);
    if (!recorded) throw new Error(`the paper ${stream} was issued and is not there`);
    return recorded;
  }

  /** The print that was issued, the same bytes each time. */
  async print(
    company: string,
    job: string,
    name: PaperName,
  ): Promise<{ row: IssuedRow; bytes: Buffer }> {
    const row = (await this.row(company, job, name)) ?? (await this.firstPrint(company, job, name));
    const kept = await this.ledgers.ledger.issued(company, row.pdfDigest);
    if (!kept) throw new Error(`the print of ${paperStream(job, name)} is not kept`);
    return {
      row,
      bytes: kept.bytes ?? (await this.afterErasure(company, job, name, kept.erasedAt ?? '')),
    };
  }

  async rows(company: string, job: string): Promise<readonly IssuedRow[]> {
    return this.companies
      .of(company)
      .prisma.issuedPaper.findMany({ where: { job }, orderBy: { pos: 'asc' } });
  }

  /** Prints that say this person or site go; that there were some stays known. */
  async eraseOf(company: string, party: string): Promise<void> {
    const rows = await this.companies
      .of(company)
      .prisma.issuedPaper.findMany({ where: { parties: { has: party } } });
    for (const { pdfDigest } of rows) await this.ledgers.ledger.eraseIssued(company, pdfDigest);
  }

  private async firstPrint(company: string, job: string, name: PaperName): Promise<IssuedRow> {
    const recorded = await this.record(company, job, name);
    const json = canonical(recorded);
    const digest = createHash('sha256').update(json).digest('hex');
    const proof = await this.signing.proof(company, recorded.pos);
    const { content, parties } = await this.named(company, job, name);
    const bytes = await printPaper(content, {
      size: (recorded.data as PaperIssued).size,
      json,
      digest,
      position: recorded.pos,
      attachments: [
        ...(proof ? [{ name: PROOF, bytes: proof }] : []),
        ...(await this.terms(company, content)),
      ],
    });
    const pdfDigest = await this.ledgers.ledger.keepIssued(company, bytes, 'application/pdf');
    const { prisma } = this.companies.of(company);
    await prisma.issuedPaper.createMany({
      data: [
        {
          companyId: company,
          job,
          ...name,
          size: (recorded.data as PaperIssued).size,
          pos: recorded.pos,
          recordDigest: digest,
          pdfDigest,
          parties: [...parties],
          issuedAt: recorded.recordedAt,
        },
      ],
      skipDuplicates: true,
    });
    const row = await this.row(company, job, name);
    if (!row) throw new Error(`the print of ${paperStream(job, name)} was not kept`);
    return row;
  }

  /** A print for reading after the kept one went; it says so and is not kept. */
  private async afterErasure(
    company: string,
    job: string,
    name: PaperName,
    erasedAt: string,
  ): Promise<Buffer> {
    const recorded = await this.record(company, job, name);
    const json = canonical(recorded);
    const { content } = await this.named(company, job, name);
    const bytes = await printPaper(content, {
      size: (recorded.data as PaperIssued).size,
      json,
      digest: createHash('sha256').update(json).digest('hex'),
      position: recorded.pos,
      attachments: await this.terms(company, content),
      standing: `printed again: details of a person were erased on ${erasedAt.slice(0, 10)}, and the print as issued with them`,
    });
    return Buffer.from(bytes);
  }

  /** The warrantor's own text, byte for byte, with the document that names its digest. */
  private async terms(company: string, content: Content): Promise<readonly Attachment[]> {
    if (content.document !== 'warranty') return [];
    const { name, digest } = content.supplier_terms;
    const file = await this.companies
      .of(company)
      .prisma.file.findFirst({ where: { digest }, select: { bytes: true } });
    if (!file) throw new Error(`the text ${digest} of a warranty document is not stored`);
    const free = [RECORD, PROOF].includes(name) ? `terms ${name}` : name;
    return [{ name: free, bytes: file.bytes }];
  }

  private async named(
    company: string,
    job: string,
    name: PaperName,
  ): Promise<{ content: Content; parties: readonly string[] }> {
    const events = await this.past(company, job);
    const bare = foldPaper(job, events, name, {});
    if (!bare) throw noPaper();
    const { names, parties } = await this.names.of(company, bare);
    return { content: foldPaper(job, events, name, names) ?? bare, parties };
  }

  private async row(
    company: string,
    job: string,
    { paper, about }: PaperName,
  ): Promise<IssuedRow | null> {
    const companyId_job_paper_about = { companyId: company, job, paper, about };
    return this.companies
      .of(company)
      .prisma.issuedPaper.findUnique({ where: { companyId_job_paper_about } });
  }

  private async past(company: string, job: string): Promise<readonly PastEvent[]> {
    return (await this.jobs.events(company, job)).map(pastEvent);
  }
}

const sameName = (a: PaperName | undefined, b: PaperName): boolean =>
  a?.paper === b.paper && a.about === b.about;

/** Without keys that hold nothing: what the log keeps is plain JSON. */
const plain = (data: PaperIssued): unknown => JSON.parse(JSON.stringify(data));
