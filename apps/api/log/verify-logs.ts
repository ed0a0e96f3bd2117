// The nightly job: looks every company's whole log over, one after the other, in a worker thread and in
// one instance of the service at a time, against the last checkpoint kept outside the database.

import {
  Injectable,
  type BeforeApplicationShutdown,
  type OnApplicationBootstrap,
} from '@nestjs/common';
import {
  EMPTY_ROOT,
  forgetOldCommands,
  verifyInWorker,
  type VerifyProgress,
  type VerifyRun,
} from '#ledger';
import { Ledgers } from '../data/ledgers.js';
import { Settings } from '../data/settings.js';
import { Signing } from '../data/signing.js';
import { Log } from '../http/log.js';
import type { SignedIn } from '../http/signed-in.js';
import { DamageMail } from './damage-mail.js';
import { LogDoor, type NextToVerify } from './log-door.js';
import { Readings } from './readings.js';
import { VerificationRuns, type Found } from './verification-runs.js';

const FIRST_LOOK_MS = 60_000;
const LOOK_EVERY_MS = 10 * 60_000;
/** How soon to look again while another instance has the lock. */
const LOCKED_MS = 15_000;
const KEEP_EVERY_MS = 2_000;

@Injectable()
export class VerifyLogs implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private timer: NodeJS.Timeout | undefined;
  private working: Promise<void> | undefined;
  private again = false;
  private stopping = false;
  private current: VerifyRun | undefined;

  constructor(
    private readonly settings: Settings,
    private readonly door: LogDoor,
    private readonly ledgers: Ledgers,
    private readonly signing: Signing,
    private readonly runs: VerificationRuns,
    private readonly readings: Readings,
    private readonly mail: DamageMail,
    private readonly log: Log,
  ) {}

  onApplicationBootstrap(): void {
    if (this.settings.verifyAt !== undefined) this.lookIn(FIRST_LOOK_MS);
  }

  /** A run of this company's log, soon; one that was begun already is that one. */
  async ask({ company, person }: SignedIn): Promise<string> {
    const run = await this.runs.begin(company.id, person.id);
    this.wake();
    return run;
  }

  /** Works off what is due and what was asked for, unless another instance does. */
  wake(): void {
    this.again = true;
    this.working ??= this.work()
      .catch((err: unknown) => this.log.error({ err }, 'the verification of logs stands still'))
      .finally(() => {
        this.working = undefined;
        if (this.again && !this.stopping) this.wake();
      });
  }

  /** Resolves when nothing is left to do here. */
  async idle(): Promise<void> {
    while (this.working) await this.working;
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopping = true;
    clearTimeout(this.timer);
    await this.current?.stop();
    await this.idle();
  }

  private lookIn(ms: number): void {
    clearTimeout(this.timer);
    if (this.stopping) return;
    this.timer = setTimeout(() => {
      this.wake();
      if (this.settings.verifyAt !== undefined) this.lookIn(LOOK_EVERY_MS);
    }, ms).unref();
  }

  private async work(): Promise<void> {
    this.again = false;
    const lock = await this.door.takeLock();
    if (!lock) return this.lookIn(LOCKED_MS);
    let held = true;
    void lock.lost.then(async () => {
      held = false;
      await this.current?.stop();
    });
    const passedOver: string[] = [];
    try {
      while (held && !this.stopping) {
        const since = lastTime(this.settings.verifyAt, new Date());
        const next = await this.door.nextToVerify(since, passedOver);
        if (!next) return;
        await this.one(next).catch(() => passedOver.push(next.company));
      }
    } finally {
      await lock.release();
    }
  }

  private async one({ company, run: begun }: NextToVerify): Promise<void> {
    const run = begun ?? (await this.runs.begin(company, null));
    try {
      const found = await this.verify(company, run);
      await this.runs.finish(company, run, found);
      await this.tell(company, found);
    } catch (err) {
      if (!this.stopping) {
        this.log.error({ company, run, err }, 'a verification stands still; it is gone on with');
        await this.runs.stopped(company, run, 'It was interrupted, and goes on by itself.');
      }
      throw err;
    }
    await forgetOldCommands(this.ledgers.connections, company);
    await this.readings.forgetOld(company);
  }

  /** Checkpoints are read before the head: one signed meanwhile would seem to be cut off. */
  private async verify(company: string, run: string): Promise<Found> {
    const { outside, kept, faults } = await this.signing.before(company);
    const checkpoints = outside ? [...kept, outside] : kept;
    const { head, hasEntries } = await this.runs.head(company);
    const checkpoint = outside?.size ?? null;
    if (head === null) return withoutLog(checkpoint, hasEntries);
    const from = await this.runs.progress(company, run);
    let keptAt = Date.now();
    let keeping: Promise<unknown> = Promise.resolve();
    const onProgress = (at: VerifyProgress): void => {
      if (Date.now() - keptAt < KEEP_EVERY_MS) return;
      keptAt = Date.now();
      keeping = keeping
        .then(() => this.runs.keep(company, run, head, at))
        .catch((err: unknown) => this.log.error({ company, err }, 'progress was not kept'));
    };
    const { serviceUrl } = this.settings;
    const task = { serviceUrl, log: company, checkpoints, ...(from ? { from } : {}) };
    this.current = verifyInWorker(task, onProgress);
    try {
      const report = await this.current.report;
      const says = faults[0] ?? report.timeStamps;
      const fault = report.fault ?? (says === undefined ? undefined : { pos: null, says });
      return { report, checkpoint, fault };
    } finally {
      this.current = undefined;
      await keeping;
    }
  }

  /** What holds is signed, so that a day's entries lie under a checkpoint at the latest a day later. */
  private async tell(company: string, { report, fault }: Found): Promise<void> {
    if (!fault) {
      this.log.info({ company, positions: report.events }, 'the record holds');
      await this.signing.checkpoint(company);
      return;
    }
    this.log.error({ company, ...fault }, 'ALARM: the record does not hold');
    await this.mail.send(company, fault);
  }
}

/** A company's log is made before its first entry; without its row there was none, or it was removed. */
function withoutLog(checkpoint: number | null, hasEntries: boolean): Found {
  const report = { events: 0, root: EMPTY_ROOT, checkpoints: 0, lastMet: 0, fault: undefined };
  const removed = hasEntries || (checkpoint ?? 0) > 0;
  const fault = removed ? { pos: 1, says: "the log's own row is missing" } : undefined;
  return { report, checkpoint, fault };
}

/** The last moment at which the server's clock showed "HH:MM"; null where nothing is due by itself. */
export function lastTime(at: string | undefined, now: Date): Date | null {
  if (at === undefined) return null;
  const [hours = 0, minutes = 0] = at.split(':').map(Number);
  const moment = new Date(now);
  moment.setHours(hours, minutes, 0, 0);
  if (moment > now) moment.setDate(moment.getDate() - 1);
  return moment;
}
