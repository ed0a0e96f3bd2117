// The office's day: a file of jobs checked and imported whole, reminders and their calendar, mail that
// is never pretended, the owner's report, the register of licenses.

import { beforeAll, describe, expect, test } from '@jest/globals';
import { DUE_KINDS } from '#jobs';
import { Companies } from '../../apps/api/data/companies.js';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { OFFICE_LIST } from '../../apps/api/owner-report/keep-office-list.js';
import { call, company, withService, type Client } from '../service.js';

const running = withService();
let people: Readonly<Record<'office' | 'manager' | 'crew' | 'administrator', Client>> & {
  readonly id: string;
};
const CSV = { 'content-type': 'text/csv' };
const GOOD = [
  'number,name,customer,site,surfaces',
  '2026-0501,Barn,A. Customer,Hill,South: roof',
  '2026-0502,Shed,B. Customer,Dale,',
].join('\n');

beforeAll(async () => {
  people = await company(running, 'Office', {
    office: ['office'],
    manager: ['project-manager'],
    crew: ['crew-lead'],
    administrator: ['administrator'],
  });
}, 60_000);

interface Report {
  readonly digest: string;
  readonly jobs: number;
  readonly faults: readonly {
    readonly row: number;
    readonly column: string;
    readonly message: string;
  }[];
}
const check = async (text: string) =>
  (await people.office.send<Report>('POST', '/jobs/import/check', text, CSV)).body;
const confirm = (text: string, digest: string) =>
  people.office.send<{ jobs: number; detail?: string; faults?: { pointer: string }[] }>(
    'POST',
    '/jobs/import',
    text,
    { ...CSV, 'x-checked-digest': digest },
  );
const total = async () => (await people.office.get<{ total: number }>('/jobs')).body.total;

describe('import', () => {
  test('a bad row is named and nothing is written, not even when it is confirmed', async () => {
    const bad = `${GOOD}\n2026-0503,,C,Vale,South: lawn`;
    const report = await check(bad);
    expect(report.faults.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '4 name',
      '4 surfaces',
    ]);
    const refused = await confirm(bad, report.digest);
    expect(refused.status).toBe(422);
    expect(refused.body.faults?.map(({ pointer }) => pointer)).toEqual([
      '/row/4/name',
      '/row/4/surfaces',
    ]);
    expect(await total()).toBe(0);
  });

  test('another file than the one checked is refused', async () => {
    const { digest } = await check(GOOD);
    expect((await confirm(`${GOOD} `, digest)).status).toBe(409);
    expect((await confirm(GOOD, '')).status).toBe(422);
    expect(await total()).toBe(0);
  });

  test('the checked file is imported whole, once', async () => {
    const report = await check(GOOD);
    expect(report).toMatchObject({ jobs: 2, faults: [] });
    expect(await total()).toBe(0);
    expect((await confirm(GOOD, report.digest)).body.jobs).toBe(2);
    expect(await total()).toBe(2);
    expect((await confirm(GOOD, report.digest)).body.jobs).toBe(2);
    expect(await total()).toBe(2);
    expect((await people.office.get('/jobs?find=B. Customer')).body).toMatchObject({
      total: 1,
      rows: [{ number: '2026-0502', site: 'Dale' }],
    });
    expect((await check(GOOD.replace('0502', '0504'))).faults).toEqual([
      { row: 2, column: 'number', message: 'there is a job 2026-0501 already' },
    ]);
  }, 30_000);

  test('is not for the crew', async () => {
    expect((await people.crew.send('POST', '/jobs/import/check', GOOD, CSV)).status).toBe(403);
  });
});

describe('reminders', () => {
  test('a license near its end is in the list and in the calendar, by its secret address alone', async () => {
    const soon = new Date(Date.now() + 10 * 86_400_000).toISOString().slice(0, 10);
    await people.administrator.send('POST', '/licenses', {
      name: 'Avery Stone, PE (invented)',
      number: 'KS-1',
      jurisdiction: 'KS',
      expires: soon,
    });
    const { body } = await people.manager.get<{ reminders: object[] }>('/reminders');
    expect(body.reminders).toMatchObject([
      { kind: 'license-expiring', falls_on: soon, overdue: false },
    ]);
    expect(
      (await people.manager.get<{ reminders: object[] }>('/reminders?days=5')).body.reminders,
    ).toEqual([]);
    const first = await people.manager.send<{ path: string }>('POST', '/reminders/feed');
    const where = first.body.path.replace('/api', '');
    const feed = await call<string>(running.address, 'GET', where);
    expect(feed.headers.get('content-type')).toContain('text/calendar');
    expect(feed.body).toContain(`DTSTART;VALUE=DATE:${soon.replaceAll('-', '')}`);
    await people.manager.send('POST', '/reminders/feed');
    expect((await call(running.address, 'GET', where)).status).toBe(404);
  });

  test('each kind of thing due is in the calendar', async () => {
    const { pool } = running.service.get(Companies).of(people.id);
    const on = new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10);
    const live = await running.service.get(Ledgers).liveList(people.id, OFFICE_LIST);
    for (const kind of DUE_KINDS)
      await pool.query(
        `INSERT INTO reminder (company_id, generation, job, kind, about, number, job_name, falls_on, words)
         VALUES ($1, $2, 'j1', $3, 'a', '2026-0142', 'Barn', $4, 'due')`,
        [people.id, live.generation, kind, on],
      );
    const made = await people.manager.send<{ path: string }>('POST', '/reminders/feed');
    const feed = await call<string>(running.address, 'GET', made.body.path.replace('/api', ''));
    const kinds = [...feed.body.matchAll(/^CATEGORIES:(\S+)\r$/gm)].map(([, kind]) => kind);
    expect([...new Set(kinds)].sort()).toEqual([...DUE_KINDS, 'license-expiring'].sort());
    await pool.query(`DELETE FROM reminder WHERE job = 'j1'`);
  });

  test('without a mail server nothing is said to be sent', async () => {
    expect((await people.manager.send('POST', '/reminders/mail')).status).toBe(409);
  });
});

test('a license stands once in the register, and says how it is known', async () => {
  const given = {
    name: 'Avery Stone, PE (invented)',
    number: 'KS-2',
    jurisdiction: 'KS',
    expires: '2099-01-01',
  };
  const entered = await people.manager.send<{ id: string }>('POST', '/licenses', given);
  expect(entered.body).toMatchObject({ checked: 'stated by its holder', standing: 'active' });
  expect((await people.manager.send('POST', '/licenses', given)).status).toBe(409);
  const checked = await people.manager.send('PUT', `/licenses/${entered.body.id}`, {
    ...given,
    checked: { on: '2026-11-20', how: "the board's own list" },
  });
  expect(checked.body).toMatchObject({ checked: "checked on 2026-11-20: the board's own list" });
});

test('the report of an office that has just begun', async () => {
  const { body } = await people.manager.get<{
    stages: object[];
    waits: object[];
    overrides: object[];
  }>('/reports/stages');
  expect(body.overrides).toEqual([]);
  expect(body.stages).toEqual(expect.arrayContaining([expect.objectContaining({ jobs: 1 })]));
});

describe('the company’s settings', () => {
  const read = async () => (await people.administrator.get<object>('/company')).body;
  const change = (body: object) =>
    people.administrator.send<{ faults?: { pointer: string }[] }>('PATCH', '/company', body);

  test('change by their administrator, each by itself', async () => {
    expect((await change({ address: ' 1 Seam Street, Exampleville KS ' })).status).toBe(200);
    expect((await change({ phone: '555 0100' })).status).toBe(200);
    expect(await read()).toMatchObject({
      name: 'Office',
      address: '1 Seam Street, Exampleville KS',
      phone: '555 0100',
    });
    expect((await people.office.send('PATCH', '/company', { phone: '' })).status).toBe(403);
  });

  test('are refused with every fault named, and nothing of them changes', async () => {
    const before = await read();
    const refused = await change({ name: ' ', phone: '5'.repeat(61), address: 'Elsewhere' });
    expect(refused.status).toBe(422);
    expect(refused.body.faults?.map(({ pointer }) => pointer)).toEqual(['/name', '/phone']);
    expect(await read()).toEqual(before);
  });
});
