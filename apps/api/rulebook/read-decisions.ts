// What a preview asks about, read from the record bit by bit: the surfaces that are open, or every
// stage that was ever confirmed. Memory holds one page or one job at a time.

import {
  decidedBy,
  decidedIn,
  evolve,
  initial,
  isStageEvent,
  jobRow,
  STAGE_EVENT,
  type Decided,
  type Job,
  type PastEvent,
  type Previewed,
} from '#jobs';
import { AFTER_STAGES } from '#jobs/contract';
import { createPostgresLedger, type CompanyPool, type Recorded } from '#ledger';
import { pastEvent } from '../jobs/job-stream.js';

/** Of a job as tables show it; surfaces by their id. */
export interface JobNames {
  readonly number: string;
  readonly name: string;
  readonly surfaces: Readonly<Record<string, string>>;
}
export interface Read {
  readonly previewed: readonly Previewed[];
  /** How much of it is read. */
  readonly read: number;
  readonly of: number;
}
export interface Decisions {
  readonly names: ReadonlyMap<string, JobNames>;
  /** Up to which position of the record they are read. */
  readonly position: number;
  readonly pages: AsyncIterable<Read>;
}

const PAGE = 100;

/** Surfaces of jobs with nothing ordered yet, each with all of its stages that stand. */
export async function openSurfaces(pool: CompanyPool, company: string): Promise<Decisions> {
  const ledger = createPostgresLedger({ pool });
  const ids = await openJobs(pool, company);
  const names = new Map<string, JobNames>();
  const { pos } = await ledger.head(company);
  async function* pages(): AsyncGenerator<Read> {
    for (const [i, id] of ids.entries()) {
      const events = await ledger.readStream(company, `job/${id}`);
      const job = events.reduce((state, event) => evolve(state, pastEvent(event)), initial(id));
      names.set(id, namesOf(job));
      const open = isOpen(jobRow(job).stage);
      yield { previewed: open ? bySurface(decidedIn(job)) : [], read: i + 1, of: ids.length };
    }
  }
  return { names, position: pos, pages: pages() };
}

const namesOf = ({ number, name, surfaces }: Job): JobNames => ({
  number,
  name,
  surfaces: Object.fromEntries(Object.values(surfaces).map((each) => [each.id, each.name])),
});

function bySurface(stages: readonly Decided[]): readonly (readonly Decided[])[] {
  const surfaces = new Map<string, Decided[]>();
  for (const each of stages) {
    const own = surfaces.get(each.surface);
    if (own) own.push(each);
    else surfaces.set(each.surface, [each]);
  }
  return [...surfaces.values()];
}

/** Before the order, or with a change order open. */
const isOpen = (stage: string): boolean =>
  stage === 'order' || !(AFTER_STAGES as readonly string[]).includes(stage);

/** Of the record itself: a list may be a little behind. Jobs ordered and left so are not read. */
async function openJobs(pool: CompanyPool, company: string): Promise<readonly string[]> {
  return pool.use(company, async (client) => {
    const { rows } = await client.query<{ id: string }>(
      `SELECT o.stream_id AS id FROM ledger.event o
       WHERE o.log_id = $1 AND o.type = 'job-opened/1' AND (
         NOT EXISTS (SELECT FROM ledger.event e WHERE e.log_id = o.log_id
           AND e.stream_id = o.stream_id AND e.type = 'order-issued/1')
         OR EXISTS (SELECT FROM ledger.event e WHERE e.log_id = o.log_id
           AND e.stream_id = o.stream_id AND e.type = 'change-order-opened/1'))
       ORDER BY o.pos`,
      [company],
    );
    return rows.map(({ id }) => id.slice('job/'.length));
  });
}

const NAMED = ['job-opened/1', 'job-described/1', 'surface-added/1'];
const TYPES = [...NAMED, ...Object.values(STAGE_EVENT)];

/** Every confirmation of a stage in the order of the record, also those that were changed later. */
export async function pastDecisions(pool: CompanyPool, company: string): Promise<Decisions> {
  const ledger = createPostgresLedger({ pool });
  const { pos: head } = await ledger.head(company);
  const names = new Map<string, JobNames>();
  async function* pages(): AsyncGenerator<Read> {
    let after = 0;
    while (after < head) {
      const events = await pageOf(pool, company, after, head);
      for (const event of events) nameJob(names, event);
      const last = events.at(-1);
      after = events.length === PAGE && last ? last.pos : head;
      const past = events.filter((event) => isStageEvent(pastEvent(event)));
      yield { previewed: past.map(asDecided), read: after, of: head };
    }
  }
  return { names, position: head, pages: pages() };
}

const jobOf = ({ stream }: Recorded): string => stream.slice('job/'.length);

function asDecided(event: Recorded): Decided {
  const past: PastEvent = pastEvent(event);
  if (!isStageEvent(past)) throw new Error(`${event.type} confirms no stage`);
  return decidedBy(jobOf(event), past);
}

function nameJob(names: Map<string, JobNames>, event: Recorded): void {
  const past = pastEvent(event);
  const id = jobOf(event);
  const known = names.get(id) ?? { number: '', name: '', surfaces: {} };
  if (past.type === 'job-opened/1')
    names.set(id, { ...known, number: past.data.number, name: past.data.name });
  if (past.type === 'job-described/1' && past.data.name !== undefined)
    names.set(id, { ...known, name: past.data.name });
  if (past.type === 'surface-added/1') {
    const { surface, name } = past.data;
    names.set(id, { ...known, surfaces: { ...known.surfaces, [surface]: name } });
  }
}

/** Only the kinds of entries that are needed, so that the rest is not read at all. */
async function pageOf(
  pool: CompanyPool,
  company: string,
  after: number,
  upTo: number,
): Promise<readonly Recorded[]> {
  return pool.use(company, async (client) => {
    const { rows } = await client.query<{ body: string }>(
      `SELECT body FROM ledger.event
       WHERE log_id = $1 AND pos > $2 AND pos <= $3 AND type = ANY($4) ORDER BY pos LIMIT ${PAGE}`,
      [company, after, upTo, TYPES],
    );
    return rows.map(({ body }) => JSON.parse(body) as Recorded);
  });
}
