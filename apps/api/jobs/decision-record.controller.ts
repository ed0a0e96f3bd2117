// The decision record of a job: why each gauge was chosen, as of any moment.

import { createHash } from 'node:crypto';
import { Controller, Param, Query, Res } from '@nestjs/common';
import { QueryBus } from '@nestjs/cqrs';
import type { Response } from 'express';
import { z } from 'zod';
import { canonical } from '#ledger';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { readerOf, Readings } from '../log/readings.js';
import { JobId, Moments, moments, READERS } from './jobs.controller.js';
import { JobRecord } from './read-job.js';

const DecisionRecordSchema = z
  .looseObject({
    document: z.literal('decision-record'),
    job: z.record(z.string(), z.string().nullable()),
    as_of: z.object({ recorded: z.string(), version: z.int() }),
    stands_at: z.string(),
    surfaces: z.array(z.record(z.string(), z.unknown())),
    timeline: z.array(z.record(z.string(), z.unknown())),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'DecisionRecord' });

const OnPaper = Moments.extend({
  size: z.enum(['letter', 'a4']).default('letter'),
  why: z.string().trim().max(500).optional().describe('noted with the export'),
});

@Controller('api/jobs')
export class DecisionRecordController {
  constructor(
    private readonly queries: QueryBus,
    private readonly readings: Readings,
  ) {}

  @Route('GET', ':id/decision-record', {
    says: 'What was chosen at each stage, by whom, on which facts, and why not otherwise',
    who: READERS,
    gives: DecisionRecordSchema,
  })
  async record(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Query({ schema: Moments }) at: z.output<typeof Moments>,
  ) {
    const record = await this.queries.execute(new JobRecord(asking, id, moments(at)));
    await this.readings.read(readerOf(asking), 'decision-record', [id]);
    return record;
  }

  @Route('GET', ':id/decision-record.pdf', {
    says: 'The decision record on paper, with its canonical JSON attached',
    who: READERS,
    gives: 'application/pdf',
  })
  async pdf(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Query({ schema: OnPaper }) { size, why, ...at }: z.output<typeof OnPaper>,
    @Res() response: Response,
  ): Promise<void> {
    const record = await this.queries.execute(new JobRecord(asking, id, moments(at)));
    await this.readings.exported(readerOf(asking), 'decision-record-print', id, why);
    const json = canonical(record);
    const digest = createHash('sha256').update(json).digest('hex');
    // Read in when a paper is asked for: the typesetter would make every start slower.
    const { renderDecisionRecord } = await import('#documents');
    const bytes = await renderDecisionRecord(record, { size, json, digest });
    response.setHeader('Content-Type', 'application/pdf');
    response.setHeader(
      'Content-Disposition',
      `inline; filename="decision-record-${record.job.number}.pdf"`,
    );
    response.end(Buffer.from(bytes));
  }
}
