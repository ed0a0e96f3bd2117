// The one way a job changes: load and fold, decide, append at the version decided on, and wait a
// little for the lists. Every route that changes a job ends here.

import { CommandHandler, Command as Message, type ICommandHandler } from '@nestjs/cqrs';
import {
  decide,
  jobView,
  roleFor,
  type Command,
  type Job,
  type JobEvent,
  type JobView,
} from '#jobs';
import type { AppendRequest, NewEvent, StreamAppend } from '#ledger';
import { digestOf, Ledgers } from '../data/ledgers.js';
import { Signing } from '../data/signing.js';
import type { Acting } from '../http/signed-in.js';
import { issuedBy } from '../papers/paper-kinds.js';
import { Papers } from '../papers/papers.js';
import { Problem, refused } from '../problems.js';
import { ReminderMail } from '../reminders/reminder-mail.js';
import { Changes } from './changes.js';
import { Contexts } from './contexts.js';
import { Jobs } from './fold.js';
import { JOB_LIST } from './job-list.js';
import { jobStream } from './job-stream.js';
import { References } from './references.js';
import { refuseUnseen } from './visible.js';

export interface Executed {
  readonly view: JobView;
  readonly listsAt: number;
}

export interface Envelope {
  readonly asking: Acting;
  readonly job: string;
  readonly command: Command;
  /** The version that the person saw; undefined for a new job. */
  readonly seen: number | undefined;
  /** Of the caller, unique for the person. */
  readonly key: string;
  /** What the caller sent, without what the service added: the key stands for this alone. */
  readonly asked: unknown;
}

export class ExecuteOnJob extends Message<Executed> {
  constructor(readonly envelope: Envelope) {
    super();
  }
}

const LISTS_WAIT_MS = 2_000;
const TRIES = 5;

@CommandHandler(ExecuteOnJob)
export class ExecuteOnJobHandler implements ICommandHandler<ExecuteOnJob> {
  constructor(
    private readonly jobs: Jobs,
    private readonly ledgers: Ledgers,
    private readonly contexts: Contexts,
    private readonly changes: Changes,
    private readonly references: References,
    private readonly papers: Papers,
    private readonly signing: Signing,
    private readonly mail: ReminderMail,
  ) {}

  async execute({ envelope }: ExecuteOnJob): Promise<Executed> {
    for (let attempt = 1; attempt <= TRIES; attempt++) {
      const done = await this.attempt(envelope);
      if (done) return done;
    }
    throw new Problem('busy', {
      detail: 'Others are changing this job just now; try again.',
      retryAfter: 1,
    });
  }

  /** undefined: somebody else was first; look and decide again. */
  private async attempt(envelope: Envelope): Promise<Executed | undefined> {
    const { asking, job: id, command } = envelope;
    const company = asking.company.id;
    const [job, context] = await Promise.all([
      this.jobs.load(company, id),
      this.contexts.for(asking, command),
    ]);
    if (job.version > 0) refuseUnseen(job, asking);
    const { command: known, refusals } = await this.references.complete(asking, command, job);
    const decision = decide(job, known, context);
    const stale = await this.changes.since(company, job, envelope.seen, known);
    const all = [...refusals, ...(decision.ok ? [] : decision.refusals), ...stale.refusals];
    if (all.length > 0 || !decision.ok) {
      const before = await this.repeated(envelope);
      if (before) return before;
      throw refused(all, stale.since.length > 0 ? { since: stale.since } : {});
    }
    const result = await this.ledgers.append(
      this.request({ ...envelope, command: known }, job, decision.events),
    );
    if (result.kind === 'command-reused') throw keyUsed();
    if (result.kind === 'wrong-version') return numberTaken(result.stream);
    await this.afterwards(company, id, decision.events, result.last);
    return this.answer(asking, jobIn(result.versions) ?? id, result.last);
  }

  /** Papers that the entries issue are recorded, a sign-off gets its checkpoint, who is asked gets mail. */
  private async afterwards(
    company: string,
    id: string,
    events: readonly JobEvent[],
    pos: number,
  ): Promise<void> {
    const issued = events.flatMap((event) => issuedBy(event) ?? []);
    await this.papers.recordAfter(company, id, issued);
    if (events.some(({ type }) => type.startsWith('sign-off-'))) this.signing.soon(company);
    if (events.some(({ type }) => type === 'sign-off-requested/1')) this.mail.soon(company, pos);
  }

  private request(envelope: Envelope, job: Job, events: readonly JobEvent[]): AppendRequest {
    const { asking, command } = envelope;
    const role = roleFor(command.type, asking.roles) ?? asking.roles[0] ?? '';
    const streams: StreamAppend[] = [
      {
        stream: jobStream(job.id),
        expectedVersion: job.version,
        events: events.map((each) => newEvent(each, command)),
      },
    ];
    if (command.type === 'open-job') {
      const taken = { type: 'job-number-taken/1', data: { job: job.id } };
      streams.push({ stream: numberStream(command.number), expectedVersion: 0, events: [taken] });
    }
    return {
      log: asking.company.id,
      by: { person: asking.person.id, role },
      command: { id: commandId(envelope), digest: commandDigest(envelope) },
      streams,
    };
  }

  /** The answer to the same command given before, whatever happened since. */
  private async repeated(envelope: Envelope): Promise<Executed | undefined> {
    const company = envelope.asking.company.id;
    const before = await this.ledgers.accepted(company, commandId(envelope));
    if (!before) return undefined;
    if (before.digest !== commandDigest(envelope)) throw keyUsed();
    return this.answer(envelope.asking, jobIn(before.versions) ?? envelope.job, before.last);
  }

  private async answer(asking: Acting, id: string, pos: number): Promise<Executed> {
    const company = asking.company.id;
    const [job, { catalogue }, listsAt] = await Promise.all([
      this.jobs.load(company, id),
      this.contexts.of(asking),
      this.ledgers.ledger.waitFor(company, JOB_LIST, pos, LISTS_WAIT_MS),
    ]);
    return { view: jobView(job, catalogue), listsAt };
  }
}

/** A key belongs to its person: another's cannot meet it. */
export const commandId = ({ asking, key }: Pick<Envelope, 'asking' | 'key'>): string =>
  `${asking.person.id}/${key}`;

/** A new job's id is the service's own, not part of what was asked. */
const commandDigest = ({ command, job, asked }: Envelope): string =>
  digestOf({ job: command.type === 'open-job' ? null : job, asked });

export const numberStream = (number: string): string => `job-number/${number}`;

function numberTaken(stream: string): undefined {
  if (!stream.startsWith('job-number/')) return undefined;
  const number = stream.slice('job-number/'.length);
  throw new Problem('conflict', { detail: `There is a job ${number} already.`, taken: true });
}

const jobIn = (versions: Readonly<{ [stream: string]: number }>): string | undefined =>
  Object.keys(versions)
    .find((stream) => stream.startsWith('job/'))
    ?.slice('job/'.length);

const keyUsed = () => new Problem('conflict', 'This Idempotency-Key was used for something else.');

function newEvent({ type, data }: JobEvent, command: Command): NewEvent {
  const effectiveAt = command.type === 'record-facts' ? command.effectiveAt : undefined;
  return { type, data, ...(effectiveAt === undefined ? {} : { effectiveAt }) };
}
