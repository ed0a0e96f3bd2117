// What a customer acknowledged of what was sent, kept in the log beside the job. It says that a paper
// was seen; it makes no roof safe or lawful.

import { Injectable } from '@nestjs/common';
import { Ledgers, oneStream } from '../data/ledgers.js';
import type { PaperName } from '../papers/paper-kinds.js';

export const ACKNOWLEDGED = 'paper-acknowledged/1';

export interface Acknowledged extends PaperName {
  readonly party: string;
  /** As typed by the person. */
  readonly name: string;
  /** SHA-256 of the print that was shown. */
  readonly pdf_digest: string;
  readonly caution: string;
}

const stream = (job: string): string => `customer/${job}`;

@Injectable()
export class Acknowledgments {
  constructor(private readonly ledgers: Ledgers) {}

  async of(
    company: string,
    job: string,
  ): Promise<readonly (Acknowledged & { readonly at: string })[]> {
    const events = await this.ledgers.ledger.readStream(company, stream(job));
    return events.map(({ data, recordedAt }) => ({ ...(data as Acknowledged), at: recordedAt }));
  }

  /** The same paper acknowledged twice by the same person is one acknowledgment. */
  async add(company: string, job: string, given: Acknowledged): Promise<void> {
    const before = await this.ledgers.ledger.readStream(company, stream(job));
    const known = before.some(({ data }) => {
      const { paper, about, party } = data as Acknowledged;
      return paper === given.paper && about === given.about && party === given.party;
    });
    if (known) return;
    const by = { person: given.party, role: 'customer' };
    const commandId = `${stream(job)}/${given.paper}/${given.about}/${given.party}`;
    const request = oneStream(
      { company, by, commandId, asked: given },
      stream(job),
      before.length,
      [{ type: ACKNOWLEDGED, data: given }],
    );
    const done = await this.ledgers.append(request);
    if (done.kind === 'wrong-version') await this.add(company, job, given);
  }
}
