// Publishing the rules editions that come with the product: into the record whole, once, each with
// who and why.

import { Injectable } from '@nestjs/common';
import { EDITION_1, EDITION_2 } from '#rules';
import { oneStream, Ledgers } from '../data/ledgers.js';
import { Editions, RULEBOOK } from './editions.js';

const WITH_THE_PRODUCT = [EDITION_1, EDITION_2] as const;
const WHY = 'This edition comes with the product.';

@Injectable()
export class PublishRules {
  constructor(
    private readonly ledgers: Ledgers,
    private readonly editions: Editions,
  ) {}

  /** The company's log, with the product's editions in it; an edition that is there stays as it is. */
  async ofTheProduct(company: string, person: string): Promise<void> {
    await this.ledgers.ledger.createLog(company);
    const { version, editions } = await this.editions.rules(company);
    const newest = editions.at(-1)?.number ?? 0;
    const missing = WITH_THE_PRODUCT.filter(({ number }) => number > newest);
    if (missing.length === 0) return;
    const numbers = missing.map(({ number }) => number);
    const events = missing.map((edition) => ({
      type: 'rules-edition-published/1',
      data: { edition, reason: WHY },
    }));
    // Another start of the same moment may be first: then its entries stand, and these are refused.
    await this.ledgers.append(
      oneStream(
        {
          company,
          by: { person, role: 'administrator' },
          commandId: `rules-of-the-product-${numbers.join('-')}`,
          asked: { publish: RULEBOOK, numbers },
        },
        RULEBOOK,
        version,
        events,
      ),
    );
  }
}
