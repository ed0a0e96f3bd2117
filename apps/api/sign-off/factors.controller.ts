// Both factors of a signed-in engineer over HTTP, and the code that somebody else gives by phone.

import { Body, Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Attempts } from '../people/attempts.js';
import { Password } from '../people/passwords.js';
import { PersonId } from '../people/people.controller.js';
import { Problem } from '../problems.js';
import { CODE_MINUTES, Factors } from './factors.js';
import { signingStream } from './trail.js';

const Comes = z.enum(['e-mail', 'phone']);
const Given = z
  .strictObject({
    password: Password,
    code: z
      .string()
      .regex(/^\d{6}$/, 'must be the six digits that were sent')
      .optional()
      .describe('for the first signing of a session, and after a break'),
  })
  .meta({ id: 'SigningFactors' });

@Controller('api')
export class FactorsController {
  constructor(
    private readonly factors: Factors,
    private readonly attempts: Attempts,
    private readonly ledgers: Ledgers,
    private readonly companies: Companies,
  ) {}

  @Route('GET', 'session/signing', {
    says: 'Whether the next signing of this session needs a code, and how that comes',
    who: ['engineer'],
    gives: z.object({ code_needed: z.boolean(), comes: Comes }),
  })
  standing(@Asking() asking: SignedIn) {
    return this.factors.standing(asking);
  }

  @Route('POST', 'session/signing/code', {
    says: 'Ask for the code for signing: by e-mail, or read out by phone where no mail is set up',
    who: ['engineer'],
    gives: z.object({ comes: Comes, minutes: z.int() }),
  })
  async ask(@Asking() asking: SignedIn) {
    return { comes: await this.factors.askForCode(asking), minutes: CODE_MINUTES };
  }

  @Route('POST', 'session/signing', {
    says: 'Give password and code; one signature may follow within five minutes',
    who: ['engineer'],
    answers: 'nothing',
    fails: ['wrong-credentials', 'too-many-attempts'],
  })
  async give(@Asking() asking: SignedIn, @Body({ schema: Given }) given: z.output<typeof Given>) {
    const key = `signing ${asking.person.id}`;
    await this.attempts.check(key);
    try {
      await this.factors.give(asking, given);
    } catch (error) {
      await this.attempts.failed(key);
      throw error;
    }
    await this.attempts.succeeded(key);
  }

  @Route('POST', 'people/:id/signing-codes', {
    says: 'The code for signing of an engineer who asked just now, to be given by phone; never your own',
    who: ['administrator', 'project-manager'],
    answers: 'created',
    gives: z.object({ code: z.string(), give: z.literal('by phone'), minutes: z.int() }),
    fails: ['conflict'],
  })
  async show(@Asking() asking: SignedIn, @Param('id', { schema: PersonId }) id: string) {
    return {
      code: await this.factors.showCode(asking, id),
      give: 'by phone' as const,
      minutes: CODE_MINUTES,
    };
  }

  @Route('GET', 'people/:id/signing-trail', {
    says: 'Codes sent, factors given and attempts that failed around the signing of a person',
    who: ['administrator', 'project-manager', 'warranty-reviewer'],
    gives: z.object({
      entries: z.array(
        z.object({
          at: z.string(),
          type: z.string(),
          by: z.string(),
          data: z.record(z.string(), z.unknown()),
        }),
      ),
    }),
  })
  async trail(@Asking() { company }: SignedIn, @Param('id', { schema: PersonId }) id: string) {
    if ((await this.companies.of(company.id).prisma.person.count({ where: { id } })) === 0)
      throw new Problem('not-found', 'There is no such person.');
    const events = await this.ledgers.ledger.readStream(company.id, signingStream(id));
    return {
      entries: events.map(({ recordedAt, type, by, data }) => ({
        at: recordedAt,
        type,
        by: by.person,
        data: data as Record<string, unknown>,
      })),
    };
  }
}
