// What a decision rests on besides the job: the person, the clock, and the editions in force today.

import { Injectable } from '@nestjs/common';
import { DEFAULT_POLICY, type Command, type Context } from '#jobs';
import { RULE_BOOK } from '#rules';
import { digestOf } from '../data/ledgers.js';
import type { Acting } from '../http/signed-in.js';
import { Solver } from '../take-off/solver.js';
import { Editions, EMPTY_CATALOGUE, inForce } from '../rulebook/editions.js';

const NO_CATALOGUE = { edition: EMPTY_CATALOGUE, digest: digestOf(EMPTY_CATALOGUE) } as const;

@Injectable()
export class Contexts {
  constructor(
    private readonly editions: Editions,
    private readonly solver: Solver,
  ) {}

  /** With what this command needs to be decided: a take-off cuts its trims. */
  async for(asking: Acting, command: Command): Promise<Context> {
    const context = await this.of(asking);
    const cutStock = command.type === 'record-take-off' ? await this.solver.cutStock() : undefined;
    return cutStock ? { ...context, cutStock } : context;
  }

  async of({ company, person, roles }: Acting): Promise<Context> {
    const [rulebook, catalogues] = await Promise.all([
      this.editions.rules(company.id),
      this.editions.catalogue(company.id),
    ]);
    const at = new Date().toISOString();
    const day = at.slice(0, 10);
    const rules = inForce(rulebook, day);
    if (!rules) throw new Error(`company ${company.id} has no rules edition in force on ${day}`);
    const catalogue = inForce(catalogues, day) ?? NO_CATALOGUE;
    return {
      by: { person: person.id, roles },
      at,
      book: RULE_BOOK,
      edition: rules.edition,
      editionDigest: rules.digest,
      catalogue: catalogue.edition,
      catalogueDigest: catalogue.digest,
      policy: DEFAULT_POLICY,
    };
  }
}
