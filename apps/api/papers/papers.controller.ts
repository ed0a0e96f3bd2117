// Papers of a job: which there are, each as JSON, as its issuing entry, as the print that was issued;
// an order also for spreadsheets.

import { Body, Controller, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import type { OrderPaper } from '#jobs';
import { canonical } from '#ledger';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId } from '../jobs/jobs.controller.js';
import { readerOf, Readings } from '../log/readings.js';
import { Problem } from '../problems.js';
import { Acknowledgments } from '../customers/acknowledgments.js';
import { PAPER_KINDS, type PaperName } from './paper-kinds.js';
import { Papers } from './papers.js';

export const PaperSchema = z.enum(PAPER_KINDS);
export const About = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,63}(\.[1-9]\d{0,3})?$/, 'must name a paper of its kind, like o1.1');
const Size = z.strictObject({ size: z.enum(['letter', 'a4']).default('letter') });
const Listed = z.object({
  paper: PaperSchema,
  about: z.string(),
  issued_at: z.string().nullable(),
  pos: z.int().nullable(),
  record_digest: z.string().nullable(),
  pdf_digest: z.string().nullable(),
  acknowledged: z.array(z.object({ at: z.string(), name: z.string() })),
  notices: z
    .array(z.object({ at: z.string(), entry: z.string(), words: z.string() }))
    .describe('what happened since to what it rests on'),
});
const IssuedSchema = z
  .object({
    paper: PaperSchema,
    about: z.string(),
    issued_at: z.string(),
    pos: z.int(),
    record_digest: z.string(),
    pdf_digest: z.string(),
  })
  .meta({ id: 'IssuedPaper' });
const Json = z.record(z.string(), z.unknown());
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const WHERE = ':id/papers/:paper/:about';
type Paper = PaperName['paper'];

@Controller('api/jobs')
export class PapersController {
  constructor(
    private readonly papers: Papers,
    private readonly acknowledgments: Acknowledgments,
    private readonly readings: Readings,
  ) {}

  @Route('GET', ':id/papers', {
    says: 'Papers of a job, and what a customer acknowledged',
    who: STAFF,
    gives: z.object({ papers: z.array(Listed) }),
  })
  async list(@Asking() { company }: SignedIn, @Param('id', { schema: JobId }) job: string) {
    const [names, rows, seen] = await Promise.all([
      this.papers.ofJob(company.id, job),
      this.papers.rows(company.id, job),
      this.acknowledgments.of(company.id, job),
    ]);
    if (names === undefined) throw new Problem('not-found', 'There is no such job.');
    const records = rows
      .filter(({ paper }) => paper === 'decision-record')
      .map(({ about }) => ({ paper: 'decision-record' as const, about, notices: [] }));
    const papers = [...names, ...records].map((name) => {
      const row = rows.find(({ paper, about }) => paper === name.paper && about === name.about);
      return {
        ...name,
        issued_at: row?.issuedAt.toISOString() ?? null,
        pos: row?.pos ?? null,
        record_digest: row?.recordDigest ?? null,
        pdf_digest: row?.pdfDigest ?? null,
        acknowledged: seen
          .filter(({ paper, about }) => paper === name.paper && about === name.about)
          .map(({ at, name: by }) => ({ at, name: by })),
      };
    });
    return { papers };
  }

  @Route('GET', WHERE, { says: 'A paper as it reads today, with names', who: STAFF, gives: Json })
  async read(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('paper', { schema: PaperSchema }) paper: Paper,
    @Param('about', { schema: About }) about: string,
  ) {
    const asRead = await this.papers.read(asking.company.id, job, { paper, about });
    await this.readings.read(readerOf(asking), 'paper', [job]);
    return asRead;
  }

  @Route('POST', WHERE, {
    says: 'Issue a paper and print it; a second time gives what was issued',
    who: ['office', 'project-manager', 'warranty-reviewer'],
    answers: 'created',
    gives: IssuedSchema,
  })
  async issue(
    @Asking() { company, person, roles }: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('paper', { schema: PaperSchema }) paper: Paper,
    @Param('about', { schema: About }) about: string,
    @Body({ schema: Size }) { size }: z.output<typeof Size>,
  ) {
    const name = { paper, about };
    await this.papers.record(company.id, job, name, {
      by: { person: person.id, role: roles[0] ?? '' },
      size,
    });
    const { row } = await this.papers.print(company.id, job, name);
    return {
      ...name,
      issued_at: row.issuedAt.toISOString(),
      pos: row.pos,
      record_digest: row.recordDigest,
      pdf_digest: row.pdfDigest,
    };
  }

  @Route('GET', `${WHERE}/record.json`, {
    says: 'The entry of the log that is this paper, as it is hashed',
    who: STAFF,
    gives: 'application/json',
  })
  async record(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('paper', { schema: PaperSchema }) paper: Paper,
    @Param('about', { schema: About }) about: string,
    @Res() response: Response,
  ): Promise<void> {
    const recorded = await this.papers.recorded(asking.company.id, job, { paper, about });
    await this.readings.exported(readerOf(asking), 'paper-record', job);
    send(response, 'application/json', 'record.json', Buffer.from(canonical(recorded)));
  }

  @Route('GET', `${WHERE}/print.pdf`, {
    says: 'The print as issued: the same bytes each time',
    who: STAFF,
    gives: 'application/pdf',
  })
  async pdf(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('paper', { schema: PaperSchema }) paper: Paper,
    @Param('about', { schema: About }) about: string,
    @Res() response: Response,
  ): Promise<void> {
    const { bytes } = await this.papers.print(asking.company.id, job, { paper, about });
    await this.readings.exported(readerOf(asking), 'paper-print', job);
    send(response, 'application/pdf', `${paper}-${about}.pdf`, bytes);
  }

  @Route('GET', ':id/orders/:about/lines.csv', {
    says: 'The lines of an order as CSV',
    who: STAFF,
    gives: 'text/csv',
  })
  async csv(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('about', { schema: About }) about: string,
    @Res() response: Response,
  ): Promise<void> {
    const { orderList, writeCsv } = await import('#documents');
    const order = await this.exported(asking, job, about);
    send(
      response,
      'text/csv; charset=utf-8',
      `order-${about}.csv`,
      Buffer.from(writeCsv(orderList(order))),
    );
  }

  @Route('GET', ':id/orders/:about/lines.xlsx', {
    says: 'The lines of an order as XLSX',
    who: STAFF,
    gives: XLSX,
  })
  async xlsx(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('about', { schema: About }) about: string,
    @Res() response: Response,
  ): Promise<void> {
    const { orderList, writeXlsx } = await import('#documents');
    const order = await this.exported(asking, job, about);
    send(
      response,
      XLSX,
      `order-${about}.xlsx`,
      Buffer.from(await writeXlsx(orderList(order), order.issued_at)),
    );
  }

  /** The order that leaves as a file, which is noted. */
  private async exported(asking: SignedIn, job: string, about: string): Promise<OrderPaper> {
    const order = await this.papers.read(asking.company.id, job, { paper: 'order', about });
    await this.readings.exported(readerOf(asking), 'order-export', job);
    return order as OrderPaper;
  }
}

export function send(response: Response, type: string, name: string, bytes: Buffer): void {
  response.setHeader('Content-Type', type);
  response.setHeader('Content-Disposition', `inline; filename="${name}"`);
  response.end(bytes);
}
