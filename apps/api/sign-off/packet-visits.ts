// An engineer's visit by private link: the link opens its packet once; a code sent another way, the
// typed name and the license sign. Nobody here is shown both link and code, and no key of an engineer
// is held.

import { randomInt } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { CommandBus } from '@nestjs/cqrs';
import { v7 as uuid } from 'uuid';
import type { Command, JobView, Role } from '#jobs';
import { Companies } from '../data/companies.js';
import { FrontDoor, type PacketVisit } from '../data/front-door.js';
import { Mailer } from '../data/mailer.js';
import type { Acting, SignedIn } from '../http/signed-in.js';
import { ExecuteOnJob } from '../jobs/execute-on-job.js';
import { hashPassword, newToken, passwordFits, tokenDigest } from '../people/passwords.js';
import { Problem } from '../problems.js';
import { Packets, type Packet } from './packets.js';
import { Trail } from './trail.js';

export const CODE_MINUTES = 10;
export const MOST_ATTEMPTS = 5;
const MINUTE_MS = 60_000;

export type Answered = Extract<Command, { type: 'answer-sign-off' }>;
export interface Signing {
  readonly code: string;
  /** As typed. */
  readonly name: string;
  readonly answer: Omit<Answered, 'type' | 'request' | 'packet'>;
}

const over = () => new Problem('not-found', 'This visit is over: ask the office for a new link.');

@Injectable()
export class PacketVisits {
  constructor(
    private readonly door: FrontDoor,
    private readonly companies: Companies,
    private readonly packets: Packets,
    private readonly mailer: Mailer,
    private readonly trail: Trail,
    private readonly commands: CommandBus,
  ) {}

  async makeLink(
    { company, person }: SignedIn,
    job: string,
    request: string,
    days: number,
  ): Promise<{ token: string; expiresAt: Date }> {
    const packet = await this.packets.find(company.id, job, request);
    if (!packet) throw new Problem('not-found', 'There is no such request.');
    const token = newToken();
    const expiresAt = new Date(Date.now() + days * 24 * 60 * MINUTE_MS);
    await this.companies.of(company.id).prisma.packetLink.create({
      data: {
        companyId: company.id,
        tokenDigest: new Uint8Array(tokenDigest(token)),
        job,
        request,
        engineer: packet.engineer,
        madeBy: person.id,
        expiresAt,
      },
    });
    const data = { engineer: packet.engineer, expires_at: expiresAt.toISOString() };
    await this.trail.add(
      company.id,
      { person: person.id, role: 'project-manager' },
      { job, request },
      { type: 'packet-link-made/1', data },
    );
    return { token, expiresAt };
  }

  async open(token: string): Promise<{ visit: string; packet: Packet }> {
    const visit = newToken();
    const opened = await this.door.openPacket(tokenDigest(token), tokenDigest(visit));
    if (!opened)
      throw new Problem(
        'not-found',
        'This link was used before or has expired: ask the office for a new one.',
      );
    const packet = await this.packets.find(opened.company, opened.job, opened.request);
    if (!packet) throw new Error(`a link leads to the request ${opened.request} that is not there`);
    await this.trail.add(opened.company, engineerOf(opened), opened, {
      type: 'packet-opened/1',
      data: { packet: packet.digest },
    });
    return { visit, packet };
  }

  /** @throws Problem not-found where the visit is over or was answered */
  async visit(token: string): Promise<PacketVisit> {
    const visit = await this.door.packetVisit(tokenDigest(token));
    if (!visit) throw over();
    return visit;
  }

  async packetOf({ company, job, request }: PacketVisit): Promise<Packet> {
    const packet = await this.packets.find(company, job, request);
    if (!packet) throw over();
    return packet;
  }

  /** To the engineer's own mailbox; without mail the office gives it by phone. */
  async sendCode(visit: PacketVisit): Promise<void> {
    if (!this.mailer.configured)
      throw new Problem(
        'conflict',
        'This office sends no e-mail: ask its administrator for the code by phone.',
      );
    const code = await this.newCode(visit);
    const { email } = await this.engineer(visit);
    const text = `The code for signing is ${code}. It is good for ${CODE_MINUTES} minutes. Nobody of the office will ask you for it.`;
    await this.mailer.send({ to: email, subject: 'Code for signing', text });
    await this.trail.add(visit.company, engineerOf(visit), visit, {
      type: 'sign-off-code-sent/1',
      data: { how: 'e-mail' },
    });
  }

  /** Shown to somebody who does not know the link, to be given by phone. */
  async showCode(
    { company, person, roles }: SignedIn,
    job: string,
    request: string,
  ): Promise<string> {
    const { prisma } = this.companies.of(company.id);
    const link = await prisma.packetLink.findFirst({
      where: { job, request, visitEndsAt: { gt: new Date() }, answeredAt: null },
      orderBy: { usedAt: 'desc' },
    });
    if (!link) throw new Problem('not-found', 'Nobody has this packet open just now.');
    if (this.mailer.configured)
      throw new Problem('conflict', 'The code goes to the engineer by e-mail.');
    const ownLink = await prisma.packetLink.findFirst({
      where: { job, request, madeBy: person.id },
    });
    if (ownLink)
      throw new Problem(
        'forbidden',
        'You made the link: somebody else must give the code, so that nobody holds both.',
      );
    const visit = {
      company: company.id,
      job,
      request,
      engineer: link.engineer,
      link: Buffer.from(link.tokenDigest),
    };
    const code = await this.newCode(visit);
    const by = {
      person: person.id,
      role:
        roles.find((role) => role === 'administrator' || role === 'project-manager') ??
        'administrator',
    };
    await this.trail.add(company.id, by, visit, {
      type: 'sign-off-code-sent/1',
      data: { how: 'shown, to be given by phone' },
    });
    return code;
  }

  async sign(visit: PacketVisit, { code, name, answer }: Signing): Promise<JobView> {
    const engineer = await this.engineer(visit);
    await this.checkFactors(visit, engineer.name, code, name);
    const packet = await this.packetOf(visit);
    const command: Answered = {
      ...answer,
      type: 'answer-sign-off',
      request: visit.request,
      packet: packet.digest,
    };
    const asking: Acting = {
      company: { id: visit.company, name: '' },
      person: engineer,
      roles: ['engineer'],
    };
    const { view } = await this.commands.execute(
      new ExecuteOnJob({
        asking,
        job: visit.job,
        command,
        seen: undefined,
        key: uuid(),
        asked: command,
      }),
    );
    await this.change(visit, { answeredAt: new Date(), codeHash: null });
    return view;
  }

  /** An attempt counts before it is looked at; the fifth that fails ends the visit. */
  private async checkFactors(
    visit: PacketVisit,
    ownName: string,
    code: string,
    typed: string,
  ): Promise<void> {
    const { prisma } = this.companies.of(visit.company);
    const counted = await prisma.packetLink.updateMany({
      where: { ...mine(visit), codeAttempts: { lt: MOST_ATTEMPTS } },
      data: { codeAttempts: { increment: 1 } },
    });
    const link = await prisma.packetLink.findFirst({ where: mine(visit) });
    if (counted.count === 0 || !link) throw over();
    const inTime =
      link.codeHash !== null && link.codeEndsAt !== null && link.codeEndsAt > new Date();
    const why = !(await passwordFits(inTime ? link.codeHash : null, code))
      ? 'the code is not the one that was sent, or its ten minutes are over'
      : sameName(ownName, typed)
        ? undefined
        : 'the typed name is not the name of the engineer who was asked';
    if (why === undefined) {
      await prisma.packetLink.updateMany({
        where: mine(visit),
        data: { codeAttempts: { decrement: 1 } },
      });
      return;
    }
    await this.trail.add(visit.company, engineerOf(visit), visit, {
      type: 'sign-off-attempt-failed/1',
      data: { attempt: link.codeAttempts, why },
    });
    if (link.codeAttempts >= MOST_ATTEMPTS)
      await this.change(visit, { visitEndsAt: new Date(), codeHash: null });
    throw new Problem('wrong-credentials', `Not signed: ${why}.`);
  }

  private async newCode(visit: PacketVisit): Promise<string> {
    const code = String(randomInt(1_000_000)).padStart(6, '0');
    await this.change(visit, {
      codeHash: await hashPassword(code),
      codeEndsAt: new Date(Date.now() + CODE_MINUTES * MINUTE_MS),
    });
    return code;
  }

  private async change(visit: PacketVisit, data: object): Promise<void> {
    await this.companies
      .of(visit.company)
      .prisma.packetLink.updateMany({ where: mine(visit), data });
  }

  private async engineer({ company, engineer }: PacketVisit): Promise<Acting['person']> {
    const person = await this.companies
      .of(company)
      .prisma.person.findFirst({ where: { id: engineer, active: true } });
    if (!person || !(person.roles as Role[]).includes('engineer'))
      throw new Problem('forbidden', 'The engineer who was asked has no account here any more.');
    return { id: person.id, name: person.name, email: person.email };
  }
}

const mine = ({ link }: PacketVisit) => ({ tokenDigest: new Uint8Array(link) });
const engineerOf = ({ engineer }: { readonly engineer: string }) => ({
  person: engineer,
  role: 'engineer',
});
const plainName = (name: string): string =>
  name.trim().replace(/\s+/g, ' ').toLocaleLowerCase('en-US');
const sameName = (a: string, b: string): boolean => plainName(a) === plainName(b);
