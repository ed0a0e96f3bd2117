// Keeps the job list and the sign-off queue: folds the jobs of a page of events in memory, then one
// statement a table.

import { evolve, initial, type Job } from '#jobs';
import type { Ledger, List, ListScope, Recorded } from '#ledger';
import { JOB_LIST, listRows, type ListRows } from './job-list.js';
import { jobStream, pastEvent } from './job-stream.js';

const KEPT = 5_000;
const JOB = 'job/';

interface Table {
  readonly name: string;
  /** The column that names the job, and the key beside it. */
  readonly job: string;
  readonly key: readonly string[];
}
const TABLES = {
  job: { name: 'job_row', job: 'id', key: ['id'] },
  unsigned: { name: 'unsigned_surface', job: 'job', key: ['job', 'surface'] },
  requests: { name: 'sign_off_request', job: 'job', key: ['job', 'request'] },
} as const satisfies { readonly [K in keyof ListRows]: Table };

export function jobList(ledger: Ledger): List {
  const folded = new Folded(ledger);
  return {
    name: JOB_LIST,
    apply: async (events, scope, client) => {
      const jobs = await folded.through(events, scope);
      if (jobs.length === 0) return;
      const rows = jobs.map(listRows);
      const ids = jobs.map(({ id }) => id);
      const { log: company_id, generation } = scope;
      // One after the other on one connection, none waiting for the answer before.
      await Promise.all(
        (['job', 'unsigned', 'requests'] as const).map((kind) => {
          const given = rows
            .flatMap((each) => each[kind])
            .map((row) => ({ company_id, generation, ...row }));
          const values = [company_id, generation, ids, JSON.stringify(given)];
          return client.query({ ...STATEMENTS[kind], values });
        }),
      );
    },
    digest: async ({ log, generation }, client) => {
      const parts = Object.values(TABLES).map(
        ({ name, key }) => `
        SELECT '${name}' AS t, to_jsonb(r) - 'generation' AS row,
          concat_ws(' ', ${key.map((each) => `r.${each}`).join(', ')}) AS k
        FROM ${name} r WHERE company_id = $1 AND generation = $2`,
      );
      const { rows } = await client.query<{ digest: string | null }>(
        `SELECT md5(string_agg(t || k || row::text, E'\\n' ORDER BY t, k)) AS digest
         FROM (${parts.join(' UNION ALL ')}) all_rows`,
        [log, generation],
      );
      return rows[0]?.digest ?? '';
    },
    clear: async ({ log, generation }, client) => {
      for (const { name } of Object.values(TABLES)) {
        await client.query(`DELETE FROM ${name} WHERE company_id = $1 AND generation = $2`, [
          log,
          generation,
        ]);
      }
    },
  };
}

/** Rows of these jobs that are not given any more go; the given ones come in or up to date. */
function replace({ name, job, key }: Table): string {
  const same = key.map((each) => `g.${each} = r.${each}`).join(' AND ');
  const keys = key.join(', ');
  return `
    WITH given AS (
      SELECT * FROM jsonb_populate_recordset(NULL::${name}, $4::jsonb)
    ), gone AS (
      DELETE FROM ${name} r WHERE r.company_id = $1 AND r.generation = $2 AND r.${job} = ANY($3)
        AND NOT EXISTS (SELECT 1 FROM given g WHERE ${same})
    )
    INSERT INTO ${name} SELECT * FROM given
    ON CONFLICT (company_id, generation, ${keys}) DO UPDATE SET ${updates(name)}`;
}

const COLUMNS: Readonly<{ [table: string]: readonly string[] }> = {
  job_row: [
    'version',
    'number',
    'name',
    'customer',
    'site',
    'stage',
    'stage_order',
    'stage_words',
    'state',
    'surfaces_done',
    'surfaces',
    'next_action',
    'waits_on',
    'due',
    'assigned',
    'updated_at',
  ],
  unsigned_surface: [
    'number',
    'job_name',
    'surface_name',
    'waits_for',
    'engineer',
    'asked_at',
    'since',
    'due',
  ],
  sign_off_request: [
    'number',
    'job_name',
    'surfaces',
    'engineer',
    'asked_at',
    'asked_by',
    'expires',
    'standing',
    'due',
  ],
};
const updates = (table: string): string =>
  (COLUMNS[table] ?? []).map((column) => `${column} = excluded.${column}`).join(', ');

const statement = (table: Table) => ({ name: `job-list-${table.name}`, text: replace(table) });
const STATEMENTS = {
  job: statement(TABLES.job),
  unsigned: statement(TABLES.unsigned),
  requests: statement(TABLES.requests),
};

/** Jobs exactly as they stood at the list's own position, kept while there is room. */
class Folded {
  private readonly kept = new Map<string, Job>();

  constructor(private readonly ledger: Ledger) {}

  /** The jobs that these events touch, after the last of them. */
  async through(
    events: readonly Recorded[],
    { log, generation }: ListScope,
  ): Promise<readonly Job[]> {
    const byJob = new Map<string, Recorded[]>();
    for (const event of events) {
      if (!event.stream.startsWith(JOB)) continue;
      const id = event.stream.slice(JOB.length);
      const own = byJob.get(id);
      if (own) own.push(event);
      else byJob.set(id, [event]);
    }
    const jobs: Job[] = [];
    for (const [id, own] of byJob) {
      const key = `${log} ${generation} ${id}`;
      const job = await this.bring(log, id, this.kept.get(key) ?? initial(id), own);
      this.keep(key, job);
      jobs.push(job);
    }
    return jobs;
  }

  private async bring(log: string, id: string, known: Job, own: readonly Recorded[]): Promise<Job> {
    const first = own[0]?.version ?? 1;
    const last = own.at(-1)?.version ?? 0;
    const start = known.version < first ? known : initial(id);
    const missing =
      start.version === first - 1
        ? []
        : await this.ledger.readStream(log, jobStream(id), {
            from: start.version + 1,
            upTo: first - 1,
          });
    const job = [...missing, ...own].reduce(
      (state, event) => evolve(state, pastEvent(event)),
      start,
    );
    if (job.version !== last)
      throw new Error(`job ${id} folds to version ${job.version}, not ${last}`);
    return job;
  }

  private keep(key: string, job: Job): void {
    this.kept.delete(key);
    this.kept.set(key, job);
    const [oldest] = this.kept.keys();
    if (this.kept.size > KEPT && oldest !== undefined) this.kept.delete(oldest);
  }
}
