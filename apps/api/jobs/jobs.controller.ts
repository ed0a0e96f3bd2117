// Jobs over HTTP: open, list, read, command, rehearse.

import { Body, Controller, Param, Query, Res } from '@nestjs/common';
import { CommandBus, QueryBus } from '@nestjs/cqrs';
import type { Response } from 'express';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Command, commandSchema, Moment } from '#jobs/contract';
import { Ledgers } from '../data/ledgers.js';
import { Header } from '../http/header.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { Factors } from '../sign-off/factors.js';
import { commandId, ExecuteOnJob, type Envelope, type Executed } from './execute-on-job.js';
import { FindJobs, JobFilter } from './find-jobs.js';
import { JobNumbers } from './job-numbers.js';
import { JobAt, JobHistory, RehearseOnJob } from './read-job.js';
import { HistorySchema, JobPageSchema, JobViewSchema, RehearsalSchema } from './view-schemas.js';

export const JobId = z.uuid('must be the id of a job');
export const Moments = z.strictObject({ asOf: Moment.optional(), effective: Moment.optional() });
export const Key = z
  .string()
  .regex(/^[\x21-\x7e]{1,200}$/, 'must be 1 to 200 visible ASCII characters')
  .optional();
export const IfMatch = z
  .string()
  .regex(/^"\d{1,9}"$/, 'must be a version like "12"')
  .optional();
const { number: JobNumber, ...opened } = commandSchema('open-job').omit({ type: true }).shape;
export const OpenJob = z
  .strictObject({ ...opened, number: JobNumber.optional() })
  .meta({ id: 'OpenJob' });

export const READERS = [...STAFF, 'engineer'] as const;
const KEY_HEADER = {
  'Idempotency-Key': 'the same key with the same request is done once and answered again',
};
const CHANGES = ['not-found', 'conflict', 'stale', 'refused-by-rules', 'busy'] as const;

@Controller('api/jobs')
export class JobsController {
  constructor(
    private readonly commands: CommandBus,
    private readonly queries: QueryBus,
    private readonly numbers: JobNumbers,
    private readonly factors: Factors,
    private readonly ledgers: Ledgers,
  ) {}

  @Route('GET', '', { says: 'The job list', who: STAFF, gives: JobPageSchema })
  list(
    @Asking() asking: SignedIn,
    @Query({ schema: JobFilter }) filter: z.output<typeof JobFilter>,
  ) {
    return this.queries.execute(new FindJobs(asking.company.id, filter, filter.page, filter.size));
  }

  @Route('POST', '', {
    says: 'Open a job; without a number it gets the next one of the year',
    who: ['office', 'project-manager'],
    answers: 'created',
    headers: KEY_HEADER,
    gives: JobViewSchema,
    fails: CHANGES,
  })
  async open(
    @Asking() asking: SignedIn,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: OpenJob }) body: z.output<typeof OpenJob>,
    @Res({ passthrough: true }) response: Response,
  ) {
    const envelope = { asking, job: uuid(), seen: undefined, key: key ?? uuid(), asked: body };
    const executed = await this.numbers.withNumber(asking.company.id, body.number, (number) =>
      this.execute({ ...envelope, command: { ...body, type: 'open-job', number } }),
    );
    response.setHeader('Location', `/api/jobs/${executed.view.id}`);
    return answered(response, executed);
  }

  @Route('GET', ':id', {
    says: 'A job, now or as of a moment: what was recorded, and what was true, by then',
    who: READERS,
    gives: JobViewSchema,
  })
  async read(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Query({ schema: Moments }) at: z.output<typeof Moments>,
    @Res({ passthrough: true }) response: Response,
  ) {
    const view = await this.queries.execute(new JobAt(asking, id, moments(at)));
    response.setHeader('ETag', `"${view.version}"`);
    return view;
  }

  @Route('POST', ':id/commands', {
    says: 'One command against a job, at the version that the person saw',
    who: READERS,
    headers: { ...KEY_HEADER, 'If-Match': 'the version seen, as the ETag gave it' },
    gives: JobViewSchema,
    fails: [...CHANGES, 'wrong-stage', 'version-missing'],
  })
  async command(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) job: string,
    @Header('if-match', IfMatch) version: string | undefined,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: Command }) command: Command,
    @Res({ passthrough: true }) response: Response,
  ) {
    if (command.type === 'open-job') {
      throw new Problem('malformed', {
        faults: [{ pointer: '/type', message: 'a job is opened by POST /api/jobs' }],
      });
    }
    if (version === undefined)
      throw new Problem('version-missing', 'Send If-Match with the version you saw.');
    const seen = Number(version.slice(1, -1));
    const envelope = { asking, job, command, seen, key: key ?? uuid(), asked: command };
    const done = await this.factors.signing(
      asking,
      command,
      async () =>
        (await this.ledgers.accepted(asking.company.id, commandId(envelope))) !== undefined,
      () => this.execute(envelope),
    );
    return answered(response, done);
  }

  @Route('POST', ':id/rehearsals', {
    says: 'What the rules would say to a command, and what it would reopen; nothing is recorded',
    who: READERS,
    gives: RehearsalSchema,
  })
  rehearse(
    @Asking() asking: SignedIn,
    @Param('id', { schema: JobId }) id: string,
    @Body({ schema: Command }) command: Command,
  ) {
    return this.queries.execute(new RehearseOnJob(asking, id, command));
  }

  @Route('GET', ':id/history', {
    says: 'Every entry of a job, in order',
    who: READERS,
    gives: HistorySchema,
  })
  async history(@Asking() asking: SignedIn, @Param('id', { schema: JobId }) id: string) {
    return { entries: await this.queries.execute(new JobHistory(asking, id)) };
  }

  private execute(envelope: Envelope): Promise<Executed> {
    return this.commands.execute(new ExecuteOnJob(envelope));
  }
}

export const moments = ({ asOf, effective }: z.output<typeof Moments>) => ({
  ...(asOf === undefined ? {} : { recordedAt: asOf }),
  ...(effective === undefined ? {} : { effectiveAt: effective }),
});

function answered(response: Response, { view, listsAt }: Executed) {
  response.setHeader('ETag', `"${view.version}"`);
  response.setHeader('Lists-At', String(listsAt));
  return view;
}
