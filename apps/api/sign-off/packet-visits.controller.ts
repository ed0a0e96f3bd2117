// The private link of a packet, for the office that makes it and the engineer who opens it.

import { Body, Controller, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { commandSchema, Name } from '#jobs/contract';
import { Ledgers } from '../data/ledgers.js';
import { Header } from '../http/header.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId } from '../jobs/jobs.controller.js';
import { Papers } from '../papers/papers.js';
import { send } from '../papers/papers.controller.js';
import { Token } from '../people/passwords.js';
import { Problem } from '../problems.js';
import { trailStream } from './trail.js';
import { CODE_MINUTES, PacketVisits } from './packet-visits.js';

const Days = z.strictObject({ days: z.number().int().min(1).max(60).default(14) });
const Opening = z.strictObject({ token: Token });
const Visit = z
  .string('the header X-Packet-Visit must hold the visit')
  .regex(/^[A-Za-z0-9_-]{43}$/, 'must be the visit that opening gave');
const {
  type: _type,
  request: _request,
  packet: _packet,
  ...answer
} = commandSchema('answer-sign-off').shape;
const SigningBody = z
  .strictObject({
    code: z.string().regex(/^\d{6}$/, 'must be the six digits that were sent'),
    name: Name.describe('your own name, typed'),
    ...answer,
  })
  .meta({ id: 'SignPacket' });
const Opened = z
  .object({
    visit: z.string(),
    engineer: z.string(),
    digest: z.string(),
    frozen_at: z.string(),
    body: z.record(z.string(), z.unknown()),
  })
  .meta({ id: 'OpenedPacket' });
const Signed = z
  .object({
    request: z.string(),
    standing: z.string(),
    meaning: z.string(),
    license: z.record(z.string(), z.string()),
    at: z.string(),
    packet: z.string(),
  })
  .meta({ id: 'SignedPacket' });
const TrailSchema = z.object({
  entries: z.array(
    z.object({
      at: z.string(),
      type: z.string(),
      by: z.string(),
      data: z.record(z.string(), z.unknown()),
    }),
  ),
});
const VISIT_HEADER = { 'X-Packet-Visit': 'the visit that opening the link gave' };

const MEANING = {
  approve: 'approves what the packet says, in its scope and with the exclusions stated',
  'approve-with-conditions':
    'approves under the conditions stated; they bind the gauge stage, which is confirmed again',
  decline: 'declines what the packet says, for the reasons stated',
} as const;

@Controller('api')
export class PacketVisitsController {
  constructor(
    private readonly visits: PacketVisits,
    private readonly papers: Papers,
    private readonly ledgers: Ledgers,
  ) {}

  @Route('POST', 'jobs/:id/requests/:request/links', {
    says: 'A private link to the packet, good for one opening; the answer holds its token once',
    who: ['project-manager'],
    answers: 'created',
    gives: z.object({ token: z.string(), expires_at: z.string() }),
  })
  async link(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('request') request: string,
    @Body({ schema: Days }) { days }: z.output<typeof Days>,
  ) {
    const { token, expiresAt } = await this.visits.makeLink(asking, job, request, days);
    return { token, expires_at: expiresAt.toISOString() };
  }

  @Route('POST', 'jobs/:id/requests/:request/codes', {
    says: 'The code for signing, to be given by phone; never to who made the link, and never where it goes by e-mail',
    who: ['administrator', 'project-manager'],
    answers: 'created',
    gives: z.object({ code: z.string(), give: z.literal('by phone'), minutes: z.int() }),
    fails: ['conflict'],
  })
  async code(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('request') request: string,
  ) {
    return {
      code: await this.visits.showCode(asking, job, request),
      give: 'by phone' as const,
      minutes: CODE_MINUTES,
    };
  }

  @Route('GET', 'jobs/:id/requests/:request/trail', {
    says: 'Links made and opened, codes sent, attempts that failed',
    who: ['administrator', 'project-manager', 'warranty-reviewer'],
    gives: TrailSchema,
  })
  async trail(
    @Asking() { company }: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('request') request: string,
  ) {
    const events = await this.ledgers.ledger.readStream(company.id, trailStream(job, request));
    if (events.length === 0)
      throw new Problem('not-found', 'Nothing happened around such a request.');
    return {
      entries: events.map(({ recordedAt, type, by, data }) => ({
        at: recordedAt,
        type,
        by: by.person,
        data: data as Record<string, unknown>,
      })),
    };
  }

  @Route('POST', 'packet/open', {
    says: 'Open a packet by its link; the link is used up',
    who: 'anyone',
    gives: Opened,
    fails: ['not-found'],
  })
  async open(@Body({ schema: Opening }) { token }: z.output<typeof Opening>) {
    const { visit, packet } = await this.visits.open(token);
    return { visit, ...packet };
  }

  @Route('GET', 'packet/print.pdf', {
    says: 'The open packet on paper',
    who: 'anyone',
    gives: 'application/pdf',
    headers: VISIT_HEADER,
    fails: ['not-found'],
  })
  async print(
    @Header('x-packet-visit', Visit) token: string,
    @Res() response: Response,
  ): Promise<void> {
    const { company, job, request } = await this.visits.visit(token);
    const { bytes } = await this.papers.print(company, job, {
      paper: 'engineer-packet',
      about: request,
    });
    send(response, 'application/pdf', `engineer-packet-${request}.pdf`, bytes);
  }

  @Route('POST', 'packet/code', {
    says: 'Send the code for signing to the engineer by e-mail',
    who: 'anyone',
    answers: 'nothing',
    headers: VISIT_HEADER,
    fails: ['not-found', 'conflict'],
  })
  async sendCode(@Header('x-packet-visit', Visit) token: string) {
    await this.visits.sendCode(await this.visits.visit(token));
  }

  @Route('POST', 'packet/answers', {
    says: 'Answer the open packet: code, typed name, license and statement',
    who: 'anyone',
    answers: 'created',
    gives: Signed,
    headers: VISIT_HEADER,
    fails: [
      'not-found',
      'wrong-credentials',
      'forbidden',
      'conflict',
      'stale',
      'refused-by-rules',
      'wrong-stage',
    ],
  })
  async answer(
    @Header('x-packet-visit', Visit) token: string,
    @Body({ schema: SigningBody }) { code, name, ...given }: z.output<typeof SigningBody>,
  ) {
    const visit = await this.visits.visit(token);
    const view = await this.visits.sign(visit, { code, name, answer: given });
    const request = view.requests.find((each) => each.request === visit.request);
    const { license } = given;
    return {
      request: visit.request,
      standing: request?.standing ?? '',
      meaning: `${name} ${MEANING[given.answer]}`,
      license,
      at: new Date().toISOString(),
      packet: (await this.visits.packetOf(visit)).digest,
    };
  }
}
