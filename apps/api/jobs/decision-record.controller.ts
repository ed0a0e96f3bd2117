// The decision record of a job: why each gauge was chosen, as of any moment.

import { Controller, Param, Query } from '@nestjs/common';
import { QueryBus } from '@nestjs/cqrs';
import { z } from 'zod';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId, Moments, moments, READERS } from './jobs.controller.js';
import { JobRecord } from './read-job.js';

const DecisionRecordSchema = z.looseObject({
  document: z.literal('decision-record'),
  job: z.record(z.string(), z.string().nullable()),
  as_of: z.object({ recorded: z.string(), version: z.int() }),
  stands_at: z.string(),
  surfaces: z.array(z.record(z.string(), z.unknown())),
  timeline: z.array(z.record(z.string(), z.unknown())),
  cautions: z.array(z.string()),
}).meta({ id: 'DecisionRecord' });

@Controller('api/jobs')
export class DecisionRecordController {
  constructor(private readonly queries: QueryBus) {}

  @Route('GET', ':id/decision-record', {
    says: 'What was chosen at each stage, by whom, on which facts, and why not otherwise',
    who: READERS,
    gives: DecisionRecordSchema,
  })
  record(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Query({ schema: Moments }) at: z.output<typeof Moments>,
  ) {
    return this.queries.execute(new JobRecord(asking, id, moments(at)));
  }
}
