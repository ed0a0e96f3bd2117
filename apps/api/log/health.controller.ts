// Whether the service works, how far its lists are, whether the record held when it was last verified,
// and what the service can do.

import { Controller, Req } from '@nestjs/common';
import type { Request } from 'express';
import { z } from 'zod';
import { clockStanding } from '../data/clock-steps.js';
import { FrontDoor } from '../data/front-door.js';
import { Ledgers } from '../data/ledgers.js';
import { Settings } from '../data/settings.js';
import { cookie } from '../http/session-guard.js';
import { OpenApiDocument } from '../http/openapi.js';
import { Route } from '../http/route.js';
import { JOB_LIST } from '../jobs/job-list.js';
import { Sessions } from '../people/sessions.js';
import { Problem } from '../problems.js';
import { TimeStamps } from './time-stamps.js';
import { TimeStampSchema } from './time-words.js';
import { VerificationRuns } from './verification-runs.js';
import { VerificationSchema, verificationView } from './verification-words.js';

const HealthSchema = z
  .object({
    ok: z.boolean(),
    version: z.string(),
    lists: z
      .array(z.object({ name: z.string(), pos: z.int(), head: z.int() }))
      .describe('of the company that asks; empty for anyone else'),
    clock: z
      .object({
        steps: z.int(),
        last: z.object({
          clock: z.string().describe('what the clock showed'),
          after: z.string().describe('the time of the entry before'),
          behind_ms: z.int(),
          position: z.int().describe('of the entry that tells of it'),
        }),
      })
      .nullable()
      .describe('times that the clock was set back behind the record, of the company that asks'),
    verification: VerificationSchema.nullable().describe('of the company that asks'),
    time_stamp: TimeStampSchema.nullable().describe('the last one, of the company that asks'),
  })
  .meta({ id: 'Health' });

@Controller('api')
export class HealthController {
  constructor(
    private readonly settings: Settings,
    private readonly door: FrontDoor,
    private readonly ledgers: Ledgers,
    private readonly sessions: Sessions,
    private readonly runs: VerificationRuns,
    private readonly times: TimeStamps,
    private readonly document: OpenApiDocument,
  ) {}

  @Route('GET', 'health', {
    says: 'Whether the service works',
    who: 'anyone',
    gives: HealthSchema,
    fails: ['busy'],
  })
  async health(@Req() request: Request) {
    if (!(await this.door.ready().catch(() => false)))
      throw new Problem('busy', 'The database does not answer.');
    const token = cookie(request);
    const asking = token === undefined ? undefined : await this.sessions.find(token);
    return {
      ok: true,
      version: this.settings.version,
      lists: asking ? await this.lists(asking.company.id) : [],
      clock: asking ? await this.clock(asking.company.id) : null,
      verification: asking
        ? verificationView(await this.runs.standing(asking.company.id), Date.now())
        : null,
      time_stamp: asking ? await this.times.last(asking.company.id) : null,
    };
  }

  @Route('GET', 'openapi.json', {
    says: 'This interface as OpenAPI 3.1',
    who: 'anyone',
    gives: z.record(z.string(), z.unknown()),
  })
  openapi() {
    return this.document.get();
  }

  private async clock(company: string) {
    const found = await clockStanding(this.ledgers.ledger, company);
    if (!found) return null;
    const { clock, after, behindMs, pos } = found.last;
    return { steps: found.steps, last: { clock, after, behind_ms: behindMs, position: pos } };
  }

  private async lists(company: string) {
    const [{ pos }, head] = await Promise.all([
      this.ledgers.liveList(company, JOB_LIST),
      this.ledgers.ledger.head(company),
    ]);
    return [{ name: JOB_LIST, pos, head: head.pos }];
  }
}
