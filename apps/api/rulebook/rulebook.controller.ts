// The rules editions of the company, with every rule's words, settings and citation.

import { Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { citationText } from '#engineering';
import { bookKey, RULE_BOOK, type Edition } from '#rules';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { READERS } from '../jobs/jobs.controller.js';
import { Problem } from '../problems.js';
import { Editions, inForce, stateOf, type Published } from './editions.js';

export const EditionRowSchema = z
  .object({
    number: z.int(),
    in_force_from: z.string(),
    summary: z.string(),
    digest: z.string(),
    state: z.string(),
    published_at: z.string(),
    reason: z.string().nullable(),
  })
  .meta({ id: 'EditionRow' });

const RuleSchema = z.object({
  rule: z.string(),
  version: z.int(),
  title: z.string(),
  stage: z.string(),
  class: z.string(),
  severity: z.string(),
  says: z.string(),
  cites: z.array(z.string()),
  reads: z.array(z.string()),
  settings: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])),
});
const RulebookSchema = EditionRowSchema.extend({ rules: z.array(RuleSchema) }).meta({
  id: 'Rulebook',
});
export const EditionNumber = z.coerce.number('must be a number').int().min(0).max(1_000_000);

export const today = () => new Date().toISOString().slice(0, 10);

export const editionRow = <T extends { readonly summary: string }>(
  published: Published<T>,
  state: string,
) => ({
  number: published.number,
  in_force_from: published.inForceFrom,
  summary: published.edition.summary,
  digest: published.digest,
  state,
  published_at: published.publishedAt,
  reason: published.reason,
});

@Controller('api/rulebook')
export class RulebookController {
  constructor(private readonly editions: Editions) {}

  @Route('GET', 'editions', {
    says: 'The published rules editions',
    who: READERS,
    gives: z.object({ editions: z.array(EditionRowSchema) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const shelf = await this.editions.rules(company.id);
    return {
      editions: shelf.editions.map((each) => editionRow(each, stateOf(shelf, each, today()))),
    };
  }

  @Route('GET', 'current', {
    says: 'The rules edition in force',
    who: READERS,
    gives: RulebookSchema,
    fails: ['not-found'],
  })
  async current(@Asking() { company }: SignedIn) {
    const published = inForce(await this.editions.rules(company.id), today());
    if (!published) throw new Problem('not-found', 'No rules edition is in force.');
    return rulebook(published, 'in force');
  }

  @Route('GET', 'editions/:number', {
    says: 'One rules edition',
    who: READERS,
    gives: RulebookSchema,
  })
  async one(
    @Asking() { company }: SignedIn,
    @Param('number', { schema: EditionNumber }) number: number,
  ) {
    const shelf = await this.editions.rules(company.id);
    const published = shelf.editions.find((each) => each.number === number);
    if (!published) throw new Problem('not-found', `There is no rules edition ${number}.`);
    return rulebook(published, stateOf(shelf, published, today()));
  }
}

function rulebook(published: Published<Edition>, state: string) {
  const rules = published.edition.entries.map(({ rule, version, severity, settings }) => {
    const known = RULE_BOOK.get(bookKey(rule, version));
    if (!known)
      throw new Error(
        `edition ${published.number} names ${rule}/${version}, which is not in the code`,
      );
    return {
      rule,
      version,
      severity,
      settings,
      title: known.title,
      stage: known.stage,
      class: known.class,
      says: known.says,
      cites: known.cites.map(citationText),
      reads: known.reads,
    };
  });
  return { ...editionRow(published, state), rules };
}
