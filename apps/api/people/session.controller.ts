// Signing in and out, by password or by a link that is good once, and the first setting-up.

import { Body, Controller, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { z } from 'zod';
import { Name, ROLES } from '#jobs/contract';
import { FrontDoor } from '../data/front-door.js';
import { Route } from '../http/route.js';
import { COOKIE } from '../http/session-guard.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { Attempts } from './attempts.js';
import {
  hashPassword,
  NewPassword,
  Password,
  passwordFits,
  Token,
  tokenDigest,
} from './passwords.js';
import { Sessions, SESSION_HOURS } from './sessions.js';
import { SetUp } from './set-up.js';

export const Email = z
  .email('must be an e-mail address')
  .max(200)
  .transform((text) => text.toLowerCase());

const SignInBody = z.strictObject({ email: Email, password: Password });
const LinkBody = z.strictObject({ token: Token });
const NewPasswordBody = z.strictObject({ password: NewPassword, current: Password.optional() });
export const SetUpBody = z.strictObject({
  token: Token,
  name: Name,
  email: Email,
  password: NewPassword,
  company: Name,
});

export const SessionSchema = z
  .object({
    person: z.object({ id: z.string(), name: z.string(), email: z.string() }),
    roles: z.array(z.enum(ROLES)),
    company: z.object({ id: z.string(), name: z.string() }),
    csrf: z.string(),
    expiresAt: z.iso.datetime(),
  })
  .meta({ id: 'Session' });

const view = ({ person, roles, company, csrf, expiresAt }: SignedIn) => ({
  person,
  roles,
  company,
  csrf,
  expiresAt: expiresAt.toISOString(),
});

@Controller('api')
export class SessionController {
  constructor(
    private readonly sessions: Sessions,
    private readonly door: FrontDoor,
    private readonly attempts: Attempts,
    private readonly setUp: SetUp,
  ) {}

  @Route('POST', 'session', {
    says: 'Sign in',
    who: 'anyone',
    gives: SessionSchema,
    fails: ['wrong-credentials', 'too-many-attempts'],
  })
  async signIn(
    @Body({ schema: SignInBody }) body: z.output<typeof SignInBody>,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ) {
    const keys = [`email ${body.email}`, `address ${request.ip ?? ''}`];
    await this.attempts.check(...keys);
    const known = await this.door.person(body.email);
    const fits = await passwordFits(known?.passwordHash, body.password);
    if (!known || !fits) {
      await this.attempts.failed(...keys);
      throw new Problem('wrong-credentials', 'The e-mail address and the password do not fit.');
    }
    await this.attempts.succeeded(...keys);
    return this.begin(known.company, known.person, request, response);
  }

  @Route('POST', 'session/link', {
    says: 'Sign in by a link that is good once',
    who: 'anyone',
    gives: SessionSchema,
    fails: ['wrong-credentials', 'too-many-attempts'],
  })
  async byLink(
    @Body({ schema: LinkBody }) body: z.output<typeof LinkBody>,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ) {
    const key = `link ${request.ip ?? ''}`;
    await this.attempts.check(key);
    const link = await this.door.throughLink(tokenDigest(body.token), (used) => {
      if (used.person === null)
        throw new Problem('wrong-credentials', 'This link sets up a company.');
      return Promise.resolve({ company: used.company, person: used.person });
    });
    if (!link) {
      await this.attempts.failed(key);
      throw new Problem('wrong-credentials', 'This link was used before or has expired.');
    }
    return this.begin(link.company, link.person, request, response);
  }

  @Route('POST', 'setup', {
    says: 'Set up the company and its first administrator, by the link printed at the first start',
    who: 'anyone',
    gives: SessionSchema,
    fails: ['wrong-credentials', 'conflict'],
  })
  async first(
    @Body({ schema: SetUpBody }) body: z.output<typeof SetUpBody>,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ) {
    const { company, person } = await this.setUp.company(body);
    return this.begin(company, person, request, response);
  }

  @Route('GET', 'session', {
    says: 'Who is signed in; prolongs the session',
    who: 'signed-in',
    gives: SessionSchema,
  })
  async who(
    @Asking() asking: SignedIn,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ) {
    const prolonged = await this.sessions.prolong(asking);
    setCookie(request, response, prolonged.token);
    return view(prolonged);
  }

  @Route('PUT', 'session/password', {
    says: 'Set a first password, or change it knowing the present one',
    who: 'signed-in',
    answers: 'nothing',
    fails: ['wrong-credentials', 'too-many-attempts'],
  })
  async setPassword(
    @Asking() asking: SignedIn,
    @Body({ schema: NewPasswordBody }) body: z.output<typeof NewPasswordBody>,
  ) {
    const key = `email ${asking.person.email}`;
    await this.attempts.check(key);
    const known = await this.door.person(asking.person.email);
    const first = known?.passwordHash === null;
    if (!first && !(await passwordFits(known?.passwordHash, body.current ?? ''))) {
      await this.attempts.failed(key);
      throw new Problem('wrong-credentials', 'This is not your present password.');
    }
    await this.sessions.setPassword(asking, await hashPassword(body.password));
  }

  @Route('DELETE', 'session', { says: 'Sign out', who: 'signed-in', answers: 'nothing' })
  async signOut(@Asking() asking: SignedIn, @Res({ passthrough: true }) response: Response) {
    await this.sessions.end(asking);
    response.clearCookie(COOKIE, { path: '/' });
  }

  private async begin(company: string, person: string, request: Request, response: Response) {
    const session = await this.sessions.begin(company, person);
    setCookie(request, response, session.token);
    return view(session);
  }
}

function setCookie(request: Request, response: Response, token: string): void {
  response.cookie(COOKIE, token, {
    httpOnly: true,
    sameSite: 'lax',
    secure: request.secure,
    path: '/',
    maxAge: SESSION_HOURS * 3_600_000,
  });
}
