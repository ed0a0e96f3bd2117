// A company of so many jobs, made fast: the events of one real job, told again under other ids straight
// into the log (hashes, links and tree are true, so that verification passes), and the lists beside it.
// Rows of the list vary in stage, state, person and due date beyond what their events say.

import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type pg from 'pg';
import { canonical, Frontier, leafHash, newClient, type Recorded } from '#ledger';

export interface Fill {
  readonly ownerUrl: string;
  /** A folder that the database server can read. */
  readonly folder: string;
  readonly company: string;
  readonly jobs: number;
  readonly eventsPerJob: number;
  readonly template: readonly Recorded[];
  readonly people: readonly string[];
  readonly say: (line: string) => void;
}

const JOBS_AT_ONCE = 5_000;

/** As SQL writes it too: `ID_OF`. */
export const jobId = (i: number): string =>
  `01900000-0000-7000-8000-${i.toString(16).padStart(12, '0')}`;
const ID_OF = (prefix: string) => `'${prefix}-0000-7000-8000-' || lpad(to_hex(i), 12, '0')`;

export async function fill(given: Fill): Promise<{ readonly events: number }> {
  const owner = newClient({ connectionString: given.ownerUrl });
  await owner.connect();
  try {
    await owner.query(`SELECT set_config('gauge.company', $1, false)`, [given.company]);
    await owner.query('SET synchronous_commit = off');
    const events = await fillLog(owner, given);
    await fillLists(owner, given);
    await owner.query('VACUUM ANALYZE');
    return { events };
  } finally {
    await owner.end();
  }
}

async function fillLog(owner: pg.Client, given: Fill): Promise<number> {
  const { company, jobs, folder, say } = given;
  const { rows } = await owner.query<{ head: string; frontier: Buffer; last_at: Date }>(
    'SELECT head, frontier, last_at FROM ledger.log WHERE log_id = $1',
    [company],
  );
  const [before] = rows;
  if (!before) throw new Error(`there is no log ${company}`);
  const frontier = Frontier.decode(Number(before.head), before.frontier);
  const clock = { at: before.last_at.getTime() };
  const file = path.join(folder, 'events.copy');
  for (let from = 0; from < jobs; from += JOBS_AT_ONCE) {
    const lines: string[] = [];
    for (let i = from; i < Math.min(jobs, from + JOBS_AT_ONCE); i++)
      tellJob(given, i, frontier, clock, lines);
    writeFileSync(file, lines.join(''), { mode: 0o644 });
    await owner.query(`COPY ledger.event FROM '${file}'`);
    if (from % 20_000 === 0) say(`${frontier.size.toLocaleString('en-US')} events`);
  }
  await owner.query(
    'UPDATE ledger.log SET head = $2, frontier = $3, root = $4, last_at = $5 WHERE log_id = $1',
    [company, frontier.size, frontier.encode(), frontier.root(), new Date(clock.at)],
  );
  await owner.query('UPDATE ledger.projection SET pos = $2 WHERE log_id = $1', [
    company,
    frontier.size,
  ]);
  return frontier.size;
}

function tellJob(
  { company, template, eventsPerJob }: Fill,
  i: number,
  frontier: Frontier,
  clock: { at: number },
  lines: string[],
): void {
  const [first] = template;
  if (!first) throw new Error('the template has no entry');
  const id = jobId(i);
  const note = {
    type: 'note-added/1',
    data: { about: null, words: `Note of job ${i}.`, files: [] },
  };
  let prev: string | null = null;
  for (let n = 0; n < eventsPerJob - 1; n++) {
    const told = template[n] ?? { ...first, ...note };
    const recordedAt = `${new Date(++clock.at).toISOString().slice(0, -1)}000Z`;
    const event: Recorded = {
      ...told,
      log: company,
      stream: `job/${id}`,
      pos: frontier.size + 1,
      version: n + 1,
      prev,
      id: `${id}-${n}`,
      command: `${id}-${n}`,
      recordedAt,
      effectiveAt: recordedAt,
      data: n === 0 ? { ...(told.data as object), number: `B-${i}` } : told.data,
    };
    prev = add(event, frontier, lines);
  }
  const recordedAt = `${new Date(++clock.at).toISOString().slice(0, -1)}000Z`;
  const taken = { type: 'job-number-taken/1', data: { job: id }, stream: `job-number/B-${i}` };
  const place = { pos: frontier.size + 1, version: 1, prev: null, recordedAt };
  add(
    { ...first, ...taken, ...place, log: company, id: `${id}-n`, effectiveAt: recordedAt },
    frontier,
    lines,
  );
}

function add(event: Recorded, frontier: Frontier, lines: string[]): string {
  const body = canonical(event);
  const leaf = leafHash(body);
  frontier.append(leaf);
  const { log, pos, stream, version, type, recordedAt, effectiveAt } = event;
  const escaped = body.replaceAll('\\', '\\\\');
  lines.push(
    `${log}\t${pos}\t${stream}\t${version}\t${type}\t${recordedAt}\t${effectiveAt}\t${escaped}\t\\\\x${leaf.toString('hex')}\n`,
  );
  return leaf.toString('hex');
}

async function fillLists(owner: pg.Client, { company, jobs, people }: Fill): Promise<void> {
  const series = `generate_series(0, ${jobs - 1}) AS i`;
  for (const [kind, prefix, name] of [
    ['person', '01900001', `'Customer ' || (i * 7919 % 30011)`],
    ['site', '01900002', `'Site ' || i || ', Road ' || (i % 977)`],
  ] as const) {
    await owner.query(
      `INSERT INTO party (company_id, id, version, latest, kind, name, details, salt, commitment, created_by)
       SELECT $1, ${ID_OF(prefix)}, 1, true, '${kind}', ${name}, jsonb_build_object('name', ${name}),
         '\\x00'::bytea, '', 'bench' FROM ${series}`,
      [company],
    );
  }
  await owner.query(
    `INSERT INTO job_row (company_id, generation, id, version, number, name, customer, site, stage,
       stage_order, stage_words, state, surfaces_done, surfaces, next_action, waits_on, due, assigned,
       updated_at)
     SELECT $1, (SELECT generation FROM ledger.projection WHERE log_id = $1 AND name = 'jobs' AND live),
       ${ID_OF('01900000')}, 19, 'B-' || i, 'Roof ' || (i * 31 % 100003), ${ID_OF('01900001')},
       ${ID_OF('01900002')},
       (ARRAY['style','coating','hazards','substrate','gauge','sign-off','done'])[1 + i % 7], i % 7,
       (i % 7 + 1) || '/6', (ARRAY['Ready','Blocked','Waiting','Done'])[1 + (i / 7) % 4],
       i % 3, 3, 'Front wall: confirm the substrate', 'office',
       CASE WHEN i % 10 = 0 THEN NULL ELSE date '2025-01-01' + (i * 13 % 900) END,
       CASE WHEN i % 5 = 0 THEN NULL ELSE ($2::text[])[1 + i % ${people.length}] END,
       timestamptz '2026-01-01' + i * interval '1 minute'
     FROM ${series}`,
    [company, people],
  );
}
