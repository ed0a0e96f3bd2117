// The rest of the store in PostgreSQL: leaves and rows for proofs and verification, checkpoints, bytes
// of issued documents.

import type { KeptCheckpoint, KeptTimeStamp } from './ledger.js';
import type { EventRow, Store, StoredLink } from './store.js';
import { formatMicros } from './time.js';

export interface Statement {
  readonly name: string;
  readonly text: string;
}

/** Runs a statement for one company's log. */
export type Rows = <Row>(log: string, statement: Statement, values: unknown[]) => Promise<Row[]>;

type Records = Pick<
  Store,
  | 'readLeaves'
  | 'readHead'
  | 'readRows'
  | 'readLinks'
  | 'keepCheckpoint'
  | 'checkpoints'
  | 'lastCheckpoint'
  | 'keepTimeStamp'
  | 'timeStamps'
  | 'lastTimeStamp'
  | 'keepIssued'
  | 'issued'
  | 'eraseIssued'
>;

export function postgresRecords(rows: Rows): Records {
  return {
    readLeaves: async (log, start, end) => {
      const found = await rows<{ leaf: Buffer }>(log, READ_LEAVES, [log, start, end]);
      return found.map((row) => row.leaf);
    },
    readHead: async (log) => {
      const [row] = await rows<RawHead>(log, READ_HEAD, [log]);
      if (row === undefined) throw new Error(`There is no log ${log}, or it cannot be seen.`);
      const { head, last_at: lastAt, frontier, root } = row;
      return { pos: Number(head), lastAt: Number(lastAt ?? 0), frontier, root };
    },
    readRows: async (log, after, limit) => {
      const found = await rows<RawRow>(log, READ_ROWS, [log, after, limit]);
      return found.map(readRow);
    },
    readLinks: (log, wanted, upTo) => {
      const streams = wanted.map((each) => each.stream);
      const versions = wanted.map((each) => each.version);
      return rows<StoredLink>(log, READ_LINKS, [log, streams, versions, upTo]);
    },
    keepCheckpoint: async (log, { size, root, note }) => {
      await rows(log, KEEP_CHECKPOINT, [log, size, root, note]);
    },
    checkpoints: async (log) => (await rows<KeptCheckpoint>(log, CHECKPOINTS, [log])).map(sized),
    lastCheckpoint: async (log) => {
      const [row] = await rows<KeptCheckpoint>(log, LAST_CHECKPOINT, [log]);
      return row && sized(row);
    },
    keepTimeStamp: async (log, { size, request, reply, trusted }) => {
      await rows(log, KEEP_TIME_STAMP, [log, size, request, reply, trusted]);
    },
    timeStamps: async (log, from, most) => {
      const found = await rows<KeptTimeStamp>(log, TIME_STAMPS, [log, from, most ?? null]);
      return found.map(sized);
    },
    lastTimeStamp: async (log) => {
      const [row] = await rows<KeptTimeStamp>(log, LAST_TIME_STAMP, [log]);
      return row && sized(row);
    },
    keepIssued: async (log, digest, mediaType, bytes) => {
      await rows(log, KEEP_ISSUED, [log, digest, mediaType, bytes]);
    },
    issued: async (log, digest) => {
      const [row] = await rows<IssuedRow>(log, ISSUED, [log, digest]);
      return (
        row && {
          mediaType: row.media_type,
          bytes: row.bytes ?? undefined,
          issuedAt: formatMicros(Number(row.issued_at)),
          erasedAt: row.erased_at === null ? undefined : formatMicros(Number(row.erased_at)),
        }
      );
    },
    eraseIssued: async (log, digest) => {
      await rows(log, ERASE_ISSUED, [log, digest]);
    },
  };
}

const sized = <T extends { readonly size: number }>(row: T): T => ({
  ...row,
  size: Number(row.size),
});

/** A time as text would lose its microseconds in the driver. */
const micros = (column: string): string =>
  `(extract(epoch FROM ${column}) * 1000000)::bigint AS ${column}`;

const READ_LEAVES: Statement = {
  name: 'ledger-read-leaves',
  text: `SELECT leaf FROM ledger.event WHERE log_id = $1 AND pos > $2 AND pos <= $3 ORDER BY pos`,
};

const READ_HEAD: Statement = {
  name: 'ledger-read-head',
  text: `SELECT head, ${micros('last_at')}, frontier, root FROM ledger.log WHERE log_id = $1`,
};

const READ_ROWS: Statement = {
  name: 'ledger-read-rows',
  text: `SELECT pos, stream_id, version, type, ${micros('recorded_at')}, ${micros('effective_at')},
      body, leaf
    FROM ledger.event WHERE log_id = $1 AND pos > $2 ORDER BY pos LIMIT $3`,
};

const READ_LINKS: Statement = {
  name: 'ledger-read-links',
  text: `SELECT e.stream_id AS stream, e.version, encode(e.leaf, 'hex') AS leaf
    FROM unnest($2::text[], $3::integer[]) AS wanted (stream, version)
    JOIN ledger.event e ON e.log_id = $1 AND e.stream_id = wanted.stream
      AND e.version = wanted.version
    WHERE e.pos <= $4`,
};

const KEEP_CHECKPOINT: Statement = {
  name: 'ledger-keep-checkpoint',
  text: `INSERT INTO ledger.checkpoint (log_id, size, root, note) VALUES ($1, $2, $3, $4)
    ON CONFLICT DO NOTHING`,
};

const CHECKPOINTS: Statement = {
  name: 'ledger-checkpoints',
  text: 'SELECT size, root, note FROM ledger.checkpoint WHERE log_id = $1 ORDER BY size',
};

const LAST_CHECKPOINT: Statement = {
  name: 'ledger-last-checkpoint',
  text: `SELECT size, root, note FROM ledger.checkpoint WHERE log_id = $1
    ORDER BY size DESC LIMIT 1`,
};

const KEEP_TIME_STAMP: Statement = {
  name: 'ledger-keep-time-stamp',
  text: `INSERT INTO ledger.time_stamp (log_id, size, request, reply, trusted)
    VALUES ($1, $2, $3, $4, $5) ON CONFLICT DO NOTHING`,
};

const TIME_STAMPS: Statement = {
  name: 'ledger-time-stamps',
  text: `SELECT size, request, reply, trusted FROM ledger.time_stamp
    WHERE log_id = $1 AND size >= $2 ORDER BY size LIMIT $3`,
};

const LAST_TIME_STAMP: Statement = {
  name: 'ledger-last-time-stamp',
  text: `SELECT size, request, reply, trusted FROM ledger.time_stamp WHERE log_id = $1
    ORDER BY size DESC LIMIT 1`,
};

const KEEP_ISSUED: Statement = {
  name: 'ledger-keep-issued',
  text: `INSERT INTO ledger.issued (log_id, digest, media_type, bytes) VALUES ($1, $2, $3, $4)
    ON CONFLICT DO NOTHING`,
};

const ISSUED: Statement = {
  name: 'ledger-issued',
  text: `SELECT media_type, bytes, ${micros('issued_at')}, ${micros('erased_at')}
    FROM ledger.issued WHERE log_id = $1 AND digest = $2`,
};

const ERASE_ISSUED: Statement = {
  name: 'ledger-erase-issued',
  text: `UPDATE ledger.issued SET bytes = NULL, erased_at = now()
    WHERE log_id = $1 AND digest = $2 AND erased_at IS NULL`,
};

interface RawHead {
  readonly head: string;
  readonly last_at: string | null;
  readonly frontier: Buffer;
  readonly root: Buffer;
}

interface RawRow {
  readonly pos: string;
  readonly stream_id: string;
  readonly version: number;
  readonly type: string;
  readonly recorded_at: string;
  readonly effective_at: string;
  readonly body: string;
  readonly leaf: Buffer;
}

function readRow(row: RawRow): EventRow {
  return {
    pos: Number(row.pos),
    stream: row.stream_id,
    version: row.version,
    type: row.type,
    recordedAt: Number(row.recorded_at),
    effectiveAt: Number(row.effective_at),
    body: row.body,
    leaf: row.leaf,
  };
}

interface IssuedRow {
  readonly media_type: string;
  readonly bytes: Buffer | null;
  readonly issued_at: string;
  readonly erased_at: string | null;
}
