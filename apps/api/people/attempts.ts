// Slows down guessing: after ten failures within fifteen minutes an e-mail or an address waits.

import { Injectable } from '@nestjs/common';
import { Problem } from '../problems.js';

const MOST = 10;
const WINDOW_MS = 15 * 60_000;
const REMEMBERED = 10_000;

@Injectable()
export class Attempts {
  private readonly failures = new Map<string, number[]>();

  /** @throws Problem too-many-attempts */
  check(...keys: readonly string[]): void {
    for (const key of keys) {
      const recent = this.recent(key);
      if (recent.length < MOST) continue;
      const until = (recent[0] ?? 0) + WINDOW_MS - Date.now();
      const minutes = Math.max(1, Math.ceil(until / 60_000));
      throw new Problem('too-many-attempts', {
        detail: `Too many failed attempts; try again in ${minutes} minutes.`,
        retryAfter: minutes * 60,
      });
    }
  }

  failed(...keys: readonly string[]): void {
    for (const key of keys) this.failures.set(key, [...this.recent(key), Date.now()]);
    const [oldest] = this.failures.keys();
    if (this.failures.size > REMEMBERED && oldest !== undefined) this.failures.delete(oldest);
  }

  succeeded(...keys: readonly string[]): void {
    for (const key of keys) this.failures.delete(key);
  }

  private recent(key: string): number[] {
    return (this.failures.get(key) ?? []).filter((at) => at > Date.now() - WINDOW_MS);
  }
}
