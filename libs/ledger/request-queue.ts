// Requests that wait for the next batch, and which of them go together.

import type { Drafted } from './batch.js';
import type { AppendResult } from './ledger.js';

export interface Request extends Drafted {
  readonly resolve: (result: AppendResult) => void;
  readonly reject: (fault: unknown) => void;
}

export class RequestQueue {
  bytes = 0;
  events = 0;
  private waiting: Request[] = [];

  get length(): number {
    return this.waiting.length;
  }

  add(request: Request): void {
    this.waiting.push(request);
    this.bytes += request.bytes;
    this.events += request.events;
  }

  /** In front of all others. */
  putBack(requests: readonly Request[]): void {
    this.replace([...requests, ...this.waiting]);
  }

  /**
   * About so many events; of each stream and of each command the first request only. What is left
   * keeps its order, so that no request is overtaken on a stream of its own.
   */
  take(events: number): Request[] {
    let room = events;
    const taken: Request[] = [];
    const left: Request[] = [];
    const seen = new Set<string>();
    for (const request of this.waiting) {
      const keys = request.streams.map(({ stream }) => stream);
      keys.push(`\0${request.command.id}`);
      const free = room > 0 && keys.every((key) => !seen.has(key));
      for (const key of keys) seen.add(key);
      if (free) room -= request.events;
      (free ? taken : left).push(request);
    }
    this.replace(left);
    return taken;
  }

  private replace(waiting: Request[]): void {
    this.waiting = waiting;
    this.bytes = waiting.reduce((sum, request) => sum + request.bytes, 0);
    this.events = waiting.reduce((sum, request) => sum + request.events, 0);
  }
}
