// Publishing a rules edition: into the record whole, once, with who and why.

import { Injectable } from '@nestjs/common';
import { EDITION_1 } from '#rules';
import { oneStream, Ledgers } from '../data/ledgers.js';
import { RULEBOOK } from './editions.js';

@Injectable()
export class PublishRules {
  constructor(private readonly ledgers: Ledgers) {}

  /** The company's log, with the first edition in it; done before, it does nothing. */
  async first(company: string, person: string): Promise<void> {
    await this.ledgers.ledger.createLog(company);
    const asked = { publish: RULEBOOK, edition: EDITION_1.number };
    const by = { person, role: 'administrator' };
    const events = [{
      type: 'rules-edition-published/1',
      data: { edition: EDITION_1, reason: 'The first edition comes with the product.' },
    }];
    await this.ledgers.append(
      oneStream({ company, by, commandId: 'first-rules-edition', asked }, RULEBOOK, 0, events));
  }
}
