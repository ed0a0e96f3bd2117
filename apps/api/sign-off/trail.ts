// What happened around a sign-off besides the answer: links made and opened, codes sent, attempts that
// failed; all in the log, in a stream beside the job.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import type { By } from '#ledger';
import { Ledgers, oneStream } from '../data/ledgers.js';

export type TrailEntry =
  | {
      readonly type: 'packet-link-made/1';
      readonly data: { readonly engineer: string; readonly expires_at: string };
    }
  | { readonly type: 'packet-opened/1'; readonly data: { readonly packet: string } }
  | {
      readonly type: 'sign-off-code-sent/1';
      readonly data: { readonly how: 'e-mail' | 'shown, to be given by phone' };
    }
  | {
      readonly type: 'sign-off-attempt-failed/1';
      readonly data: { readonly attempt: number; readonly why: string };
    }
  | {
      readonly type: 'signing-factors-given/1';
      readonly data: { readonly code: boolean };
    };

export const trailStream = (job: string, request: string): string => `sign-off/${job}/${request}`;
/** What a signed-in engineer gave to sign with, of whichever job. */
export const signingStream = (person: string): string => `signing/${person}`;

@Injectable()
export class Trail {
  constructor(private readonly ledgers: Ledgers) {}

  async add(
    company: string,
    by: By,
    of: { readonly job: string; readonly request: string },
    entry: TrailEntry,
  ): Promise<void> {
    await this.append(company, by, trailStream(of.job, of.request), entry);
  }

  /** Around the signing of a person who is signed in. */
  async ofPerson(company: string, by: By, person: string, entry: TrailEntry): Promise<void> {
    await this.append(company, by, signingStream(person), entry);
  }

  private async append(company: string, by: By, stream: string, entry: TrailEntry): Promise<void> {
    for (let commandId = uuid(); ;) {
      const version = (await this.ledgers.ledger.readStream(company, stream)).length;
      const done = await this.ledgers.append(
        oneStream({ company, by, commandId, asked: entry }, stream, version, [entry]),
      );
      if (done.kind !== 'wrong-version') return;
      commandId = uuid();
    }
  }
}
