// One house roof over HTTP from its order to the decision on a claim: papers issued and printed again,
// change order, delivery, warranty, customer's link, reminders, erasure.

import { createHash } from 'node:crypto';
import path from 'node:path';
import { beforeAll, describe, expect, test } from '@jest/globals';
import type { CommandInput } from '#jobs/contract';
import { openKeyRing, openProof } from '#ledger';
import { ORDER, v, WARRANTY } from '../../libs/jobs/after-order/order-files.js';
import { originOf } from '../../apps/api/data/signing.js';
import { attachmentsOf, pdfText, testByPoppler } from '../read-pdf.js';
import { call, withService } from '../service.js';
import { decide, erase, openJob, order, type Told } from './ordered.js';

const running = withService({ keys: true });
let told: Told;
const sha256 = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');

async function pdf(of: string): Promise<Buffer> {
  const response = await fetch(`${running.address}/api/jobs/${told.id}/papers/${of}/print.pdf`, {
    headers: { cookie: told.people.office.cookie },
  });
  if (response.status !== 200) throw new Error(await response.text());
  return Buffer.from(await response.arrayBuffer());
}

interface Listed {
  readonly paper: string;
  readonly about: string;
  readonly pos: number | null;
  readonly record_digest: string | null;
  readonly pdf_digest: string | null;
  readonly acknowledged: readonly { readonly name: string }[];
}
const papers = async () =>
  (await told.people.office.get<{ papers: readonly Listed[] }>(`/jobs/${told.id}/papers`)).body
    .papers;

beforeAll(async () => {
  told = await openJob(running, 'house');
  await decide(told, 'house');
}, 120_000);

describe('the order', () => {
  test('is refused with all that is missing, then issued; its row says delivery', async () => {
    const refused = await told.ask('office', ORDER);
    expect(refused.status).toBe(422);
    expect(refused.body.refusals?.length).toBeGreaterThan(7);
    const view = await order(told);
    expect(view.after).toMatchObject({
      stage: 'delivery',
      orders: [{ order: 'o1', revisions: [{ revision: 1, standing: 'in force' }] }],
    });
    const { body } = await told.people.office.get<{ rows: object[] }>('/jobs?stage=delivery');
    expect(body.rows).toMatchObject([{ stage_words: 'Delivery', on: 'supplier' }]);
  }, 60_000);

  test('its paper is an entry of the log with ids and no names; the print carries it and is the same bytes again', async () => {
    const record = await told.people.office.get<{ data: { content: object }; pos: number }>(
      `/jobs/${told.id}/papers/order/o1.1/record.json`,
    );
    expect(record.body).toMatchObject({
      type: 'paper-issued/1',
      data: { content: { document: 'order', deliver_to: told.site } },
    });
    expect(JSON.stringify(record.body)).not.toContain('County Road');
    const first = await pdf('order/o1.1');
    const again = await pdf('order/o1.1');
    expect(sha256(again)).toBe(sha256(first));
    const [listed] = await papers();
    expect(listed).toMatchObject({
      paper: 'order',
      about: 'o1.1',
      pos: record.body.pos,
      pdf_digest: sha256(first),
    });
  }, 60_000);

  testByPoppler(
    'attached to the print are that entry, byte for byte, and a proof of it that verifies without the service',
    async () => {
      const attached = attachmentsOf(await pdf('order/o1.1'));
      const record = attached.get('record.json') ?? Buffer.alloc(0);
      const served = await fetch(
        `${running.address}/api/jobs/${told.id}/papers/order/o1.1/record.json`,
        { headers: { cookie: told.people.office.cookie } },
      );
      expect(Buffer.from(await served.arrayBuffer()).equals(record)).toBe(true);
      const { pos } = JSON.parse(record.toString()) as { pos: number };
      const origin = originOf(told.company);
      const verifiers = openKeyRing(
        path.join(running.keysFolder ?? '', 'signing-key.json'),
      ).verifiers(origin);
      const proof = attached.get('proof.txt')?.toString() ?? '';
      expect(openProof(proof, pos, record, verifiers).size).toBeGreaterThanOrEqual(pos);
      const altered = Buffer.from(record.toString().replace('slate', 'white'));
      expect(() => openProof(proof, pos, altered, verifiers)).toThrow(
        'is not the one that was recorded',
      );
    },
  );

  test('goes to a spreadsheet, line by line', async () => {
    const csv = await told.people.office.get<string>(`/jobs/${told.id}/orders/o1.1/lines.csv`);
    expect(csv.body.split('\r\n')[1]).toBe(
      'p1,South,panel,"Snap seam 16, 24 gauge",40,288,24,0.0236,steel AZ50 PVDF slate,,',
    );
    const xlsx = await told.people.office.get(`/jobs/${told.id}/orders/o1.1/lines.xlsx`);
    expect(xlsx.headers.get('content-type')).toContain('spreadsheetml');
  });

  test('a change order makes a second revision; the first stays as it was printed', async () => {
    const before = sha256(await pdf('order/o1.1'));
    await told.play('manager', {
      type: 'open-change-order',
      order: 'o1',
      reason: 'two more pieces',
    });
    await told.play('office', {
      ...ORDER,
      lines: [{ ...ORDER.lines[0]!, count: 42 }, ORDER.lines[1]!],
    } as CommandInput);
    const second = await told.people.office.get(`/jobs/${told.id}/papers/order/o1.2`);
    expect(second.body).toMatchObject({
      change_reason: 'two more pieces',
      difference: [{ line: 'p1', what: 'changed' }],
      deliver_to: 'House on the ridge, 12 County Road, Anytown KS',
    });
    expect(sha256(await pdf('order/o1.1'))).toBe(before);
    expect((await pdf('order/o1.2')).subarray(0, 5).toString()).toBe('%PDF-');
  }, 60_000);
});

describe('delivery, installation and warranty', () => {
  test('what is short stays named until it came or is settled', async () => {
    const short = await told.play('crew', {
      type: 'record-receipt',
      order: 'o1',
      on: '2026-03-20',
      stored_dry: true,
      lots: [{ surface: 's1', lot: 'coil-7' }],
      lines: [
        { line: 'p1', count: 42 },
        { line: 'c1', count: 599 },
      ],
    });
    expect(short.after.orders[0]?.short).toEqual(['Sliding clip: 599 of 600 came']);
    await told.play('office', {
      type: 'settle-receipt',
      order: 'o1',
      line: 'c1',
      words: 'one on hand',
    });
    await told.play('crew', {
      type: 'record-as-built',
      surface: 's1',
      fastener: 'clip-s',
      zones: [{ zone: 'all', spacing: v('24', 'in') }],
      files: [await told.file('deck.jpg')],
    });
    await told.play('office', {
      type: 'record-inspection',
      on: '2026-04-10',
      passed: true,
      punch: [{ id: 'k1', words: 'touch up rake' }],
    });
    await told.play('crew', { type: 'close-punch-item', item: 'k1', words: 'done' });
    expect(
      (await told.play('office', { type: 'record-completion', on: '2026-04-12' })).after.stage,
    ).toBe('warranty');
  }, 60_000);

  test('registered late, the warranty document says so and is printed', async () => {
    const reminders = await told.people.office.get<{
      reminders: { kind: string; overdue: boolean }[];
    }>('/reminders');
    expect(reminders.body.reminders).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ kind: 'registration-window', overdue: true }),
      ]),
    );
    await told.play('office', {
      type: 'file-registration',
      kind: 'paint',
      on: '2026-06-22',
      window_days: 60,
    });
    const terms = await told.file('terms.pdf');
    await told.play('office', { ...WARRANTY, terms } as CommandInput);
    const paper = await told.people.office.get(`/jobs/${told.id}/papers/warranty/w1`);
    expect(paper.body).toMatchObject({
      owner: 'Robin Sample',
      registration: { late_days: 11 },
      supplier_terms: { digest: terms.digest },
    });
    expect((await pdf('warranty/w1')).length).toBeGreaterThan(10_000);
  }, 60_000);

  testByPoppler(
    "attached to it is the warrantor's text, byte for byte, as its digest says",
    async () => {
      const print = await pdf('warranty/w1');
      const text = attachmentsOf(print).get('terms.pdf') ?? Buffer.alloc(0);
      expect(text.toString()).toBe('terms.pdf, invented');
      expect(pdfText(print)).toContain(sha256(text));
      expect(pdfText(print)).toContain('1 Mill Lane, Anytown KS (invented)');
    },
  );
});

describe('the customer', () => {
  test('sees what was sent, and that acknowledging makes no roof safe; nothing else', async () => {
    const link = await told.people.office.send<{ token: string }>(
      'POST',
      `/jobs/${told.id}/customer-links`,
      { papers: [{ paper: 'warranty', about: 'w1' }] },
    );
    const { token } = link.body;
    const opened = await call<{ caution: string; papers: object[] }>(
      running.address,
      'POST',
      '/customer/open',
      { token },
    );
    expect(opened.body).toMatchObject({
      company: 'Ridge and Valley Roofing (invented)',
      papers: [{ paper: 'warranty', about: 'w1', acknowledged_at: null }],
    });
    expect(opened.body.caution).toContain('does not make a roof safe or lawful');
    expect(
      (
        await call(running.address, 'POST', '/customer/paper', {
          token,
          paper: 'order',
          about: 'o1.1',
        })
      ).status,
    ).toBe(404);
    expect(
      (
        await call(running.address, 'POST', '/customer/acknowledge', {
          token,
          paper: 'warranty',
          about: 'w1',
          name: 'Robin Sample',
        })
      ).status,
    ).toBe(204);
    expect((await papers()).find(({ paper }) => paper === 'warranty')?.acknowledged).toMatchObject([
      { name: 'Robin Sample' },
    ]);
    expect(
      (await call(running.address, 'POST', '/customer/open', { token: 'x'.repeat(43) })).status,
    ).toBe(404);
  }, 60_000);
});

describe('a claim in year 8', () => {
  test('a fade term without a scale is an open question; a person decides, and the letter says both', async () => {
    await told.play('reviewer', {
      type: 'open-claim',
      claim: 'q1',
      surface: 's1',
      kind: 'fade',
      lot: 'coil-7',
      document: 'w1',
      notice: '2034-03-01',
      words: 'south side has faded',
      files: [await told.file('wide.jpg')],
    });
    const view = await told.play('reviewer', {
      type: 'record-reading',
      claim: 'q1',
      on: '2034-03-20',
      what: 'color',
      scale: 'Hunter',
      illuminant: 'C',
      observer: '2',
      washed: true,
      instrument: 'meter',
      calibrated: '2034-03-01',
      retained: { L: '30', a: '1', b: '-2' },
      weathered: { L: '34', a: '1', b: '-1' },
    });
    expect(view.after.claims[0]?.tests).toEqual(
      expect.arrayContaining([expect.objectContaining({ test: 'fade', outcome: 'open' })]),
    );
    await told.play('reviewer', {
      type: 'decide-claim',
      claim: 'q1',
      decision: 'accepted-in-part',
      reason: 'the term is open; goodwill',
      clause: '4',
    });
    const letter = await told.people.reviewer.get(`/jobs/${told.id}/papers/decision-letter/q1`);
    expect(letter.body).toMatchObject({
      decision: 'accepted-in-part',
      to: { name: 'Robin Sample' },
      decided_by: { name: 'reviewer' },
    });
    expect((await pdf('decision-letter/q1')).length).toBeGreaterThan(10_000);
  }, 60_000);

  test('a decision record is issued for the job as it stands', async () => {
    const { version } = await told.view();
    const issued = await told.people.reviewer.send(
      `POST`,
      `/jobs/${told.id}/papers/decision-record/${version}`,
      { size: 'a4' },
    );
    expect(issued.status).toBe(201);
    expect(issued.body).toMatchObject({
      pdf_digest: sha256(await pdf(`decision-record/${version}`)),
    });
  }, 60_000);
});

test('when the customer is erased, the prints with their name go, the entries and their order stay', async () => {
  const before = await told.people.office.get(`/jobs/${told.id}/papers/warranty/w1/record.json`);
  const first = sha256(await pdf('warranty/w1'));
  expect(await erase(told, told.customer)).toBe(204);
  expect((await told.people.office.get(`/jobs/${told.id}/papers/warranty/w1`)).body).toMatchObject({
    owner: expect.stringMatching(/^erased on \d{4}-\d\d-\d\d$/),
  });
  expect(
    (await told.people.office.get(`/jobs/${told.id}/papers/warranty/w1/record.json`)).body,
  ).toEqual(before.body);
  const again = await pdf('warranty/w1');
  expect(sha256(again)).not.toBe(first);
}, 60_000);

test('the owner sees where time went', async () => {
  const report = await told.people.manager.get<{
    stages: { stage: string }[];
    overrides: { stage: string; confirmations: number; rate: number }[];
  }>('/reports/stages');
  expect(report.body.stages.map(({ stage }) => stage)).toEqual(
    expect.arrayContaining(['style', 'delivery', 'installation', 'warranty']),
  );
  expect(report.body.overrides).toEqual(
    expect.arrayContaining([{ stage: 'gauge', confirmations: 1, with_overrides: 0, rate: 0 }]),
  );
  const setAside = async (span: string) =>
    (await told.people.manager.get<typeof report.body>(`/reports/stages?${span}`)).body.overrides;
  const day = (from: number) => new Date(Date.now() + from * 86_400_000).toISOString().slice(0, 10);
  expect(await setAside(`from=${day(-1)}&to=${day(1)}`)).toEqual(report.body.overrides);
  expect(await setAside(`to=${day(-2)}`)).toEqual([]);
  expect(await setAside(`from=${day(2)}`)).toEqual([]);
});
