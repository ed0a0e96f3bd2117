// Reminders as a list, as a calendar feed with a secret address, and by e-mail where that is set up.

import { Body, Controller, Param, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { Companies } from '../data/companies.js';
import { FrontDoor } from '../data/front-door.js';
import { Mailer } from '../data/mailer.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { newToken, tokenDigest } from '../people/passwords.js';
import { send } from '../papers/papers.controller.js';
import { Problem } from '../problems.js';
import { calendarText } from './calendar.js';
import { Reminders, type Reminder } from './reminders.js';

const Ahead = z.strictObject({ days: z.coerce.number().int().min(0).max(20_000).default(30) });
const ReminderSchema = z
  .object({
    kind: z.string(),
    about: z.string(),
    job: z.string().nullable(),
    number: z.string().nullable(),
    name: z.string(),
    falls_on: z.string(),
    overdue: z.boolean(),
    words: z.string(),
  })
  .meta({ id: 'Reminder' });
const FeedFile = z.string().regex(/^[A-Za-z0-9_-]{43}\.ics$/, 'is not the address of a feed');
const MailChoice = z.strictObject({ reminders: z.boolean() });
const FEED_DAYS = 400;
/** What was left for longer does not hide what comes. */
const FEED_LATE_DAYS = 90;

const dayAhead = (days: number): string =>
  new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

@Controller('api')
export class RemindersController {
  constructor(
    private readonly reminders: Reminders,
    private readonly companies: Companies,
    private readonly door: FrontDoor,
    private readonly mailer: Mailer,
  ) {}

  @Route('GET', 'reminders', {
    says: 'What is overdue or falls due within some days, soonest first',
    who: STAFF,
    gives: z.object({ today: z.string(), reminders: z.array(ReminderSchema) }),
  })
  async list(
    @Asking() { company }: SignedIn,
    @Query({ schema: Ahead }) { days }: z.output<typeof Ahead>,
  ) {
    const today = dayAhead(0);
    const found = await this.reminders.until(company.id, dayAhead(days));
    return {
      today,
      reminders: found.map(({ holder: _, ...each }) => ({
        ...each,
        overdue: each.falls_on < today,
      })),
    };
  }

  @Route('POST', 'reminders/feed', {
    says: 'A secret address for a calendar program; an earlier one of yours stops working',
    who: STAFF,
    answers: 'created',
    gives: z.object({ path: z.string() }),
  })
  async feed(@Asking() { company, person }: SignedIn) {
    const { prisma } = this.companies.of(company.id);
    const token = newToken();
    await prisma.calendarFeed.deleteMany({ where: { personId: person.id } });
    await prisma.calendarFeed.create({
      data: {
        companyId: company.id,
        tokenDigest: new Uint8Array(tokenDigest(token)),
        personId: person.id,
      },
    });
    return { path: `/api/calendar/${token}.ics` };
  }

  @Route('DELETE', 'reminders/feed', {
    says: 'Your calendar address stops working',
    who: STAFF,
    answers: 'nothing',
  })
  async stop(@Asking() { company, person }: SignedIn) {
    await this.companies
      .of(company.id)
      .prisma.calendarFeed.deleteMany({ where: { personId: person.id } });
  }

  @Route('GET', 'calendar/:file', {
    says: 'Reminders as iCalendar, by the secret address',
    who: 'anyone',
    gives: 'text/calendar',
  })
  async calendar(
    @Param('file', { schema: FeedFile }) file: string,
    @Res() response: Response,
  ): Promise<void> {
    const feed = await this.door.calendar(tokenDigest(file.slice(0, -'.ics'.length)));
    if (!feed) throw new Problem('not-found', 'There is no such calendar.');
    const found = await this.reminders.until(
      feed.company,
      dayAhead(FEED_DAYS),
      dayAhead(-FEED_LATE_DAYS),
    );
    send(
      response,
      'text/calendar; charset=utf-8',
      'reminders.ics',
      Buffer.from(calendarText('Gauge Ledger reminders', found, new Date())),
    );
  }

  @Route('GET', 'session/mail', {
    says: 'Whether this office sends mail, and whether you get what falls due',
    who: 'signed-in',
    gives: MailChoice.extend({ sends: z.boolean() }),
  })
  async choice(@Asking() { company, person }: SignedIn) {
    const row = await this.companies
      .of(company.id)
      .prisma.person.findFirst({ where: { id: person.id }, select: { reminderMail: true } });
    return { reminders: row?.reminderMail ?? false, sends: this.mailer.configured };
  }

  @Route('PUT', 'session/mail', {
    says: 'Choose whether what falls due is mailed to you; codes for signing are mailed in any case',
    who: 'signed-in',
    answers: 'nothing',
  })
  async choose(
    @Asking() { company, person }: SignedIn,
    @Body({ schema: MailChoice }) { reminders }: z.output<typeof MailChoice>,
  ) {
    await this.companies
      .of(company.id)
      .prisma.person.updateMany({ where: { id: person.id }, data: { reminderMail: reminders } });
  }

  @Route('POST', 'reminders/mail', {
    says: "Send today's reminders by e-mail to the project managers; refused where no mail server is set up",
    who: ['project-manager', 'administrator'],
    gives: z.object({ sent_to: z.int() }),
    fails: ['conflict'],
  })
  async mail(
    @Asking() { company }: SignedIn,
    @Query({ schema: Ahead }) { days }: z.output<typeof Ahead>,
  ) {
    if (!this.mailer.configured)
      throw new Problem('conflict', 'No mail server is set up: SMTP_URL and MAIL_FROM.');
    const found = await this.reminders.until(company.id, dayAhead(days));
    const people = await this.companies.of(company.id).prisma.person.findMany({
      where: { active: true, reminderMail: true, roles: { has: 'project-manager' } },
    });
    const text = found.length === 0 ? 'Nothing falls due.' : found.map(line).join('\n');
    for (const { email } of people)
      await this.mailer.send({
        to: email,
        subject: `${company.name}: ${found.length} reminders`,
        text,
      });
    return { sent_to: people.length };
  }
}

const line = ({ falls_on, number, name, words }: Reminder): string =>
  `${falls_on}  ${number === null ? '' : `${number} ${name}: `}${words}`;
