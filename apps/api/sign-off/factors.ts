// What a signed-in engineer signs with: the password each time, and for the first signing of a session
// a code sent another way besides. A break, or another session, asks for all of it again. Every
// attempt that fails is in the log.

import { randomInt } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Command } from '#jobs';
import { Companies } from '../data/companies.js';
import { FrontDoor } from '../data/front-door.js';
import { Mailer } from '../data/mailer.js';
import type { SignedIn } from '../http/signed-in.js';
import { hashPassword, passwordFits, tokenDigest } from '../people/passwords.js';
import { Problem } from '../problems.js';
import { Trail } from './trail.js';

export const CODE_MINUTES = 10;
/** Without a signing for so long the session counts as broken. */
export const BREAK_MINUTES = 15;
const SIGN_WITHIN_MINUTES = 5;
const MOST_ATTEMPTS = 5;

const SIGNED: readonly Command['type'][] = [
  'answer-sign-off',
  'reaffirm-sign-off',
  'revoke-sign-off',
];

export interface Given {
  readonly password: string;
  readonly code?: string | undefined;
}

const inMinutes = (minutes: number): Date => new Date(Date.now() + minutes * 60_000);
const later = (moment: Date | null | undefined): boolean => !!moment && moment > new Date();

@Injectable()
export class Factors {
  constructor(
    private readonly companies: Companies,
    private readonly door: FrontDoor,
    private readonly mailer: Mailer,
    private readonly trail: Trail,
  ) {}

  /** Whether the next signing needs a code, and how that comes. */
  async standing(asking: SignedIn): Promise<{ code_needed: boolean; comes: 'e-mail' | 'phone' }> {
    const row = await this.row(asking);
    return {
      code_needed: !later(row?.provenUntil),
      comes: this.mailer.configured ? 'e-mail' : 'phone',
    };
  }

  /** Sends a code to the person's own mailbox; without mail, somebody else may now read one out. */
  async askForCode(asking: SignedIn): Promise<'e-mail' | 'phone'> {
    await this.begin(asking);
    await this.change(asking, { askedAt: new Date() });
    if (!this.mailer.configured) return 'phone';
    const code = await this.newCode(asking, tokenDigest(asking.token));
    await this.mailer.send({
      to: asking.person.email,
      subject: 'Code for signing',
      text: `The code for signing is ${code}. It is good for ${CODE_MINUTES} minutes. Nobody of the office will ask you for it.`,
    });
    await this.note(asking, asking.person.id, 'e-mail');
    return 'e-mail';
  }

  /** For somebody else to give by phone to a person who asked just now. */
  async showCode(asking: SignedIn, person: string): Promise<string> {
    if (person === asking.person.id)
      throw new Problem('forbidden', 'Somebody else must give you your code.');
    const row = await this.companies.of(asking.company.id).prisma.signingSession.findFirst({
      where: { personId: person, askedAt: { gt: inMinutes(-CODE_MINUTES) } },
      orderBy: { askedAt: 'desc' },
    });
    if (!row) throw new Problem('not-found', 'This person has not asked for a code just now.');
    if (this.mailer.configured) throw new Problem('conflict', 'The code goes by e-mail.');
    const code = await this.newCode(asking, row.sessionDigest);
    await this.note(asking, person, 'shown, to be given by phone');
    return code;
  }

  /** @throws Problem wrong-credentials, and the attempt is in the log */
  async give(asking: SignedIn, { password, code }: Given): Promise<void> {
    await this.begin(asking);
    const tried = await this.companies.of(asking.company.id).prisma.signingSession.update({
      where: key(asking),
      data: { attempts: { increment: 1 } },
    });
    const codeNeeded = !later(tried.provenUntil);
    const known = await this.door.person(asking.person.email);
    const passwordIs = await passwordFits(known?.passwordHash, password);
    const codeIs =
      !codeNeeded ||
      (tried.attempts <= MOST_ATTEMPTS &&
        (await passwordFits(later(tried.codeEndsAt) ? tried.codeHash : null, code ?? '')));
    if (!passwordIs || !codeIs) await this.refuse(asking, tried.attempts, { passwordIs, codeIs });
    await this.change(asking, {
      attempts: 0,
      codeHash: null,
      provenUntil: inMinutes(BREAK_MINUTES),
      readyUntil: inMinutes(SIGN_WITHIN_MINUTES),
    });
    await this.trail.ofPerson(asking.company.id, signer(asking), asking.person.id, {
      type: 'signing-factors-given/1',
      data: { code: codeNeeded },
    });
  }

  /**
   * Does one command; one that signs, only where both factors were just given, and uses that up.
   * `repeated` tells whether the same command was accepted before: then it only answers again.
   */
  async signing<T>(
    asking: SignedIn,
    command: Command,
    repeated: () => Promise<boolean>,
    work: () => Promise<T>,
  ): Promise<T> {
    if (!SIGNED.includes(command.type) || !asking.roles.includes('engineer')) return work();
    const { prisma } = this.companies.of(asking.company.id);
    const ready = { ...where(asking), readyUntil: { gt: new Date() } };
    const taken = await prisma.signingSession.updateMany({
      where: ready,
      data: { readyUntil: null },
    });
    if (taken.count === 0) {
      if (await repeated()) return work();
      throw new Problem(
        'forbidden',
        'Not signed: give your password, and the code that is sent to you, first.',
      );
    }
    try {
      const done = await work();
      await this.change(asking, { provenUntil: inMinutes(BREAK_MINUTES) });
      return done;
    } catch (error) {
      await this.change(asking, { readyUntil: inMinutes(SIGN_WITHIN_MINUTES) });
      throw error;
    }
  }

  private async refuse(
    asking: SignedIn,
    attempt: number,
    { passwordIs, codeIs }: { passwordIs: boolean; codeIs: boolean },
  ): Promise<never> {
    const faults = [
      ...(passwordIs ? [] : [{ pointer: '/password', message: 'is not the password' }]),
      ...(codeIs
        ? []
        : [
            {
              pointer: '/code',
              message: 'is not the code that was sent, or its ten minutes are over',
            },
          ]),
    ];
    const why = faults.map(({ pointer, message }) => `${pointer.slice(1)} ${message}`).join('; ');
    await this.trail.ofPerson(asking.company.id, signer(asking), asking.person.id, {
      type: 'sign-off-attempt-failed/1',
      data: { attempt, why },
    });
    if (attempt >= MOST_ATTEMPTS)
      await this.change(asking, { codeHash: null, provenUntil: null, readyUntil: null });
    throw new Problem('wrong-credentials', { detail: `Not signed: the ${why}.`, faults });
  }

  private async newCode({ company }: SignedIn, session: Uint8Array): Promise<string> {
    const code = String(randomInt(1_000_000)).padStart(6, '0');
    await this.companies.of(company.id).prisma.signingSession.updateMany({
      where: { sessionDigest: new Uint8Array(session) },
      data: {
        codeHash: await hashPassword(code),
        codeEndsAt: inMinutes(CODE_MINUTES),
        attempts: 0,
      },
    });
    return code;
  }

  /** Rows of sessions that are over go: a new session knows nothing of them. */
  private async begin(asking: SignedIn): Promise<void> {
    const { prisma } = this.companies.of(asking.company.id);
    await prisma.signingSession.deleteMany({
      where: { askedAt: { lt: inMinutes(-24 * 60) }, NOT: where(asking) },
    });
    await prisma.signingSession.createMany({
      data: [{ companyId: asking.company.id, ...where(asking), personId: asking.person.id }],
      skipDuplicates: true,
    });
  }

  private row(asking: SignedIn) {
    return this.companies
      .of(asking.company.id)
      .prisma.signingSession.findUnique({ where: key(asking) });
  }

  private async change(asking: SignedIn, data: object): Promise<void> {
    await this.companies
      .of(asking.company.id)
      .prisma.signingSession.updateMany({ where: where(asking), data });
  }

  private async note(
    asking: SignedIn,
    person: string,
    how: 'e-mail' | 'shown, to be given by phone',
  ): Promise<void> {
    const role = person === asking.person.id ? 'engineer' : (asking.roles[0] ?? '');
    await this.trail.ofPerson(asking.company.id, { person: asking.person.id, role }, person, {
      type: 'sign-off-code-sent/1',
      data: { how },
    });
  }
}

const where = ({ token }: SignedIn) => ({ sessionDigest: new Uint8Array(tokenDigest(token)) });
const key = (asking: SignedIn) => ({
  companyId_sessionDigest: { companyId: asking.company.id, ...where(asking) },
});
const signer = ({ person }: SignedIn) => ({ person: person.id, role: 'engineer' });
