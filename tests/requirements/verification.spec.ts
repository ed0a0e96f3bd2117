// Requirement 10: an edit made by the tables' owner and one made by a superuser are found by the next
// nightly verification, as the service's own job does it; and what people and watches then see.

import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type pg from 'pg';
import { newClient } from '#ledger';
import { VerifyLogs } from '../../apps/api/log/verify-logs.js';
import { verifyWholeLog } from '../../apps/cli/verify-log.js';
import { startService, Settings } from '../../apps/api/service.js';
import { openOne } from '../fuzz/open-one.js';
import { call, company, settingsFor, withService, type Client } from '../service.js';

interface Run {
  readonly result: string;
  readonly positions: number;
  readonly checkpoint: number | null;
  readonly first_bad: { readonly position: number | null; readonly says: string } | null;
}
interface Verification {
  readonly state: string;
  readonly words: string;
  readonly last: Run | null;
  readonly running: Run | null;
}

/** Who owns the tables without being a superuser. */
const OWNER = `owner_${process.pid}`;
const running = withService({ keys: true });
let ours: Awaited<ReturnType<typeof people>>;
let owner: pg.Client;
const people = (name: string) =>
  company(running, name, {
    administrator: ['administrator'],
    office: ['office'],
    reviewer: ['warranty-reviewer'],
  });

beforeAll(async () => {
  ours = await people('Ours');
  for (let i = 0; i < 4; i++) await openOne(ours.office);
  owner = newClient({ connectionString: running.database.ownerUrl });
  await owner.connect();
  await owner.query(`CREATE ROLE ${OWNER} NOLOGIN; GRANT USAGE ON SCHEMA ledger TO ${OWNER}`);
});

const job = () => running.service.get(VerifyLogs);
const health = async (client: Client) =>
  (await client.get<{ verification: Verification }>('/health')).body.verification;

/** What the timer does in the night. */
async function night(): Promise<Verification> {
  // Every run so far belongs to the day before.
  await owner.query(`UPDATE ledger.verification SET started_at = started_at - interval '1 day'`);
  const nightly = await startService(
    new Settings({
      ...settingsFor(running.database.serviceUrl),
      keysFolder: running.keysFolder ?? '',
      verifyAt: '00:00',
    }),
  );
  nightly.get(VerifyLogs).wake();
  await nightly.get(VerifyLogs).idle();
  await nightly.stop();
  return health(ours.administrator);
}

/** Changes entries behind the service's back, looks, and puts them back as they were. */
async function tampered<T>(sql: string, look: () => Promise<T>): Promise<T> {
  await owner.query('CREATE TEMP TABLE untouched AS SELECT * FROM ledger.event');
  await owner.query(`${sql}; RESET ROLE`);
  try {
    return await look();
  } finally {
    await owner.query(
      `SET session_replication_role = replica; DELETE FROM ledger.event;
       INSERT INTO ledger.event SELECT * FROM untouched; DROP TABLE untouched;
       SET session_replication_role = origin; ALTER TABLE ledger.event OWNER TO CURRENT_USER;
       ALTER TABLE ledger.event ENABLE TRIGGER kept`,
    );
  }
}

test('a sound record: when, how many positions, which checkpoint, in words; and it is signed anew', async () => {
  expect(await health(ours.office)).toMatchObject({ state: 'never', last: null });
  const first = await night();
  const { pos } = (await ours.reviewer.get<{ lists: { head: number }[] }>('/health')).body
    .lists[0] as unknown as { pos: number };
  expect(first).toMatchObject({ state: 'sound', last: { positions: pos, first_bad: null } });
  const second = await night();
  expect(second.last).toMatchObject({ result: 'sound', checkpoint: pos });
  expect(second.words).toBe(
    `All ${pos} entries are unaltered and in order, held to the checkpoint of ${pos} entries kept ` +
      'outside the database.',
  );
  expect((await call<string>(running.address, 'GET', '/metrics')).body).toContain(
    'gauge_ledger_logs_damaged 0',
  );
});

describe('requirement 10: found by the next nightly run, with its position', () => {
  afterAll(() => owner.query(`DROP OWNED BY ${OWNER}; DROP ROLE ${OWNER}`));

  test.each([
    [
      'the owner',
      `ALTER TABLE ledger.event OWNER TO ${OWNER}; SET ROLE ${OWNER};
       ALTER TABLE ledger.event DISABLE TRIGGER kept`,
    ],
    ['a superuser', `SET session_replication_role = replica`],
  ])('an edit by %s', async (_, become) => {
    const edit = `${become}; SELECT set_config('gauge.company', '${ours.id}', false);
      UPDATE ledger.event SET body = replace(body, 'A roof', 'A RooF')
      WHERE log_id = '${ours.id}' AND pos = (SELECT max(pos) FROM ledger.event
        WHERE log_id = '${ours.id}' AND body LIKE '%A roof%')`;
    const { rows } = await owner.query<{ pos: string }>(
      `SELECT max(pos) AS pos FROM ledger.event WHERE log_id = $1 AND body LIKE '%A roof%'`,
      [ours.id],
    );
    const position = Number(rows[0]?.pos);
    expect(position).toBeGreaterThan(1);
    const found = await tampered(edit, night);
    expect(found).toMatchObject({
      state: 'damaged',
      last: {
        result: 'damaged',
        positions: position - 1,
        first_bad: { position, says: 'the body does not have the recorded hash' },
      },
    });
    expect(found.words).toContain(`The first bad position is ${position}`);
    expect((await call<string>(running.address, 'GET', '/metrics')).body).toContain(
      'gauge_ledger_logs_damaged 1',
    );
    expect((await night()).state).toBe('sound');
  });

  test('entries cut off by a superuser, the head put back with them', async () => {
    const cut = `SET session_replication_role = replica;
      DELETE FROM ledger.event WHERE log_id = '${ours.id}'
        AND pos > (SELECT max(pos) - 2 FROM ledger.event WHERE log_id = '${ours.id}')`;
    const { rows } = await owner.query<{ head: string }>(
      'SELECT head FROM ledger.log WHERE log_id = $1',
      [ours.id],
    );
    const found = await tampered(cut, night);
    expect(found.last?.first_bad?.position).toBe(Number(rows[0]?.head) - 1);
  });
});

test('one company’s damage is not told to another', async () => {
  const theirs = await people('Theirs');
  expect(await health(theirs.administrator)).toMatchObject({ state: 'never' });
  const answer = await theirs.reviewer.get<{ runs: readonly Run[] }>('/log/verifications');
  expect(answer.body.runs).toEqual([]);
});

test('on request, by an administrator or reviewer alone; two instances do not run at once', async () => {
  expect((await ours.office.send('POST', '/log/verifications', {})).status).toBe(403);
  const locked = newClient({ connectionString: running.database.serviceUrl });
  await locked.connect();
  await locked.query('SELECT pg_advisory_lock(7240002)');
  const asked = await ours.reviewer.send<Verification>('POST', '/log/verifications', {});
  expect(asked.status).toBe(201);
  await job().idle();
  expect((await health(ours.reviewer)).running).toMatchObject({ positions: 0 });
  const again = await ours.administrator.send<Verification>('POST', '/log/verifications', {});
  expect(again.body.running).toEqual(asked.body.running);
  await locked.end();
  job().wake();
  await job().idle();
  const done = await health(ours.reviewer);
  expect(done).toMatchObject({ state: 'sound', running: null });
});

test('on the command line, without the service: sound, held to a checkpoint of one’s own, and altered', async () => {
  const check = async (held?: { size: number; root: string }) => {
    const lines: string[] = [];
    const ok = await verifyWholeLog({
      serviceUrl: running.database.serviceUrl,
      dataFolder: '/nowhere',
      company: ours.id,
      keysFolder: running.keysFolder,
      held,
      say: (line) => lines.push(line),
    });
    return { ok, said: lines.join('\n') };
  };
  const good = await check();
  expect(good.ok).toBe(true);
  expect(good.said).toMatch(/Held to the checkpoint of \d+ entries kept outside the database\./);
  const { rows } = await owner.query<{ size: string; root: Buffer }>(
    'SELECT size, root FROM ledger.checkpoint WHERE log_id = $1 ORDER BY size LIMIT 1',
    [ours.id],
  );
  const size = Number(rows[0]?.size);
  expect((await check({ size, root: rows[0]!.root.toString('base64') })).ok).toBe(true);
  const other = await check({ size, root: Buffer.alloc(32, 7).toString('base64') });
  expect(other.ok).toBe(false);
  const altered = await tampered(
    `SET session_replication_role = replica;
     UPDATE ledger.event SET type = 'x/1' WHERE log_id = '${ours.id}' AND pos = 3`,
    () => check(),
  );
  expect(altered.ok).toBe(false);
  expect(altered.said).toContain('First bad position: 3: columns differ from the body: type.');
  await expect(
    verifyWholeLog({
      serviceUrl: undefined,
      dataFolder: mkdtempSync(path.join(tmpdir(), 'gauge-none-')),
      company: undefined,
      keysFolder: undefined,
      held: undefined,
      say: () => undefined,
    }),
  ).rejects.toThrow('No database runs on');
}, 60_000);
