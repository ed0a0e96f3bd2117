// What can be read of one job: as it stands or stood, its history, its decision record, and what
// the rules would say to a command.

import { QueryHandler, Query as Message, type IQueryHandler } from '@nestjs/cqrs';
import {
  decisionRecord,
  fastenerNames,
  jobView,
  rehearse,
  surfacesOf,
  wordsFor,
  type Command,
  type DecisionRecord,
  type JobView,
  type Rehearsal,
} from '#jobs';
import type { SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { Contexts } from './contexts.js';
import { Jobs, type AsOf } from './fold.js';
import { pastEvent } from './job-stream.js';
import { refuseUnseen } from './visible.js';
import { Names } from '../people/names.js';
import { Editions } from '../rulebook/editions.js';

export class JobAt extends Message<JobView> {
  constructor(
    readonly asking: SignedIn,
    readonly job: string,
    readonly at: AsOf,
  ) {
    super();
  }
}

@QueryHandler(JobAt)
export class JobAtHandler implements IQueryHandler<JobAt> {
  constructor(
    private readonly jobs: Jobs,
    private readonly contexts: Contexts,
  ) {}

  async execute({ asking, job: id, at }: JobAt): Promise<JobView> {
    const [job, { catalogue }] = await Promise.all([
      this.jobs.asOf(asking.company.id, id, at),
      this.contexts.of(asking),
    ]);
    if (job.version === 0) throw noJob();
    refuseUnseen(await this.jobs.load(asking.company.id, id), asking);
    return jobView(job, catalogue);
  }
}

export interface HistoryEntry {
  readonly version: number;
  readonly pos: number;
  readonly id: string;
  readonly type: string;
  readonly words: string;
  readonly by: { readonly name: string; readonly role: string };
  readonly recordedAt: string;
  readonly effectiveAt: string;
  readonly surface?: readonly string[];
  readonly data: object;
}

export class JobHistory extends Message<readonly HistoryEntry[]> {
  constructor(
    readonly asking: SignedIn,
    readonly job: string,
  ) {
    super();
  }
}

@QueryHandler(JobHistory)
export class JobHistoryHandler implements IQueryHandler<JobHistory> {
  constructor(
    private readonly jobs: Jobs,
    private readonly names: Names,
  ) {}

  async execute({ asking, job: id }: JobHistory): Promise<readonly HistoryEntry[]> {
    const company = asking.company.id;
    const events = await this.jobs.events(company, id);
    if (events.length === 0) throw noJob();
    refuseUnseen(await this.jobs.load(company, id), asking);
    const names = await this.names.of(
      company,
      events.map(({ by }) => by.person),
    );
    return events.map((event) => {
      const surfaces = surfacesOf(pastEvent(event));
      return {
        version: event.version,
        pos: event.pos,
        id: event.id,
        type: event.type,
        words: wordsFor(pastEvent(event)),
        by: { name: names.get(event.by.person) ?? event.by.person, role: event.by.role },
        recordedAt: event.recordedAt,
        effectiveAt: event.effectiveAt,
        ...(surfaces === 'all' || surfaces.length === 0 ? {} : { surface: surfaces }),
        data: event.data as object,
      };
    });
  }
}

export class JobRecord extends Message<DecisionRecord> {
  constructor(
    readonly asking: SignedIn,
    readonly job: string,
    readonly at: AsOf,
  ) {
    super();
  }
}

@QueryHandler(JobRecord)
export class JobRecordHandler implements IQueryHandler<JobRecord> {
  constructor(
    private readonly jobs: Jobs,
    private readonly names: Names,
    private readonly editions: Editions,
  ) {}

  async execute({ asking, job, at }: JobRecord): Promise<DecisionRecord> {
    const company = asking.company.id;
    const events = await this.jobs.events(company, job, at);
    if (events.length === 0) throw noJob();
    refuseUnseen(await this.jobs.load(company, job), asking);
    const past = events.map(pastEvent);
    const ids = [...new Set(JSON.stringify(past).match(UUIDS) ?? [])];
    const [names, { editions }] = await Promise.all([
      this.names.of(company, ids),
      this.editions.catalogue(company),
    ]);
    const fasteners = fastenerNames(editions.map(({ edition }) => edition));
    return decisionRecord(job, past, { ...fasteners, ...Object.fromEntries(names) });
  }
}

const UUIDS = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

export class RehearseOnJob extends Message<Rehearsal> {
  constructor(
    readonly asking: SignedIn,
    readonly job: string,
    readonly command: Command,
  ) {
    super();
  }
}

@QueryHandler(RehearseOnJob)
export class RehearseOnJobHandler implements IQueryHandler<RehearseOnJob> {
  constructor(
    private readonly jobs: Jobs,
    private readonly contexts: Contexts,
  ) {}

  async execute({ asking, job: id, command }: RehearseOnJob): Promise<Rehearsal> {
    const [job, context] = await Promise.all([
      this.jobs.load(asking.company.id, id),
      this.contexts.for(asking, command),
    ]);
    if (job.version === 0) throw noJob();
    refuseUnseen(job, asking);
    return rehearse(job, command, context);
  }
}

const noJob = () => new Problem('not-found', 'There is no such job.');
