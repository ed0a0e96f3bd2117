// Mails what falls due, by itself: to each person once for each thing, whichever instance of the
// service gets to it first. A mail server that fails costs nothing but the mail's delay.

import {
  Injectable,
  type OnApplicationBootstrap,
  type OnApplicationShutdown,
} from '@nestjs/common';
import type { Role } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { FrontDoor } from '../data/front-door.js';
import { Ledgers } from '../data/ledgers.js';
import { Mailer } from '../data/mailer.js';
import { Log } from '../http/log.js';
import { JOB_LIST } from '../jobs/job-list.js';
import {
  dayPlus,
  isDue,
  isFor,
  LATE_DAYS,
  mailText,
  MOST_AHEAD,
  type Addressed,
  type Addressee,
} from './due-mail.js';
import { MailedReminders } from './mailed-reminders.js';
import { Reminders } from './reminders.js';
import { SteadyClock } from './steady-clock.js';

const EVERY_MS = 10 * 60_000;
const LISTS_WAIT_MS = 10_000;

@Injectable()
export class ReminderMail implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly clock = new SteadyClock();
  private timer: NodeJS.Timeout | undefined;
  private under: Promise<unknown> = Promise.resolve();
  private stopped = false;

  constructor(
    private readonly companies: Companies,
    private readonly door: FrontDoor,
    private readonly ledgers: Ledgers,
    private readonly mailer: Mailer,
    private readonly mailed: MailedReminders,
    private readonly reminders: Reminders,
    private readonly log: Log,
  ) {}

  onApplicationBootstrap(): void {
    if (!this.mailer.configured) return;
    this.timer = setInterval(() => void this.all(), EVERY_MS);
    this.timer.unref();
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearInterval(this.timer);
    await this.under;
  }

  /** Once the lists have come to an entry that asks somebody: without waiting for the next round. */
  soon(company: string, pos: number): void {
    if (!this.mailer.configured || this.stopped) return;
    this.inTurn(async () => {
      await this.ledgers.ledger.waitFor(company, JOB_LIST, pos, LISTS_WAIT_MS);
      await this.round(company, today());
    });
  }

  /** One round over every company; left out where the clock was just set. */
  all(clock = Date.now(), counter = performance.now()): Promise<void> {
    if (!this.mailer.configured || this.stopped) return Promise.resolve();
    if (!this.clock.look(clock, counter)) {
      this.log.info({}, 'the clock was set; reminders wait for the next round');
      return Promise.resolve();
    }
    return this.inTurn(async () => {
      const day = new Date(clock).toISOString().slice(0, 10);
      for (const company of await this.door.companies()) await this.round(company, day);
    });
  }

  /** One after the other, and what fails is logged and tried again in the next round. */
  private inTurn(work: () => Promise<void>): Promise<void> {
    const done = this.under.then(work).catch((err: unknown) => {
      this.log.error({ err }, 'reminders were not mailed');
    });
    this.under = done;
    return done;
  }

  private async round(company: string, day: string): Promise<void> {
    this.ledgers.lists.follow(company);
    const due = (await this.addressed(company, day)).filter((each) => isDue(each, day));
    if (due.length === 0) return;
    const { prisma } = this.companies.of(company);
    const [office, people] = await Promise.all([
      prisma.company.findFirst({ where: { id: company } }),
      prisma.person.findMany({ where: { active: true, reminderMail: true } }),
    ]);
    for (const person of people) {
      if (this.stopped) return;
      const to: Addressee = { ...person, roles: person.roles as Role[] };
      await this.mailTo(
        company,
        office?.name ?? '',
        to,
        due.filter((each) => isFor(each, to)),
      );
    }
  }

  private async mailTo(
    company: string,
    office: string,
    { id, email }: Addressee,
    due: readonly Addressed[],
  ): Promise<void> {
    const ours = await this.mailed.claim(company, id, due);
    if (ours.length === 0) return;
    try {
      await this.mailer.send({ to: email, ...mailText(office, ours) });
    } catch (error) {
      await this.mailed.release(company, id, ours);
      throw error;
    }
    await this.mailed.sent(company, id, ours);
  }

  private async addressed(company: string, day: string): Promise<readonly Addressed[]> {
    const { prisma } = this.companies.of(company);
    const { generation } = await this.ledgers.liveList(company, JOB_LIST);
    const [found, requests] = await Promise.all([
      this.reminders.until(company, dayPlus(day, MOST_AHEAD), dayPlus(day, -LATE_DAYS)),
      prisma.signOffRequest.findMany({ where: { generation, standing: 'waiting' }, take: 1000 }),
    ]);
    const due = found.filter((each) => isDue(each, day));
    const jobs = [...new Set(due.flatMap(({ job }) => job ?? []))];
    const rows = await prisma.jobRow.findMany({
      where: { generation, id: { in: jobs } },
      select: { id: true, assigned: true },
    });
    const assigned = new Map(rows.map((row) => [row.id, row.assigned]));
    const engineer = new Map(requests.map((row) => [`${row.job} ${row.request}`, row.engineer]));
    return [
      ...due.map((each) => ({
        ...each,
        asked: each.holder ?? engineer.get(`${each.job} ${each.about}`) ?? null,
        assigned: assigned.get(each.job ?? '') ?? null,
      })),
      ...requests.map((row) => ({
        kind: 'sign-off-asked',
        about: row.request,
        job: row.job,
        number: row.number,
        name: row.jobName,
        falls_on: row.askedAt.toISOString().slice(0, 10),
        words: `Your answer is asked for until ${row.expires.toISOString().slice(0, 10)}. Sign in to see the packet and answer it; what spans is for you to decide.`,
        asked: row.engineer,
      })),
    ];
  }
}

const today = (): string => new Date().toISOString().slice(0, 10);
