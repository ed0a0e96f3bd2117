// The rules editions of the company, with every rule's words, settings and citation.

import { Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { citationText } from '#engineering';
import { editionDifference } from '#jobs';
import { RuleChange, RUNNING_JOBS } from '#jobs/contract';
import {
  bookKey,
  CASES,
  mayBeOverridden,
  RULE_BOOK,
  type Edition,
  type Rule,
  type RuleCases,
} from '#rules';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { READERS } from '../jobs/jobs.controller.js';
import { Problem } from '../problems.js';
import { Names } from '../people/names.js';
import { Editions, inForce, stateOf, type Published, type Shelf } from './editions.js';

export const EditionRowSchema = z
  .object({
    number: z.int(),
    in_force_from: z.string(),
    summary: z.string(),
    digest: z.string(),
    state: z.enum(['in force', 'in force later', 'retired']),
    retired_on: z.string().nullable(),
    published_at: z.string(),
    reason: z.string().nullable(),
  })
  .meta({ id: 'EditionRow' });

const Settings = z.record(z.string(), z.union([z.string(), z.number(), z.boolean()]));
const RuleSchema = z
  .object({
    rule: z.string(),
    version: z.int(),
    title: z.string(),
    stage: z.string(),
    class: z.string(),
    severity: z.string(),
    says: z.string(),
    cites: z.array(z.string()),
    reads: z.array(z.string()),
    settings: Settings,
    may_be_changed: z.boolean().describe('its severity and settings; and it may be left out'),
    cases: z
      .object({ passes: z.int(), fails: z.int(), others: z.int() })
      .describe('that hold it: passing, refusing, and not applicable or not evaluated'),
  })
  .meta({ id: 'RuleOfEdition' });
const RulebookSchema = EditionRowSchema.extend({
  rules: z.array(RuleSchema),
  by: z.string(),
  changes: z.array(RuleChange),
  running_jobs: z.enum(RUNNING_JOBS).nullable(),
  impact: z.string().nullable().describe('what the preview had found when it was published'),
}).meta({ id: 'Rulebook' });
export const EditionNumber = z.coerce.number('must be a number').int().min(0).max(1_000_000);

export const today = () => new Date().toISOString().slice(0, 10);

export function editionRow<T extends { readonly summary: string }>(
  shelf: Shelf<T>,
  published: Published<T>,
) {
  const day = today();
  const state = stateOf(shelf, published, day);
  const next = shelf.editions[shelf.editions.indexOf(published) + 1];
  return {
    number: published.number,
    in_force_from: published.inForceFrom,
    summary: published.edition.summary,
    digest: published.digest,
    state,
    retired_on: state === 'retired' ? (next?.inForceFrom ?? null) : null,
    published_at: published.publishedAt,
    reason: published.reason,
  };
}

@Controller('api/rulebook')
export class RulebookController {
  constructor(
    private readonly editions: Editions,
    private readonly names: Names,
  ) {}

  @Route('GET', 'editions', {
    says: 'The published rules editions',
    who: READERS,
    gives: z.object({ editions: z.array(EditionRowSchema) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const shelf = await this.editions.rules(company.id);
    return { editions: shelf.editions.map((each) => editionRow(shelf, each)) };
  }

  @Route('GET', 'rules', {
    says: 'Every version of every rule that an edition may name, with its own settings',
    who: READERS,
    gives: z.object({ rules: z.array(RuleSchema) }),
  })
  rules() {
    const rules = [...RULE_BOOK.values()];
    return { rules: rules.map((known) => ruleOf(known, known.severity, known.settings)) };
  }

  @Route('GET', 'current', {
    says: 'The rules edition in force',
    who: READERS,
    gives: RulebookSchema,
    fails: ['not-found'],
  })
  async current(@Asking() { company }: SignedIn) {
    const shelf = await this.editions.rules(company.id);
    const published = inForce(shelf, today());
    if (!published) throw new Problem('not-found', 'No rules edition is in force.');
    return this.whole(company.id, shelf, published);
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
    return this.whole(company.id, shelf, published);
  }

  private async whole(company: string, shelf: Shelf<Edition>, published: Published<Edition>) {
    const { by, changes, runningJobs, impact, edition } = published;
    const names = await this.names.of(company, [by]);
    return {
      ...editionRow(shelf, published),
      by: names.get(by) ?? by,
      changes: changes.length > 0 ? changes : this.changesOf(shelf, published),
      running_jobs: runningJobs,
      impact: impact?.words ?? null,
      rules: rulesOf(edition),
    };
  }

  /** Of an edition that came with the product: against the one before. */
  private changesOf({ editions }: Shelf<Edition>, published: Published<Edition>) {
    const before = editions[editions.indexOf(published) - 1];
    return before ? editionDifference(before.edition, published.edition, RULE_BOOK) : [];
  }
}

const rulesOf = ({ number, entries }: Edition) =>
  entries.map(({ rule, version, severity, settings }) => {
    const known = RULE_BOOK.get(bookKey(rule, version));
    if (!known)
      throw new Error(`edition ${number} names ${rule}/${version}, which is not in the code`);
    return ruleOf(known, severity, settings);
  });

const COVERED: Readonly<Record<string, RuleCases>> = CASES;

function ruleOf(known: Rule, severity: Rule['severity'], settings: Rule['settings']) {
  const cases = COVERED[known.id];
  return {
    rule: known.id,
    version: known.version,
    severity,
    settings,
    title: known.title,
    stage: known.stage,
    class: known.class,
    says: known.says,
    cites: known.cites.map(citationText),
    reads: known.reads,
    may_be_changed: mayBeOverridden(known.class),
    cases: {
      passes: cases?.passes.length ?? 0,
      fails: cases?.refuses.length ?? 0,
      others:
        (cases?.notApplicable?.length ?? 0) +
        (cases?.unknown?.length ?? 0) +
        (cases?.withSettings?.length ?? 0),
    },
  };
}
