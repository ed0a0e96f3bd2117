// Verification of the company's whole record: what was found, and a run on request; and the figures
// by which a watch over the service hears the alarm.

import { Controller, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { LogDoor } from './log-door.js';
import { VerificationRuns } from './verification-runs.js';
import { RunsSchema, runView, VerificationSchema, verificationView } from './verification-words.js';
import { VerifyLogs } from './verify-logs.js';

const Last = z.strictObject({ limit: z.coerce.number().int().min(1).max(400).default(30) });

@Controller('api')
export class VerificationsController {
  constructor(
    private readonly runs: VerificationRuns,
    private readonly job: VerifyLogs,
    private readonly door: LogDoor,
  ) {}

  @Route('GET', 'log/verifications', {
    says: 'Runs of the verification of the whole record, newest first',
    who: ['administrator', 'warranty-reviewer'],
    gives: RunsSchema,
  })
  async list(
    @Asking() { company }: SignedIn,
    @Query({ schema: Last }) { limit }: z.output<typeof Last>,
  ) {
    return { runs: (await this.runs.last(company.id, limit)).map(runView) };
  }

  @Route('POST', 'log/verifications', {
    says: 'Verify the whole record now; a run that was begun already is that one',
    who: ['administrator', 'warranty-reviewer'],
    answers: 'created',
    gives: VerificationSchema,
  })
  async verify(@Asking() asking: SignedIn) {
    await this.job.ask(asking);
    return verificationView(await this.runs.standing(asking.company.id), Date.now());
  }

  @Route('GET', 'metrics', {
    says: 'Figures for a watch over the service, in the text form of Prometheus; no company is named',
    who: 'anyone',
    gives: 'text/plain',
    fails: ['busy'],
  })
  async metrics(@Res() response: Response): Promise<void> {
    const { damaged, never, oldestSeconds } = await this.door.summary();
    response.setHeader('Content-Type', 'text/plain; version=0.0.4; charset=utf-8');
    response.end(
      [
        ...gauge('gauge_ledger_logs_damaged', 'Logs whose last verification found damage', damaged),
        ...gauge('gauge_ledger_logs_never_verified', 'Logs that were never verified', never),
        ...(oldestSeconds === null
          ? []
          : gauge(
              'gauge_ledger_verification_age_seconds',
              'Since the oldest of the logs’ last verifications',
              Math.round(oldestSeconds),
            )),
        '',
      ].join('\n'),
    );
  }
}

const gauge = (name: string, help: string, value: number): readonly string[] => [
  `# HELP ${name} ${help}`,
  `# TYPE ${name} gauge`,
  `${name} ${value}`,
];
