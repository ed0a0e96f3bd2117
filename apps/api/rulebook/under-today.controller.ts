// What the rules edition in force today would say of the decisions of a job, on the facts recorded
// with them: a separate answer with its own label, never a correction of the record.

import { Controller, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { decidedIn, underAnother, type Shelf } from '#jobs';
import { ANSWERS } from '#jobs/contract';
import { RULE_BOOK, type Edition } from '#rules';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Jobs } from '../jobs/fold.js';
import { JobId, Moments, moments, READERS } from '../jobs/jobs.controller.js';
import { refuseUnseen } from '../jobs/visible.js';
import { Problem } from '../problems.js';
import { Editions, inForce } from './editions.js';
import { today } from './rulebook.controller.js';

const UnderTodaySchema = z
  .object({
    label: z.string(),
    edition: z.int(),
    in_force_from: z.string(),
    decisions: z.array(
      z.object({
        surface: z.string(),
        surface_name: z.string(),
        stage: z.string(),
        own_edition: z.int(),
        answer: z.enum(ANSWERS),
        before: z.string(),
        after: z.string(),
        words: z.string(),
        rules: z.array(z.string()),
      }),
    ),
  })
  .meta({ id: 'UnderToday' });

@Controller('api/jobs')
export class UnderTodayController {
  constructor(
    private readonly jobs: Jobs,
    private readonly editions: Editions,
  ) {}

  @Route('GET', ':id/under-today', {
    says: "What today's rules edition would say of a job's decisions: apart from the record",
    who: READERS,
    gives: UnderTodaySchema,
  })
  async underToday(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Query({ schema: Moments }) at: z.output<typeof Moments>,
  ) {
    const company = asking.company.id;
    const job = await this.jobs.asOf(company, id, moments(at));
    if (job.version === 0) throw new Problem('not-found', 'There is no such job.');
    refuseUnseen(await this.jobs.load(company, id), asking);
    const { shelf, current } = await this.shelfOf(company);
    return {
      label: `Under edition ${current.number}, in force today. The decisions stand under the editions they name.`,
      edition: current.number,
      in_force_from: current.in_force_from,
      decisions: decidedIn(job).map((decided) => {
        const { answer, before, after, why, rules } = underAnother(decided, current, shelf);
        return {
          surface: decided.surface,
          surface_name: job.surfaces[decided.surface]?.name ?? decided.surface,
          stage: decided.stage,
          own_edition: decided.rules_edition.number,
          answer,
          before,
          after,
          words: why,
          rules,
        };
      }),
    };
  }

  private async shelfOf(company: string): Promise<{ shelf: Shelf; current: Edition }> {
    const [rules, catalogues] = await Promise.all([
      this.editions.rules(company),
      this.editions.catalogue(company),
    ]);
    const current = inForce(rules, today());
    if (!current) throw new Problem('not-found', 'No rules edition is in force.');
    const shelf: Shelf = {
      book: RULE_BOOK,
      rules: (number) => rules.editions.find((each) => each.number === number),
      catalogue: (number) => catalogues.editions.find((each) => each.number === number),
    };
    return { shelf, current: current.edition };
  }
}
