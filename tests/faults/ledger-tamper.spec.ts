// The tamper drill: every kind of change to every entry tried, by the tables' owner and by a
// superuser, is found with one checkpoint from outside, and the first bad position is named
// (checklist 9, 10). FAULTS=long tries 200 entries by each of
// the two instead of 20.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type pg from 'pg';
import {
  canonical,
  companyPool,
  createPostgresLedger,
  Frontier,
  leafHash,
  newClient,
  openPool,
} from '#ledger';
import type { Checkpoint, CompanyPool, Fault, Ledger } from '#ledger';
import { withDatabase } from '../database.js';

const LOG = 'roofers';
const ENTRIES = 240;
const TRIES = process.env['FAULTS'] === 'long' ? 200 : 20;
/** Checkpoints kept outside: one over all, and one at every issued document. */
const EVERY = 30;

const database = withDatabase();
let owner: pg.Client;
let service: pg.Pool;
let outside: Checkpoint[];
let random = 7;

beforeAll(async () => {
  service = openPool({ connectionString: database.serviceUrl });
  owner = newClient({ connectionString: database.ownerUrl });
  await owner.connect();
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  outside = await fill(ledger);
  await owner.query(`
    CREATE ROLE tables_owner_${process.pid} NOLOGIN;
    GRANT USAGE ON SCHEMA ledger TO tables_owner_${process.pid};
    ALTER TABLE ledger.event OWNER TO tables_owner_${process.pid};
    ALTER TABLE ledger.log OWNER TO tables_owner_${process.pid};
    SELECT set_config('gauge.company', '${LOG}', false)`);
});

afterAll(async () => {
  await service.end();
  await owner.query(`REASSIGN OWNED BY tables_owner_${process.pid} TO CURRENT_USER;
    DROP OWNED BY tables_owner_${process.pid}; DROP ROLE tables_owner_${process.pid}`);
  await owner.end();
});

async function fill(ledger: Ledger): Promise<Checkpoint[]> {
  await ledger.createLog(LOG);
  const kept: Checkpoint[] = [];
  for (let i = 0; i < ENTRIES; i++) {
    const stream = `s${i % 7}`;
    const events = [{ type: 'measured/1', data: { gauge: String(20 + (i % 9)), i } }];
    await ledger.append({
      log: LOG,
      command: { id: `c${i}`, digest: 'd' },
      by: { person: 'p1', role: 'estimator' },
      streams: [{ stream, expectedVersion: Math.floor(i / 7), events }],
    });
    if ((i + 1) % EVERY === 0) {
      kept.push({ origin: LOG, size: i + 1, root: (await ledger.head(LOG)).root });
    }
  }
  return kept;
}

/** Small, fixed and good enough to pick entries with. */
function pick(below: number): number {
  random = (random * 1_103_515_245 + 12_345) % 2_147_483_648;
  return Math.floor((random / 2_147_483_648) * below);
}

type Tamper = (pos: number) => Promise<unknown>;
const sql = (text: string, values: unknown[] = []) => owner.query(text, values);

const tampers: Record<string, Tamper> = {
  'a bit of the body': async (pos) => {
    const body = await bodyOf(pos);
    const at = pick(body.length);
    const flipped = String.fromCharCode(body.charCodeAt(at) ^ 1);
    await sql('UPDATE ledger.event SET body = $2 WHERE pos = $1', [
      pos,
      body.slice(0, at) + flipped + body.slice(at + 1),
    ]);
  },
  'a column': (pos) =>
    sql(
      `UPDATE ledger.event SET ${
        [
          `type = 'measured/2'`,
          `version = version + 1000`,
          `stream_id = stream_id || 'x'`,
          `recorded_at = recorded_at + interval '1 microsecond'`,
          `effective_at = effective_at - interval '1 day'`,
          `leaf = sha256(leaf)`,
        ][pick(6)]
      } WHERE pos = $1`,
      [pos],
    ),
  'an entry taken out': (pos) => sql('DELETE FROM ledger.event WHERE pos = $1', [pos]),
  'two entries in each other’s place': (pos) =>
    sql(
      'UPDATE ledger.event SET pos = CASE pos WHEN $1 THEN $2 ELSE $1 END WHERE pos IN ($1, $2)',
      [pos, pos === ENTRIES ? pos - 1 : pos + 1],
    ),
  'an entry put in between': async (pos) => {
    await sql('UPDATE ledger.event SET pos = pos + 1 WHERE pos >= $1', [pos]);
    await sql(
      `INSERT INTO ledger.event SELECT log_id, $1::bigint, 'forged', 1, type, recorded_at, effective_at,
         body, leaf FROM ledger.event WHERE pos = $1::bigint + 1`,
      [pos],
    );
    await sql('UPDATE ledger.log SET head = head + 1');
  },
  'the tail cut off': async (pos) => {
    await sql('DELETE FROM ledger.event WHERE pos >= $1', [pos]);
    await rewriteHead();
  },
  'an edit with every hash computed anew': async (pos) => {
    await rehashFrom(pos);
    await rewriteHead();
  },
};

async function bodyOf(pos: number): Promise<string> {
  return (await sql('SELECT body FROM ledger.event WHERE pos = $1', [pos])).rows[0].body as string;
}

/** What an attacker does who knows the ledger: no inner check finds it. */
async function rehashFrom(pos: number): Promise<void> {
  const { rows } = await sql('SELECT pos, body FROM ledger.event WHERE pos >= $1 ORDER BY pos', [
    pos,
  ]);
  const heads = new Map<string, string>();
  const made: { pos: string; body: string; leaf: Buffer }[] = [];
  for (const row of rows as { pos: string; body: string }[]) {
    const event = JSON.parse(row.body) as { stream: string; prev: string | null; data: object };
    const first = Number(row.pos) === pos;
    const prev = heads.get(event.stream) ?? event.prev;
    const body = canonical({ ...event, prev, data: first ? { gauge: '29' } : event.data });
    const leaf = leafHash(body);
    heads.set(event.stream, leaf.toString('hex'));
    made.push({ pos: row.pos, body, leaf });
  }
  await sql(
    `UPDATE ledger.event e SET body = u.body, leaf = u.leaf
     FROM unnest($1::bigint[], $2::text[], $3::bytea[]) AS u (pos, body, leaf) WHERE e.pos = u.pos`,
    [made.map((m) => m.pos), made.map((m) => m.body), made.map((m) => m.leaf)],
  );
}

async function rewriteHead(): Promise<void> {
  const frontier = new Frontier();
  const { rows } = await sql('SELECT leaf FROM ledger.event ORDER BY pos');
  for (const { leaf } of rows as { leaf: Buffer }[]) frontier.append(leaf);
  await sql(
    `UPDATE ledger.log SET head = $1, frontier = $2, root = $3,
       last_at = (SELECT max(recorded_at) FROM ledger.event)`,
    [frontier.size, frontier.encode(), frontier.root()],
  );
}

/** Sees the change before it is rolled back. */
const here: CompanyPool = {
  use: (_, work) => work(owner as pg.PoolClient),
  transaction: (_, work) => work(owner as pg.PoolClient),
};

/** Runs the change as this role, verifies with the checkpoints, and takes the change back. */
async function tamper(asOwner: boolean, change: Tamper, pos: number): Promise<Fault | undefined> {
  await sql('BEGIN');
  try {
    if (asOwner) {
      await sql(`SET LOCAL ROLE tables_owner_${process.pid}`);
      await sql('ALTER TABLE ledger.event DISABLE TRIGGER kept');
    } else {
      await sql('SET LOCAL session_replication_role = replica');
    }
    await sql('ALTER TABLE ledger.event DROP CONSTRAINT event_pkey');
    await sql('ALTER TABLE ledger.event DROP CONSTRAINT event_log_id_stream_id_version_key');
    await change(pos);
    await sql('RESET ROLE');
    const ledger = createPostgresLedger({ pool: here });
    return (await ledger.verify(LOG, outside)).fault;
  } finally {
    await sql('ROLLBACK');
  }
}

test('the untouched log verifies, every checkpoint met', async () => {
  const report = await createPostgresLedger({ pool: companyPool(service) }).verify(LOG, outside);
  expect(report).toMatchObject({ events: ENTRIES, checkpoints: ENTRIES / EVERY, fault: undefined });
});

for (const [name, change] of Object.entries(tampers)) {
  test.each([
    ['the owner', true],
    ['a superuser', false],
  ])(`requirement 9: ${name}, by %s, is found and its position named`, async (_, asOwner) => {
    for (let i = 0; i < TRIES; i++) {
      const pos = 1 + pick(ENTRIES);
      const fault = await tamper(asOwner, change, pos);
      const named = { change: name, pos, found: fault?.pos };
      if (name.includes('computed anew')) {
        const from = Math.floor((pos - 1) / EVERY) * EVERY + 1;
        expect(named).toEqual({ change: name, pos, found: from });
        expect(fault?.says).toContain(`an entry from ${from} to ${from + EVERY - 1} was altered`);
      } else {
        const swapped = name.includes('each other') && pos === ENTRIES;
        expect(named).toEqual({ change: name, pos, found: swapped ? pos - 1 : pos });
      }
    }
  });
}
