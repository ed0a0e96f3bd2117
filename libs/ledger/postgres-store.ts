// The store in PostgreSQL: schema ledger, one company's rows for each log.

import type pg from 'pg';
import type { CompanyPool } from './postgres-pool.js';
import { EMPTY_ROOT, Frontier } from './merkle.js';
import type { Batch, CommandRow, CommitOutcome, Store, Survey } from './store.js';
import { postgresRecords } from './postgres-records.js';
import type { Rows, Statement } from './postgres-records.js';
import { formatMicros } from './time.js';

export function createPostgresStore(pool: CompanyPool): Store {
  const rows: Rows = (log, statement, values) =>
    pool.use(log, async (client) => (await client.query({ ...statement, values })).rows as never);
  return {
    ...postgresRecords(rows),
    createLog: async (log) => {
      await rows(log, CREATE_LOG, [log, EMPTY_ROOT]);
    },
    survey: (log, streams, commands) =>
      pool.use(log, (client) => surveyOn(client, log, streams, commands)),
    write: (log, work) =>
      pool.use(log, (client) =>
        work({
          survey: (streams, commands) => surveyOn(client, log, streams, commands),
          commit: (batch) => commitOn(client, log, batch),
        }),
      ),
    readStream: async (log, stream, from, upTo) => {
      const last = Math.min(upTo, MAX_VERSION);
      const found = await rows<{ body: string }>(log, READ_STREAM, [log, stream, from, last]);
      return found.map((row) => row.body);
    },
    readAll: async (log, after, limit) => {
      const found = await rows<{ pos: string; body: string }>(log, READ_ALL, [log, after, limit]);
      return found.map((row) => ({ pos: Number(row.pos), body: row.body }));
    },
    listPosition: async (log, list) => {
      const [row] = await rows<{ pos: string }>(log, LIST_POSITION, [log, list]);
      return Number(row?.pos ?? 0);
    },
  };
}

async function surveyOn(
  client: pg.ClientBase,
  log: string,
  streams: readonly string[],
  commands: readonly string[],
): Promise<Survey> {
  const values = [log, streams, commands];
  const [row] = (await client.query<SurveyRow>({ ...SURVEY, values })).rows;
  if (row === undefined) throw new Error(`There is no log ${log}, or it cannot be seen.`);
  return readSurvey(row);
}

async function commitOn(client: pg.ClientBase, log: string, batch: Batch): Promise<CommitOutcome> {
  try {
    const values = commitValues(log, batch);
    return outcomeOf(await client.query({ ...COMMIT, values }), batch);
  } catch (error) {
    if ((error as { code?: unknown }).code === UNIQUE_VIOLATION) return 'taken';
    throw error;
  }
}

const UNIQUE_VIOLATION = '23505';
const MAX_VERSION = 2_147_483_647;

const CREATE_LOG: Statement = {
  name: 'ledger-create-log',
  text: `INSERT INTO ledger.log (log_id, head, frontier, root) VALUES ($1, 0, '', $2)
    ON CONFLICT (log_id) DO NOTHING`,
};

const SURVEY: Statement = {
  name: 'ledger-survey',
  text: `SELECT l.head, l.frontier, l.root,
      (extract(epoch FROM l.last_at) * 1000000)::bigint AS last_at,
      (SELECT json_agg(json_build_object('stream', s.id, 'version', e.version,
          'leaf', encode(e.leaf, 'hex')))
        FROM unnest($2::text[]) AS s (id)
        CROSS JOIN LATERAL (SELECT version, leaf FROM ledger.event
          WHERE log_id = l.log_id AND stream_id = s.id ORDER BY version DESC LIMIT 1) e) AS streams,
      (SELECT json_agg(json_build_object('id', c.command_id, 'digest', c.digest,
          'first', c.first_pos, 'last', c.last_pos, 'versions', c.versions, 'recordedAt',
          (extract(epoch FROM c.recorded_at) * 1000000)::bigint))
        FROM ledger.command c
        WHERE c.log_id = l.log_id AND c.command_id = ANY ($3::text[])) AS commands
    FROM ledger.log l WHERE l.log_id = $1`,
};

/** What no canonical JSON holds: a raw control character. */
const BETWEEN_BODIES = '\u0001';

/**
 * One statement, one round trip: fence, positions, events and commands, or nothing. What is one for the
 * batch has a parameter of its own type; commands and events are a JSON array each, parsed once; the
 * bodies go beside them as they are, because escaping them cost more than hashing. The times of a batch
 * follow each other by a microsecond, so that the last one gives them all.
 */
const COMMIT: Statement = {
  name: 'ledger-commit',
  text: `WITH moved AS (
      UPDATE ledger.log SET head = $3, last_at = $4, frontier = $5, root = $6
      WHERE log_id = $1 AND head = $2
      RETURNING log_id, last_at),
    kept AS (
      INSERT INTO ledger.command
        (log_id, command_id, digest, first_pos, last_pos, versions, recorded_at)
      SELECT log_id, c->>0, c->>1, (c->>2)::bigint, (c->>3)::bigint, c->4, (c->>5)::timestamptz
      FROM moved, jsonb_array_elements($7::jsonb) AS c)
    INSERT INTO ledger.event
      (log_id, pos, stream_id, version, type, recorded_at, effective_at, body, leaf)
    SELECT log_id, $2 + n, e->>0, (e->>1)::integer, e->>2, at.recorded,
      coalesce((e->>4)::timestamptz, at.recorded), body, decode(e->>3, 'hex')
    FROM moved, ROWS FROM (
        jsonb_array_elements($8::jsonb),
        unnest(string_to_array($9, E'\\x01'))
      ) WITH ORDINALITY AS each (e, body, n),
      LATERAL (SELECT last_at - ($3 - $2 - n) * interval '1 microsecond' AS recorded) AS at`,
};

const READ_STREAM: Statement = {
  name: 'ledger-read-stream',
  text: `SELECT body FROM ledger.event
    WHERE log_id = $1 AND stream_id = $2 AND version BETWEEN $3 AND $4 ORDER BY version`,
};

const READ_ALL: Statement = {
  name: 'ledger-read-all',
  text: `SELECT pos, body FROM ledger.event
    WHERE log_id = $1 AND pos > $2 ORDER BY pos LIMIT $3`,
};

const LIST_POSITION: Statement = {
  name: 'ledger-list-position',
  text: 'SELECT pos FROM ledger.projection WHERE log_id = $1 AND name = $2 AND live',
};

function commitValues(log: string, { seen, after, events, commands }: Batch): unknown[] {
  const kept = commands.map((c) => [c.id, c.digest, c.first, c.last, c.versions, c.recordedAt]);
  const columns = events.map(({ stream, version, type, leaf, effectiveAt, recordedAt }) => {
    const row = [stream, version, type, leaf];
    return effectiveAt === recordedAt ? row : [...row, effectiveAt];
  });
  return [
    log,
    seen,
    after.pos,
    formatMicros(after.lastAt),
    after.frontier.encode(),
    after.root,
    JSON.stringify(kept),
    JSON.stringify(columns),
    events.map((event) => event.body).join(BETWEEN_BODIES),
  ];
}

function outcomeOf(result: pg.QueryResult, batch: Batch): 'committed' | 'moved' {
  if (result.rowCount === batch.events.length) return 'committed';
  if (result.rowCount === 0) return 'moved';
  throw new Error(`${result.rowCount} of ${batch.events.length} events were kept.`);
}

interface SurveyRow {
  readonly head: string;
  readonly last_at: string | null;
  readonly frontier: Buffer;
  readonly root: Buffer;
  readonly streams: { stream: string; version: number; leaf: string }[] | null;
  readonly commands:
    (Omit<CommandRow, 'positions' | 'recordedAt'> & { recordedAt: number })[] | null;
}

function readSurvey(row: SurveyRow): Survey {
  const pos = Number(row.head);
  return {
    log: {
      pos,
      lastAt: Number(row.last_at ?? 0),
      frontier: Frontier.decode(pos, row.frontier),
      root: row.root,
    },
    streams: new Map((row.streams ?? []).map(({ stream, ...head }) => [stream, head])),
    commands: new Map((row.commands ?? []).map((c) => [c.id, readCommand(c)])),
  };
}

function readCommand(
  row: Omit<CommandRow, 'positions' | 'recordedAt'> & { recordedAt: number },
): CommandRow {
  const positions = Array.from({ length: row.last - row.first + 1 }, (_, i) => row.first + i);
  return { ...row, positions, recordedAt: formatMicros(row.recordedAt) };
}
