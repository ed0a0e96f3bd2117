// Slows down guessing: after ten failures within fifteen minutes an e-mail or an address waits, at
// whichever instance of the service it is tried. Kept by digest alone.

import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { FrontDoor } from '../data/front-door.js';
import { Problem } from '../problems.js';

const MOST = 10;

@Injectable()
export class Attempts {
  constructor(private readonly door: FrontDoor) {}

  /** @throws Problem too-many-attempts */
  async check(...keys: readonly string[]): Promise<void> {
    const seconds = await this.door.mustWait(keys.map(digest), MOST);
    if (seconds <= 0) return;
    const minutes = Math.ceil(seconds / 60);
    throw new Problem('too-many-attempts', {
      detail: `Too many failed attempts; try again in ${minutes} minutes.`,
      retryAfter: minutes * 60,
    });
  }

  async failed(...keys: readonly string[]): Promise<void> {
    await this.door.attemptFailed(keys.map(digest));
  }

  async succeeded(...keys: readonly string[]): Promise<void> {
    await this.door.attemptSucceeded(keys.map(digest));
  }
}

const digest = (key: string): Buffer => createHash('sha256').update(key).digest();
