// Has the newest checkpoint of each company time-stamped by an outside authority, where one is set up.
// No request waits for it: until the authority answers, the checkpoint is untimed, and it is asked again.

import { randomBytes } from 'node:crypto';
import {
  Injectable,
  type BeforeApplicationShutdown,
  type OnApplicationBootstrap,
} from '@nestjs/common';
import { makeTimeRequest, openTimeStamp, type KeptTimeStamp, type Stamped } from '#ledger';
import { FrontDoor } from '../data/front-door.js';
import { Ledgers } from '../data/ledgers.js';
import { Settings, type TimeStampSettings } from '../data/settings.js';
import { Signing } from '../data/signing.js';
import { Log } from '../http/log.js';
import { askAuthority } from './time-authority.js';

const LONGEST_PAUSE_MS = 3_600_000;

@Injectable()
export class TimeStamps implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly stopping = new AbortController();
  private readonly working = new Map<string, Promise<void>>();
  private readonly again = new Set<string>();
  private readonly failures = new Map<string, Failure>();
  private readonly opened = new Map<string, Timed>();

  constructor(
    private readonly settings: Settings,
    private readonly door: FrontDoor,
    private readonly ledgers: Ledgers,
    private readonly signing: Signing,
    private readonly log: Log,
  ) {}

  onApplicationBootstrap(): void {
    const { timeStamps } = this.settings;
    if (!timeStamps) return;
    this.signing.onSigned((company) => this.soon(company, timeStamps));
    void this.door.companies().then(
      (companies) => companies.forEach((company) => this.soon(company, timeStamps)),
      (err: unknown) => this.log.error({ err }, 'time-stamps wait for the next checkpoint'),
    );
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopping.abort();
    for (const { timer } of this.failures.values()) clearTimeout(timer);
    await this.idle();
  }

  /** Resolves when nothing is under way here; what failed waits for its time. */
  async idle(): Promise<void> {
    while (this.working.size > 0) await Promise.all(this.working.values());
  }

  /** The first time-stamp of a checkpoint over this position, and how the asking stands. */
  async over(company: string, pos: number): Promise<TimeView> {
    const [first] = await this.ledgers.ledger.timeStamps(company, pos, 1);
    return { ...(await this.view(company, first)), untimed: null };
  }

  /** Of the newest checkpoint that has one. */
  async last(company: string): Promise<TimeView> {
    const { ledger } = this.ledgers;
    const [last, newest] = await Promise.all([
      ledger.lastTimeStamp(company),
      ledger.lastCheckpoint(company),
    ]);
    const untimed = newest && newest.size > (last?.size ?? 0) ? newest.size : null;
    return { ...(await this.view(company, last)), untimed };
  }

  private async view(
    company: string,
    kept: KeptTimeStamp | undefined,
  ): Promise<Omit<TimeView, 'untimed'>> {
    return {
      asks: this.settings.timeStamps !== undefined,
      trouble: this.failures.get(company)?.says ?? null,
      ...(kept ? await this.read(company, kept) : { stamp: null, fault: null }),
    };
  }

  private async read(company: string, kept: KeptTimeStamp): Promise<Timed> {
    const key = `${company} ${kept.size}`;
    const known = this.opened.get(key);
    if (known) return known;
    const of = (await this.ledgers.ledger.checkpoints(company)).find(
      ({ size }) => size === kept.size,
    );
    const read = timed(kept, of?.note ?? '');
    if (this.opened.size > MOST_OPENED) this.opened.clear();
    this.opened.set(key, read);
    return read;
  }

  /** One at a time for a company; after a failure not before its pause is over. */
  private soon(company: string, authority: TimeStampSettings): void {
    if (this.stopping.signal.aborted || this.failures.get(company)?.timer) return;
    if (this.working.has(company)) {
      this.again.add(company);
      return;
    }
    const work = this.stamp(company, authority)
      .then(
        () => void this.failures.delete(company),
        (err: unknown) => this.failed(company, authority, err),
      )
      .finally(() => {
        this.working.delete(company);
        if (this.again.delete(company)) this.soon(company, authority);
      });
    this.working.set(company, work);
  }

  private async stamp(company: string, { url, policy, trusted }: TimeStampSettings): Promise<void> {
    const { ledger } = this.ledgers;
    const [checkpoint, last] = await Promise.all([
      ledger.lastCheckpoint(company),
      ledger.lastTimeStamp(company),
    ]);
    if (!checkpoint || checkpoint.size === 0 || (last && last.size >= checkpoint.size)) return;
    const { size, note } = checkpoint;
    const request = makeTimeRequest({ note, policy, nonce: randomBytes(8) });
    const reply = await askAuthority(url, request, this.stopping.signal);
    const { at } = openTimeStamp(note, { request, reply, trusted });
    await ledger.keepTimeStamp(company, { size, request, reply, trusted });
    this.log.info({ company, size, at }, 'a checkpoint was time-stamped');
  }

  private failed(company: string, authority: TimeStampSettings, err: unknown): void {
    if (this.stopping.signal.aborted) return;
    const times = (this.failures.get(company)?.times ?? 0) + 1;
    const pause = Math.min(LONGEST_PAUSE_MS, authority.retryMs * 2 ** Math.min(times - 1, 20));
    const failure: Failure = { times, says: sentence(err), timer: undefined };
    failure.timer = setTimeout(() => {
      failure.timer = undefined;
      this.soon(company, authority);
    }, pause).unref();
    this.failures.set(company, failure);
    this.log.error({ company, err, times, pause }, 'a checkpoint stays untimed for now');
  }
}

export interface TimeView {
  /** Whether an authority is set up. */
  readonly asks: boolean;
  readonly stamp: (Stamped & { readonly size: number }) | null;
  /** What is wrong with the token that is kept. */
  readonly fault: string | null;
  /** Why the last asking failed. */
  readonly trouble: string | null;
  /** Size of a newer checkpoint without one. */
  readonly untimed: number | null;
}
type Timed = Pick<TimeView, 'stamp' | 'fault'>;

interface Failure {
  readonly times: number;
  readonly says: string;
  /** Until the next asking. */
  timer: NodeJS.Timeout | undefined;
}

const MOST_OPENED = 500;

function timed(kept: KeptTimeStamp, note: string): Timed {
  try {
    return { stamp: { ...openTimeStamp(note, kept), size: kept.size }, fault: null };
  } catch (error) {
    return { stamp: null, fault: sentence(error) };
  }
}

/** Network faults say little themselves and more in their cause. */
function sentence(error: unknown): string {
  const { name, message, cause } = error as Error & { cause?: { code?: string } };
  if (name === 'TimeoutError') return 'The authority did not answer in time.';
  if (message === 'fetch failed')
    return `The authority is not reached (${cause?.code ?? 'no answer'}).`;
  return message;
}
