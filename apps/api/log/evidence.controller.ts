// The evidence of a job as a file, and what it was for.

import { Controller, Param, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { Words } from '#jobs/contract';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId } from '../jobs/jobs.controller.js';
import { Evidence } from './evidence.js';
import { readerOf, Readings } from './readings.js';

const Why = z.strictObject({ why: Words });

@Controller('api/jobs')
export class EvidenceController {
  constructor(
    private readonly evidence: Evidence,
    private readonly readings: Readings,
  ) {}

  @Route('GET', ':id/evidence.zip', {
    says: 'Entries, papers and documents of a job with their proofs; the export is noted with its reason',
    who: ['warranty-reviewer', 'project-manager', 'administrator'],
    gives: 'application/zip',
    fails: ['conflict'],
  })
  async bundle(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Query({ schema: Why }) { why }: z.output<typeof Why>,
    @Res() response: Response,
  ): Promise<void> {
    const { number, bytes } = await this.evidence.ofJob(asking.company.id, job);
    await this.readings.exported(readerOf(asking), 'evidence', job, why);
    response.setHeader('Content-Type', 'application/zip');
    const file = number.replace(/[^A-Za-z0-9._-]+/g, '_');
    response.setHeader('Content-Disposition', `attachment; filename="evidence-${file}.zip"`);
    response.end(bytes);
  }
}
