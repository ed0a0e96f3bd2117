// The customer's link: see what was sent, read it, and acknowledge having seen it. The office makes it
// for one person and some issued papers of one job.

import { Body, Controller, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { FrontDoor } from '../data/front-door.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId } from '../jobs/jobs.controller.js';
import { Jobs } from '../jobs/fold.js';
import { newToken, Token, tokenDigest } from '../people/passwords.js';
import { About, PaperSchema, send } from '../papers/papers.controller.js';
import type { PaperName } from '../papers/paper-kinds.js';
import { Papers } from '../papers/papers.js';
import { Problem } from '../problems.js';
import { Acknowledgments } from './acknowledgments.js';

export const CUSTOMER_CAUTION =
  'Acknowledging says that you have seen this. It does not make a roof safe or lawful: local code and the authority having jurisdiction ' +
  'govern, and what spans needs a licensed engineer. Snow and ice slide off metal roofs: keep doors and walks below them clear.';
const DAY_MS = 24 * 3_600_000;

const PaperRef = z.strictObject({ paper: PaperSchema, about: About });
const NewLink = z.strictObject({
  papers: z.array(PaperRef).min(1).max(50),
  days: z.number().int().min(1).max(180).default(30),
});
const Opening = z.strictObject({ token: Token });
const OnPaper = z.strictObject({ token: Token, ...PaperRef.shape });
const Acknowledging = z.strictObject({ token: Token, ...PaperRef.shape, name: Name });
const Sent = z
  .object({
    job: z.object({ number: z.string(), name: z.string() }),
    company: z.string(),
    caution: z.string(),
    papers: z.array(
      z.object({ paper: PaperSchema, about: z.string(), acknowledged_at: z.string().nullable() }),
    ),
  })
  .meta({ id: 'SentToCustomer' });

interface Opened {
  readonly company: string;
  readonly job: string;
  readonly party: string;
  readonly papers: readonly PaperName[];
}

@Controller('api')
export class CustomerLinksController {
  constructor(
    private readonly door: FrontDoor,
    private readonly companies: Companies,
    private readonly jobs: Jobs,
    private readonly papers: Papers,
    private readonly acknowledgments: Acknowledgments,
  ) {}

  @Route('POST', 'jobs/:id/customer-links', {
    says: 'A private link for the customer of a job, to issued papers; the answer holds its token once',
    who: ['office', 'project-manager'],
    answers: 'created',
    gives: z.object({ token: z.string(), expires_at: z.string() }),
    fails: ['conflict'],
  })
  async make(
    @Asking() { company, person }: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Body({ schema: NewLink }) body: z.output<typeof NewLink>,
  ) {
    const job = await this.jobs.load(company.id, id);
    const party = job.parties['customer']?.id;
    if (job.version === 0 || party === undefined)
      throw new Problem('not-found', 'There is no such job.');
    for (const name of body.papers) await this.papers.recorded(company.id, id, name);
    const token = newToken();
    const expiresAt = new Date(Date.now() + body.days * DAY_MS);
    await this.companies.of(company.id).prisma.customerLink.create({
      data: {
        companyId: company.id,
        tokenDigest: new Uint8Array(tokenDigest(token)),
        job: id,
        party,
        papers: body.papers,
        madeBy: person.id,
        expiresAt,
      },
    });
    return { token, expires_at: expiresAt.toISOString() };
  }

  @Route('POST', 'customer/open', {
    says: 'What was sent to a customer, by the token of the link',
    who: 'anyone',
    gives: Sent,
    fails: ['not-found'],
  })
  async open(@Body({ schema: Opening }) { token }: z.output<typeof Opening>) {
    const { company, job: id, party, papers } = await this.opened(token);
    const [job, own, seen] = await Promise.all([
      this.jobs.load(company, id),
      this.companies.of(company).prisma.company.findUnique({ where: { id: company } }),
      this.acknowledgments.of(company, id),
    ]);
    return {
      job: { number: job.number, name: job.name },
      company: own?.name ?? '',
      caution: CUSTOMER_CAUTION,
      papers: papers.map(({ paper, about }) => ({
        paper,
        about,
        acknowledged_at:
          seen.find((each) => each.paper === paper && each.about === about && each.party === party)
            ?.at ?? null,
      })),
    };
  }

  @Route('POST', 'customer/paper', {
    says: 'One of the papers that were sent',
    who: 'anyone',
    gives: 'application/pdf',
    fails: ['not-found'],
  })
  async paper(
    @Body({ schema: OnPaper }) { token, ...name }: z.output<typeof OnPaper>,
    @Res() response: Response,
  ): Promise<void> {
    const { company, job } = await this.sent(token, name);
    const { bytes } = await this.papers.print(company, job, name);
    send(response, 'application/pdf', `${name.paper}-${name.about}.pdf`, bytes);
  }

  @Route('POST', 'customer/acknowledge', {
    says: 'Acknowledge having seen a paper that was sent',
    who: 'anyone',
    answers: 'nothing',
    fails: ['not-found'],
  })
  async acknowledge(
    @Body({ schema: Acknowledging }) { token, name, ...paper }: z.output<typeof Acknowledging>,
  ) {
    const { company, job, party } = await this.sent(token, paper);
    const { row } = await this.papers.print(company, job, paper);
    await this.acknowledgments.add(company, job, {
      ...paper,
      party,
      name,
      pdf_digest: row.pdfDigest,
      caution: CUSTOMER_CAUTION,
    });
  }

  private async opened(token: string): Promise<Opened> {
    const link = await this.door.customerLink(tokenDigest(token));
    if (!link)
      throw new Problem(
        'not-found',
        'This link is not known or has expired: ask the office for a new one.',
      );
    return { ...link, papers: link.papers as readonly PaperName[] };
  }

  private async sent(token: string, name: PaperName): Promise<Opened> {
    const link = await this.opened(token);
    if (!link.papers.some(({ paper, about }) => paper === name.paper && about === name.about)) {
      throw new Problem('not-found', 'This paper was not sent to you.');
    }
    return link;
  }
}
