// Follows a company's log for others: entries after a position, without a hole, and a wait for more that
// ends with the first commit of any instance.

import { Injectable, type BeforeApplicationShutdown } from '@nestjs/common';
import type { Recorded } from '#ledger';
import { Ledgers } from '../data/ledgers.js';

export interface FeedPage {
  readonly after: number;
  readonly limit: number;
  /** Milliseconds to wait where there is nothing yet. */
  readonly waitMs: number;
}

export interface FeedEvents {
  readonly events: readonly Recorded[];
  /** Ask on with this one. */
  readonly next: number;
}

/** Also hears of commits that no message tells of. */
const ASK_EVERY_MS = 500;

@Injectable()
export class Feed implements BeforeApplicationShutdown {
  private readonly waiting = new Set<() => void>();
  private stopping = false;

  constructor(private readonly ledgers: Ledgers) {}

  /** @throws Error at a hole in the log */
  async read(
    company: string,
    { after, limit, waitMs }: FeedPage,
    gone: AbortSignal,
  ): Promise<FeedEvents> {
    const { ledger } = this.ledgers;
    const end = Date.now() + waitMs;
    for (;;) {
      const events = await ledger.readAll(company, { after, limit });
      const left = end - Date.now();
      if (events.length > 0 || left <= 0 || gone.aborted || this.stopping)
        return { events, next: events.at(-1)?.pos ?? after };
      await this.somethingNew(company, Math.min(left, ASK_EVERY_MS), gone);
    }
  }

  beforeApplicationShutdown(): void {
    this.stopping = true;
    for (const wake of this.waiting) wake();
  }

  private somethingNew(company: string, ms: number, gone: AbortSignal): Promise<void> {
    return new Promise((resolve) => {
      const wake = () => {
        clearTimeout(timer);
        stopListening();
        gone.removeEventListener('abort', wake);
        this.waiting.delete(wake);
        resolve();
      };
      const timer = setTimeout(wake, ms);
      const stopListening = this.ledgers.onChanged((log) => {
        if (log === undefined || log === company) wake();
      });
      gone.addEventListener('abort', wake);
      this.waiting.add(wake);
    });
  }
}
