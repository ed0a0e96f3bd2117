// Import of jobs: check a file, then confirm the same file; nothing is written before, and then all of
// it or nothing.

import { Body, Controller } from '@nestjs/common';
import { z } from 'zod';
import { Digest } from '#jobs/contract';
import { Header } from '../http/header.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { ImportJobs } from './import-jobs.js';

const WHO = ['office', 'project-manager'] as const;
const CheckedSchema = z
  .object({
    digest: z.string().describe('to confirm this file with'),
    jobs: z.int().describe('rows that can be taken'),
    faults: z.array(z.object({ row: z.int(), column: z.string(), message: z.string() })),
  })
  .meta({ id: 'CheckedImport' });
const CheckedDigest = z.preprocess((value) => value ?? '', Digest);

@Controller('api/jobs/import')
export class ImportController {
  constructor(private readonly jobs: ImportJobs) {}

  @Route('POST', 'check', {
    says: 'Check a CSV file of jobs: every bad row is named, nothing is written',
    who: WHO,
    takes: ['text/csv'],
    gives: CheckedSchema,
  })
  async check(@Asking() asking: SignedIn, @Body() body: unknown) {
    const { digest, jobs, faults } = await this.jobs.check(asking, csv(body));
    return { digest, jobs, faults };
  }

  @Route('POST', '', {
    says: 'Import a checked CSV file: all of its jobs, or none',
    who: WHO,
    answers: 'created',
    takes: ['text/csv'],
    headers: { 'X-Checked-Digest': 'the digest that checking this file gave' },
    gives: z.object({ jobs: z.int(), listsAt: z.int() }),
    fails: ['conflict'],
  })
  import(
    @Asking() asking: SignedIn,
    @Header('x-checked-digest', CheckedDigest) checked: string,
    @Body() body: unknown,
  ) {
    return this.jobs.confirm(asking, csv(body), checked);
  }
}

function csv(body: unknown): string {
  if (typeof body === 'string' && body.trim() !== '') return body;
  throw new Problem('malformed', {
    faults: [{ pointer: '', message: 'send the file as text/csv' }],
  });
}
