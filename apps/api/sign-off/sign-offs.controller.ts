// What waits for an engineer: requests without an answer, and spanning surfaces without a sign-off,
// oldest first; and the packet that an engineer answers.

import { Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JOB_LIST } from '../jobs/job-list.js';
import { JobId, READERS } from '../jobs/jobs.controller.js';
import { Names } from '../people/names.js';
import { Problem } from '../problems.js';
import { Packets } from './packets.js';

const Named = z.object({ id: z.string(), name: z.string() });
const Waiting = z.object({
  job: z.string(),
  number: z.string(),
  name: z.string(),
  request: z.string(),
  surfaces: z.array(Named),
  engineer: Named,
  asked_at: z.string(),
  asked_by: z.string(),
  expires: z.string(),
  standing: z.string(),
  due: z.string().nullable(),
});
const Spanning = z.object({
  job: z.string(),
  number: z.string(),
  name: z.string(),
  surface: Named,
  due: z.string().nullable(),
  waits_for: z.string(),
  engineer: z.string().nullable(),
  asked_at: z.string().nullable(),
  since: z.string(),
});
const PacketSchema = z.object({
  digest: z.string(),
  frozen_at: z.string(),
  engineer: z.string(),
  body: z.record(z.string(), z.unknown()),
});
const day = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;

@Controller('api')
export class SignOffsController {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
    private readonly names: Names,
    private readonly packets: Packets,
  ) {}

  @Route('GET', 'sign-offs', {
    says: 'Requests without an answer, and spanning surfaces without a sign-off, oldest first',
    who: READERS,
    gives: z.object({ requests: z.array(Waiting), spanning: z.array(Spanning) }),
  })
  async waiting(@Asking() { company, person, roles }: SignedIn) {
    const { prisma } = this.companies.of(company.id);
    const { generation } = await this.ledgers.liveList(company.id, JOB_LIST);
    const own = roles.every((role) => role === 'engineer');
    const [requests, spanning] = await Promise.all([
      prisma.signOffRequest.findMany({
        where: { generation, ...(own ? { engineer: person.id } : {}) },
        orderBy: { askedAt: 'asc' },
        take: 1000,
      }),
      own
        ? []
        : prisma.unsignedSurface.findMany({
            where: { generation },
            orderBy: { since: 'asc' },
            take: 1000,
          }),
    ]);
    const ids = [
      ...requests.flatMap(({ engineer, askedBy }) => [engineer, askedBy]),
      ...spanning.flatMap(({ engineer }) => engineer ?? []),
    ];
    const names = await this.names.of(company.id, ids);
    const name = (id: string) => names.get(id) ?? id;
    return {
      requests: requests.map((row) => ({
        job: row.job,
        number: row.number,
        name: row.jobName,
        request: row.request,
        surfaces: row.surfaces,
        engineer: { id: row.engineer, name: name(row.engineer) },
        asked_at: row.askedAt.toISOString(),
        asked_by: name(row.askedBy),
        expires: day(row.expires),
        standing: row.standing,
        due: day(row.due),
      })),
      spanning: spanning.map((row) => ({
        job: row.job,
        number: row.number,
        name: row.jobName,
        surface: { id: row.surface, name: row.surfaceName },
        due: day(row.due),
        waits_for: row.waitsFor,
        engineer: row.engineer === null ? null : name(row.engineer),
        asked_at: row.askedAt?.toISOString() ?? null,
        since: row.since.toISOString(),
      })),
    };
  }

  @Route('GET', 'jobs/:id/requests/:request/packet', {
    says: 'The packet of a sign-off request, frozen when it was asked',
    who: READERS,
    gives: PacketSchema,
  })
  async packet(
    @Asking() { company, person, roles }: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Param('request') request: string,
  ) {
    const packet = await this.packets.find(company.id, job, request);
    if (!packet) throw new Problem('not-found', 'There is no such request.');
    const others = roles.some((role) => (STAFF as readonly string[]).includes(role));
    if (!others && packet.engineer !== person.id)
      throw new Problem('forbidden', 'This packet was sent to another engineer.');
    return packet;
  }
}
