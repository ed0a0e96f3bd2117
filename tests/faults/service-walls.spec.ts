// Two companies in one installation: neither can read, list or change the other's rows, by any
// route or by SQL as the service's own role; no company on a connection is an error.

import { beforeAll, describe, expect, test } from '@jest/globals';
import type pg from 'pg';
import { newClient } from '#ledger';
import { ROLES } from '#jobs/contract';
import { call, company, withService, type Client } from '../service.js';
import { openOne } from '../fuzz/open-one.js';

const running = withService();
let ours: Client & { company: string };
let theirs: { client: Client; company: string; job: string; party: string; file: string };
let sql: pg.Client;

const SECRET = 'Secretville';

beforeAll(async () => {
  const a = await company(running, 'Ours', { all: [...ROLES] });
  const b = await company(running, `Theirs of ${SECRET}`, { all: [...ROLES] });
  ours = { ...a.all, company: a.id };
  await openOne(ours);
  const party = await b.all.send<{ id: string }>('POST', '/parties', {
    kind: 'site',
    details: { name: SECRET },
  });
  const file = await b.all.send<{ digest: string }>('POST', '/files', SECRET, {
    'content-type': 'application/octet-stream',
    'x-file-name': SECRET,
  });
  theirs = {
    client: b.all,
    company: b.id,
    job: await openOne(b.all, `${SECRET.toUpperCase()}-1`),
    party: party.body.id,
    file: file.body.digest,
  };
  sql = newClient({ connectionString: running.database.serviceUrl });
  await sql.connect();
}, 60_000);

describe('by every route', () => {
  test('an id of another company is not found, and its words are nowhere', async () => {
    const { paths } = (
      await call<{ paths: Record<string, Record<string, unknown>> }>(
        running.address,
        'GET',
        '/openapi.json',
      )
    ).body;
    const values: Record<string, string> = {
      id: theirs.job,
      digest: theirs.file,
      request: 'r1',
      number: '1',
      name: 'wind',
    };
    let asked = 0;
    for (const [path, operations] of Object.entries(paths)) {
      for (const method of Object.keys(operations)) {
        if (path === '/api/session' && method !== 'get') continue;
        const id = path.includes('/parties/')
          ? theirs.party
          : path.includes('/users/')
            ? theirs.client.person.id
            : theirs.job;
        const where = path
          .replace('/api', '')
          .replace(/\{(\w+)\}/g, (_, name: string) => (name === 'id' ? id : (values[name] ?? 'x')));
        const query =
          where === '/parties'
            ? `?ids=${theirs.party}`
            : where.startsWith('/jobs') && method === 'get' && !path.includes('{')
              ? `?find=${SECRET}`
              : '';
        const body = method === 'get' ? undefined : bodyFor(path);
        const answer = await ours.send(method.toUpperCase(), where + query, body, {
          'if-match': '"3"',
        });
        asked++;
        const own = path.includes('{id}') || path.includes('{digest}');
        if (own && answer.status < 400)
          throw new Error(`${method} ${where} answered ${answer.status}`);
        expect(JSON.stringify(answer.body)).not.toContain(SECRET);
      }
    }
    expect(asked).toBeGreaterThan(30);
  }, 60_000);

  test("another company's party and file cannot be used in a job", async () => {
    const answer = await ours.send<{ refusals: { pointer: string }[] }>('POST', '/jobs', {
      name: 'Taken',
      site: { id: theirs.party },
      parties: { customer: { id: theirs.party } },
    });
    expect(answer.status).toBe(404);
    expect(answer.body.refusals.map(({ pointer }) => pointer)).toEqual([
      '/site',
      '/parties/customer',
    ]);
  });

  test('and everything of theirs is as it was', async () => {
    expect((await theirs.client.get(`/jobs/${theirs.job}`)).headers.get('etag')).toBe('"3"');
    const party = await theirs.client.get(`/parties?ids=${theirs.party}`);
    expect(party.body).toMatchObject({ parties: [{ details: { name: SECRET } }] });
    expect((await theirs.client.get(`/files/${theirs.file}`)).body).toBe(SECRET);
  });
});

function bodyFor(path: string): unknown {
  if (path.endsWith('/commands') || path.endsWith('/rehearsals'))
    return { type: 'add-note', about: null, words: 'x' };
  if (path.endsWith('/details')) return { name: 'x', reason: 'x' };
  return { reason: 'x', name: 'x' };
}

describe("by SQL as the service's role", () => {
  const tables = async () => {
    const owner = newClient({ connectionString: running.database.ownerUrl });
    await owner.connect();
    const { rows } = await owner.query<{ t: string; key: string; secured: boolean }>(`
      SELECT format('%I.%I', n.nspname, c.relname) AS t, c.relrowsecurity AS secured,
        CASE WHEN n.nspname = 'ledger' THEN 'log_id' WHEN c.relname = 'company' THEN 'id'
          ELSE 'company_id' END AS key
      FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
      WHERE n.nspname IN ('public', 'ledger') AND c.relkind IN ('r', 'p')
        AND c.relname <> '_prisma_migrations'`);
    await owner.end();
    return rows;
  };

  test('every table there is has its wall', async () => {
    const all = await tables();
    expect(all.length).toBeGreaterThan(14);
    expect(all.filter(({ secured }) => !secured)).toEqual([]);
  });

  test('no company on the connection is an error at every table', async () => {
    for (const { t } of await tables()) {
      await expect(sql.query(`SELECT * FROM ${t}`)).rejects.toThrow('No company is set');
    }
  });

  test('their rows are not there to read, change or remove, nor can any be added', async () => {
    await sql.query("SELECT set_config('gauge.company', $1, false)", [ours.company]);
    for (const { t, key } of await tables()) {
      expect(
        (await sql.query(`SELECT * FROM ${t} WHERE ${key} = $1`, [theirs.company])).rows,
      ).toEqual([]);
      expect(
        (await sql.query(`SELECT * FROM ${t} WHERE ${key} <> $1`, [ours.company])).rows,
      ).toEqual([]);
      for (const change of [
        `UPDATE ${t} SET ${key} = ${key} WHERE ${key} = $1`,
        `DELETE FROM ${t} WHERE ${key} = $1`,
      ]) {
        const done = await sql
          .query(change, [theirs.company])
          .catch(({ code }: { code: string }) => ({ rowCount: code === '42501' ? 0 : code }));
        expect({ change, rows: done.rowCount }).toEqual({ change, rows: 0 });
      }
      const has = (await sql.query(`SELECT FROM ${t}`)).rowCount;
      const copied = sql.query(
        `INSERT INTO ${t}
         SELECT (jsonb_populate_record(r, jsonb_build_object('${key}', $1::text))).*
         FROM ${t} r LIMIT 1`,
        [theirs.company],
      );
      if (has) await expect(copied).rejects.toThrow('row-level security');
      else await copied;
    }
  });

  test('the doors give nothing to who does not know the token', async () => {
    const unknown = Buffer.alloc(32);
    expect((await sql.query('SELECT * FROM door.session($1)', [unknown])).rows).toEqual([]);
    expect((await sql.query('SELECT * FROM door.use_link($1)', [unknown])).rows).toEqual([]);
    expect((await sql.query("SELECT * FROM door.sign_in('nobody@x.example')")).rows).toEqual([]);
  });

  test('an event can be neither changed nor removed', async () => {
    await expect(sql.query('UPDATE ledger.event SET body = body')).rejects.toThrow(
      'permission denied',
    );
    await expect(sql.query('DELETE FROM ledger.event')).rejects.toThrow('permission denied');
    await expect(sql.query('TRUNCATE ledger.event')).rejects.toThrow('permission denied');
  });
});
