// The list of the office's day: what falls due in each job, how long each stage lasted and on whom it
// waited, how often rules were set aside. Made from events alone, one after the other.

import {
  CONFIRMED_STAGES,
  evolve,
  fallsDue,
  initial,
  jobRow,
  STAGE_EVENT,
  type Job,
  type PastEvent,
} from '#jobs';
import type { Ledger, List } from '#ledger';
import { jobStream, pastEvent } from '../jobs/job-stream.js';

/** The name that its checkpoint stands under. */
export const OFFICE_LIST = 'office';
const JOB = 'job/';
const KEPT = 2_000;
const TABLES = ['reminder', 'stage_spell', 'stage_confirmation'] as const;

export function officeList(ledger: Ledger): List {
  const kept = new Map<string, Followed>();
  const upTo = async (log: string, id: string, version: number): Promise<Followed> => {
    const known = kept.get(`${log} ${id}`);
    if (known?.job.version === version) return known;
    const events =
      version === 0 ? [] : await ledger.readStream(log, jobStream(id), { upTo: version });
    return events.map(pastEvent).reduce(follow, { job: initial(id), toldLater: false });
  };
  return {
    name: OFFICE_LIST,
    apply: async (events, { log, generation }, client) => {
      const jobs = new Map<string, Followed>();
      const steps: Step[] = [];
      for (const event of events.filter(({ stream }) => stream.startsWith(JOB))) {
        const id = event.stream.slice(JOB.length);
        const before = jobs.get(id) ?? (await upTo(log, id, event.version - 1));
        const after = follow(before, pastEvent(event));
        steps.push({ before: before.job, after, event: pastEvent(event) });
        jobs.set(id, after);
      }
      if (steps.length === 0) return;
      const insert = (table: Kept, rows: readonly object[]) =>
        rows.length === 0 ? undefined : client.query(inserting(table, log, generation, rows));
      // In this order on one connection, none waiting for the answer before.
      await Promise.all([
        client.query({ ...FORGET_REMINDERS, values: [log, generation, [...jobs.keys()]] }),
        insert(
          'reminder',
          [...jobs.values()].flatMap(({ job }) => reminders(job)),
        ),
        insert('stage_spell', steps.flatMap(spell)),
        insert('stage_confirmation', steps.flatMap(confirmation)),
      ]);
      for (const [id, job] of jobs) kept.set(`${log} ${id}`, job);
      for (const key of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(key);
    },
    digest: async ({ log, generation }, client) => {
      const parts = TABLES.map(
        (name) =>
          `SELECT '${name}' AS t, (to_jsonb(r) - 'generation')::text AS row FROM ${name} r WHERE company_id = $1 AND generation = $2`,
      );
      const { rows } = await client.query<{ digest: string | null }>(
        `SELECT md5(string_agg(t || row, E'\\n' ORDER BY t, row)) AS digest FROM (${parts.join(' UNION ALL ')}) all_rows`,
        [log, generation],
      );
      return rows[0]?.digest ?? '';
    },
    clear: async ({ log, generation }, client) => {
      for (const name of TABLES)
        await client.query(`DELETE FROM ${name} WHERE company_id = $1 AND generation = $2`, [
          log,
          generation,
        ]);
    },
  };
}

type Kept = (typeof TABLES)[number];

const inserting = (
  table: Kept,
  company_id: string,
  generation: number,
  rows: readonly object[],
) => ({
  name: `office-list-${table}`,
  text: `INSERT INTO ${table} SELECT * FROM jsonb_populate_recordset(NULL::${table}, $1::jsonb)`,
  values: [JSON.stringify(rows.map((row) => ({ company_id, generation, ...row })))],
});

const FORGET_REMINDERS = {
  name: 'office-list-forget-reminders',
  text: 'DELETE FROM reminder WHERE company_id = $1 AND generation = $2 AND job = ANY($3)',
};

/** A job whose opening was entered days later counts by the days it tells, any other by when it was recorded. */
interface Followed {
  readonly job: Job;
  readonly toldLater: boolean;
}
const DAY_MS = 86_400_000;

const follow = ({ job, toldLater }: Followed, event: PastEvent): Followed => ({
  job: evolve(job, event),
  toldLater:
    event.version === 1
      ? Date.parse(event.recordedAt) - Date.parse(event.effectiveAt) > DAY_MS
      : toldLater,
});

interface Step {
  readonly before: Job;
  readonly after: Followed;
  readonly event: PastEvent;
}

function reminders(job: Job): readonly object[] {
  return fallsDue(job).map(({ kind, about, on, words }) => ({
    job: job.id,
    kind,
    about,
    number: job.number,
    job_name: job.name,
    falls_on: on,
    words,
  }));
}

/** A new one begins where the stage or the one it waits on is another. */
function spell({ before, after, event }: Step): readonly object[] {
  const was = before.version === 0 ? undefined : standing(before);
  const { job, toldLater } = after;
  const is = standing(job);
  if (was && was.stage === is.stage && was.waits_on === is.waits_on) return [];
  return [{ job: job.id, version: job.version, ...is, began_at: counted(event, toldLater) }];
}

const counted = (event: PastEvent, toldLater: boolean): string =>
  toldLater ? event.effectiveAt : event.recordedAt;

function standing(job: Job): { stage: string; waits_on: string } {
  const { stage, on, state } = jobRow(job);
  const role = /^[0-9a-f-]{36}$/.test(on) ? 'engineer' : on;
  return { stage, waits_on: state === 'Done' && stage === 'complete' ? 'nobody' : role };
}

const STAGE_OF = new Map<string, string>(
  CONFIRMED_STAGES.map((stage) => [STAGE_EVENT[stage], stage]),
);

function confirmation({ after, event }: Step): readonly object[] {
  const stage = STAGE_OF.get(event.type);
  if (stage === undefined) return [];
  const { overrides } = event.data as { readonly overrides: readonly unknown[] };
  const { id, version } = after.job;
  const confirmed_at = counted(event, after.toldLater);
  return [{ job: id, version, stage, overrides: overrides.length, confirmed_at }];
}
