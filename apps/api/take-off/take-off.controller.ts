// The take-off of a surface: what was drawn, what was counted, and the lines of an order it makes.
// It is recorded by the command record-take-off, and tried by a rehearsal of it.

import { Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { takeOffSheet, type TakeOffSheet } from '#jobs';
import { Id, OrderLine } from '#jobs/contract';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Contexts } from '../jobs/contexts.js';
import { Jobs } from '../jobs/fold.js';
import { JobId } from '../jobs/jobs.controller.js';
import { Problem } from '../problems.js';
import { TakeOffSummary } from '../jobs/view-schemas.js';

const recorded = z.record(z.string(), z.unknown());
const TakeOffSchema = TakeOffSummary.extend({
  asked: recorded.describe('what was drawn, as record-take-off takes it'),
  result: recorded,
  lines: z.array(OrderLine).describe('with prices where the catalogue in force has them'),
  causes: z.array(recorded),
}).meta({ id: 'TakeOffSheet' });

@Controller('api/jobs')
export class TakeOffController {
  constructor(
    private readonly jobs: Jobs,
    private readonly contexts: Contexts,
  ) {}

  @Route('GET', ':id/take-offs/:surface', {
    says: 'The newest take-off of a surface, and whether it still counts',
    who: STAFF,
    gives: TakeOffSchema,
  })
  async read(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Param('surface', { schema: Id }) surface: string,
  ): Promise<TakeOffSheet> {
    const [job, { catalogue }] = await Promise.all([
      this.jobs.load(asking.company.id, id),
      this.contexts.of(asking),
    ]);
    const sheet = takeOffSheet(job, surface, catalogue);
    if (!sheet) throw new Problem('not-found', 'There is no take-off of such a surface.');
    return sheet;
  }
}
