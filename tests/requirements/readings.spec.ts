// Requirement 19: reads of sensitive records and exports are themselves noted: who, what, when, and why
// where it was given; nobody changes the list, and it goes after six years and not before.

import { beforeAll, describe, expect, test } from '@jest/globals';
import { newClient, verifyBundle } from '#ledger';
import { Readings } from '../../apps/api/log/readings.js';
import { company, withService } from '../service.js';
import { decide, openJob, order, type Told } from '../stories/ordered.js';

interface Reading {
  readonly id: string;
  readonly reader: { readonly id: string; readonly kind: string; readonly name: string };
  readonly what: string;
  readonly about: string;
  readonly why: string | null;
}
const running = withService({ keys: true });
let told: Told;

beforeAll(async () => {
  told = await openJob(running, 'house');
  await decide(told, 'house');
  await order(told);
}, 120_000);

const noted = async (query = '') =>
  (await told.people.administrator.get<{ readings: Reading[] }>(`/log/readings${query}`)).body
    .readings;

describe('requirement 19: each of these is noted', () => {
  test.each([
    ['party-details', (t: Told) => `/parties?ids=${t.customer}`, (t: Told) => t.customer, null],
    [
      'job-list-export',
      () => '/jobs.csv?why=for+the+yearly+audit',
      () => '',
      'for the yearly audit',
    ],
    ['job-list-export', () => '/jobs.xlsx', () => '', null],
    ['decision-record', (t: Told) => `/jobs/${t.id}/decision-record`, (t: Told) => t.id, null],
    [
      'decision-record-print',
      (t: Told) => `/jobs/${t.id}/decision-record.pdf?why=asked+by+counsel`,
      (t: Told) => t.id,
      'asked by counsel',
    ],
    [
      'paper-print',
      (t: Told) => `/jobs/${t.id}/papers/order/o1.1/print.pdf`,
      (t: Told) => t.id,
      null,
    ],
    ['order-export', (t: Told) => `/jobs/${t.id}/orders/o1.1/lines.csv`, (t: Told) => t.id, null],
    ['event-feed', () => '/log/events', () => '', null],
    [
      'evidence',
      (t: Told) => `/jobs/${t.id}/evidence.zip?why=claim+of+the+owner`,
      (t: Told) => t.id,
      'claim of the owner',
    ],
  ] as const)(
    '%s of %s',
    async (what, where, about, why) => {
      const before = (await noted(`?what=${what}`)).length;
      const answer = await told.people.reviewer.get(where(told));
      expect(answer.status).toBe(200);
      const after = await noted(`?what=${what}`);
      expect(after.length).toBe(before + 1);
      expect(after[0]).toMatchObject({
        reader: { id: told.people.reviewer.person.id, kind: 'person', name: 'reviewer' },
        what,
        about: about(told),
        why,
      });
    },
    60_000,
  );

  test('the accounts, and this list itself', async () => {
    await told.people.administrator.get('/users');
    expect(await noted('?what=accounts')).toHaveLength(1);
    expect((await noted('?what=readings')).length).toBeGreaterThan(0);
  });
});

test('names alone are not details: they give no phone and are not noted', async () => {
  const before = (await noted('?what=party-details')).length;
  const names = await told.people.office.get(`/parties?only=names&ids=${told.customer}`);
  expect(names.body).toEqual({
    parties: [{ id: told.customer, kind: 'person', details: { name: 'Robin Sample' } }],
  });
  expect(await noted('?what=party-details')).toHaveLength(before);
  await told.people.office.get(`/parties?ids=${told.customer}`);
  await told.people.office.get(`/parties?ids=${told.customer}`);
  expect(await noted('?what=party-details')).toHaveLength(before + 1);
});

test('evidence needs a reason and the right role, and verifies offline', async () => {
  expect((await told.people.reviewer.get(`/jobs/${told.id}/evidence.zip`)).status).toBe(422);
  expect((await told.people.office.get(`/jobs/${told.id}/evidence.zip?why=x`)).status).toBe(403);
  const { cookie } = told.people.reviewer;
  const response = await fetch(`${running.address}/api/jobs/${told.id}/evidence.zip?why=claim`, {
    headers: { cookie },
  });
  const bytes = Buffer.from(await response.arrayBuffer());
  const report = verifyBundle(bytes);
  expect(report).toMatchObject({ ok: true });
  const says = report.says.join('\n');
  expect(says).toContain(`job/${told.id}: versions 1 to `);
  expect(says).toContain(`paper/${told.id}/order/o1.1: version 1, unaltered`);
  expect(says).toContain('order-o1.1.pdf is as issued');
  expect(says).toContain('rulebook: version');
}, 60_000);

test('the list is seen by administrator and reviewer alone, of their own company alone', async () => {
  expect((await told.people.office.get('/log/readings')).status).toBe(403);
  const theirs = await company(running, 'Theirs', { administrator: ['administrator'] });
  const seen = await theirs.administrator.get<{ readings: Reading[] }>('/log/readings');
  expect(seen.body.readings).toEqual([]);
});

test('nobody changes or removes a reading before six years are over; then it goes', async () => {
  const owner = newClient({ connectionString: running.database.ownerUrl });
  const service = newClient({ connectionString: running.database.serviceUrl });
  await Promise.all([owner.connect(), service.connect()]);
  try {
    await service.query(`SELECT set_config('gauge.company', $1, false)`, [told.company]);
    await expect(service.query(`UPDATE ledger.reading SET why = 'x'`)).rejects.toThrow(
      'permission denied',
    );
    await expect(service.query('DELETE FROM ledger.reading')).rejects.toThrow('kept for six years');
    for (const change of [`UPDATE ledger.reading SET why = 'x'`, 'TRUNCATE ledger.reading'])
      await expect(owner.query(change)).rejects.toThrow('is refused');
    await expect(owner.query('DELETE FROM ledger.reading')).rejects.toThrow('kept for six years');
    await owner.query(
      `INSERT INTO ledger.reading (log_id, id, at, reader, reader_kind, what, about)
       VALUES ($1, 'old', now() - interval '6 years 1 day', 'somebody', 'person', 'event', '1')`,
      [told.company],
    );
    const all = (await noted('?limit=500')).length;
    expect(await running.service.get(Readings).forgetOld(told.company)).toBe(1);
    expect(await noted('?limit=500')).toHaveLength(all - 1);
  } finally {
    await Promise.all([owner.end(), service.end()]);
  }
});
