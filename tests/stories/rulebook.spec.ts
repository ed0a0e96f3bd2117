// Keeping the rulebook over HTTP: drafted with every fault named, previewed in the background,
// published with a reason; two people at once; and the next decision names the new edition.

import { beforeAll, expect, test } from '@jest/globals';
import { setTimeout as sleep } from 'node:timers/promises';
import { SignInLinks } from '../../apps/api/people/sign-in-links.js';
import { fillDemonstration } from '../../apps/cli/demonstration.js';
import { DEMONSTRATION, MANAGER, OFFICE, STANDARDS } from '../../apps/cli/demonstration/people.js';
import { DRAFT } from '../../apps/cli/demonstration/rules-draft.js';
import { HOUSE } from '../../apps/cli/demonstration/house.js';
import { signInByLink, withService, type Answer, type Client } from '../service.js';

interface Draft {
  readonly id: string;
  readonly version: number;
  readonly number: number;
  readonly base: number;
  readonly newest: number;
  readonly by: string;
  readonly changes: readonly { readonly rule: string; readonly because?: string }[];
}
interface Preview {
  readonly id: string;
  readonly state: string;
  readonly done: number;
  readonly counts: Readonly<Record<string, number>>;
  readonly words: string;
  readonly differing: number;
}
interface Failed {
  readonly faults?: readonly { readonly pointer: string }[];
  readonly refusals?: readonly { readonly code: string; readonly words: string }[];
}

const running = withService();
let standards: Client;
let manager: Client;
const today = new Date().toISOString().slice(0, 10);
const source = 'office meeting of 30 October (invented)';
const edits = (...of: readonly object[]) => ({
  in_force_from: today,
  summary: 'Changed for the test.',
  edits: of.map((each) => ({ source, ...each })),
});
const post = <T>(where: string, body: object, headers = {}): Promise<Answer<T>> =>
  standards.send<T>('POST', `/rulebook${where}`, body, headers);
const seen = ({ version }: Draft) => ({ 'if-match': `"${version}"` });
const drafted = async (...of: readonly object[]): Promise<Draft> => {
  const { status, body } = await post<Draft>('/drafts', edits(...of));
  if (status !== 201) throw new Error(JSON.stringify(body));
  return body;
};

beforeAll(async () => {
  await fillDemonstration(running.service);
  const as = async (who: { readonly id: string }) =>
    signInByLink(
      running.address,
      await running.service.get(SignInLinks).make(DEMONSTRATION.company, who.id),
    );
  standards = await as(STANDARDS);
  manager = await as(MANAGER);
}, 120_000);

async function finished(id: string): Promise<Preview> {
  for (let waited = 0; waited < 60_000; waited += 100) {
    const { body } = await standards.get<Preview>(`/rulebook/previews/${id}`);
    if (body.state !== 'waiting' && body.state !== 'running') return body;
    await sleep(100);
  }
  throw new Error('the preview does not end');
}

test('a faulty draft is refused with every fault, and nothing is recorded', async () => {
  const { status, body } = await post<Failed>(
    '/drafts',
    edits(
      { rule: 'GAUGE-01', severity: 'note' },
      { rule: 'GAUGE-05', settings: { not_stocked: 'yes' } },
      { rule: 'NONE-01' },
    ),
  );
  expect(status).toBe(422);
  expect(body.refusals?.map(({ code }) => code)).toEqual(['BOOK-04', 'BOOK-04', 'BOOK-04']);
  const unsourced = await post<Failed>('/drafts', {
    ...edits(),
    edits: [{ rule: 'GAUGE-05', leave_out: true }],
  });
  expect(unsourced.body.faults?.map(({ pointer }) => pointer)).toEqual(['/edits/0/source']);
  const list = await standards.get<{ drafts: readonly Draft[] }>('/rulebook/drafts');
  expect(list.body.drafts.map(({ id }) => id)).toEqual([DRAFT]);
});

test('another role reads drafts, and neither drafts nor previews', async () => {
  const asked = await manager.send('POST', '/rulebook/drafts', edits({ rule: 'GAUGE-06' }));
  expect(asked.status).toBe(403);
  expect((await manager.get('/rulebook/drafts')).status).toBe(200);
});

test('the same key drafts once; a draft is not an edition and is not saved over another save', async () => {
  const key = { 'idempotency-key': 'draft-once' };
  const body = edits({ rule: 'GAUGE-06', leave_out: true });
  const [first, again] = [
    await post<Draft>('/drafts', body, key),
    await post<Draft>('/drafts', body, key),
  ];
  expect(again.body).toEqual(first.body);
  expect(first.body).toMatchObject({ number: 3, base: 2, newest: 2, by: STANDARDS.name });
  const { body: editions } = await standards.get<{ editions: readonly { number: number }[] }>(
    '/rulebook/editions',
  );
  expect(editions.editions.map(({ number }) => number)).toEqual([1, 2]);
  const save = (version: Draft) =>
    standards.send<Draft & Failed>('PUT', `/rulebook/drafts/${version.id}`, body, seen(version));
  const saved = await save(first.body);
  expect(saved.status).toBe(200);
  const stale = await save(first.body);
  expect([stale.status, stale.body.refusals?.map(({ code }) => code)]).toEqual([412, ['BOOK-10']]);
  const withdrawn = await post(`/drafts/${first.body.id}/withdrawal`, { reason: 'not agreed' });
  expect(withdrawn.status).toBe(204);
  expect((await standards.get(`/rulebook/drafts/${first.body.id}`)).status).toBe(404);
});

test('the open surfaces and every past decision are previewed in the background', async () => {
  const draft = await drafted(
    { rule: 'SIGN-01', settings: { utilization_limit: 0.1 } },
    { rule: 'SUB-02', severity: 'refuse' },
  );
  const start = (scope: string) => post<Preview>(`/drafts/${draft.id}/previews`, { scope });
  const [open, all] = [await start('open'), await start('all')];
  expect([open.status, open.body.state]).toEqual([201, 'running']);
  expect(all.body.state).toBe('waiting');
  expect((await start('all')).body.id).toBe(all.body.id);
  const [ofOpen, ofAll] = [await finished(open.body.id), await finished(all.body.id)];
  expect(ofOpen.words).toMatch(/^4 open surfaces checked: 3 same, 1 now blocked$/);
  expect(ofAll.words).toMatch(/^\d+ past decisions checked: \d+ same/);
  for (const each of [ofOpen, ofAll]) {
    expect(each.state).toBe('done');
    const sum = Object.values(each.counts).reduce((a, b) => a + b, 0);
    expect(sum).toBe(each.done);
    const rows = await standards.get<{ rows: readonly object[]; total: number }>(
      `/rulebook/previews/${each.id}/rows`,
    );
    expect(rows.body.total).toBe(each.differing);
    const csv = await standards.get<string>(`/rulebook/previews/${each.id}/rows.csv`);
    expect(csv.body.trim().split(/\r?\n/)).toHaveLength(each.differing + 1);
  }
  expect(ofAll.counts['now-blocked']).toBeGreaterThan(0);
  const none = await standards.get<{ total: number }>(
    `/rulebook/previews/${ofAll.id}/rows?rule=NONE-01`,
  );
  expect(none.body.total).toBe(0);
}, 90_000);

test('a cancelled preview stops, and the service answers while one runs', async () => {
  const draft = await drafted({ rule: 'GAUGE-06', leave_out: true });
  const { body } = await post<Preview>(`/drafts/${draft.id}/previews`, { scope: 'all' });
  const began = performance.now();
  expect((await standards.get('/rulebook/editions')).status).toBe(200);
  expect(performance.now() - began).toBeLessThan(5_000);
  const cancelled = await standards.send<Preview>('DELETE', `/rulebook/previews/${body.id}`);
  expect(cancelled.body.state).toBe('cancelled');
  await sleep(300);
  const after = await standards.get<Preview>(`/rulebook/previews/${body.id}`);
  expect(after.body.state).toBe('cancelled');
  const other = await running.service.get(SignInLinks).make(DEMONSTRATION.company, OFFICE.id);
  const office = await signInByLink(running.address, other);
  expect((await office.get(`/rulebook/previews/${body.id}`)).status).toBe(403);
});

test('of two drafts one is published; the other is refused with what changed, and saved again', async () => {
  const mine = await drafted({ rule: 'GAUGE-07', settings: { hail_country_stone_in: 1.5 } });
  const theirs = await drafted({ rule: 'GAUGE-12', leave_out: true });
  const { body: preview } = await post<Preview>(`/drafts/${mine.id}/previews`, { scope: 'open' });
  await finished(preview.id);
  const reason = 'Agreed in the office meeting.';
  const publish = (draft: Draft, more = {}) =>
    post<{ number: number } & Failed>(
      `/drafts/${draft.id}/publication`,
      { reason, running_jobs: 'stand', ...more },
      seen(draft),
    );
  const foreign = await publish(theirs, { preview: preview.id });
  expect(foreign.body.faults?.map(({ pointer }) => pointer)).toEqual(['/preview']);
  const published = await publish(mine, { preview: preview.id });
  expect([published.status, published.body.number]).toEqual([201, 3]);
  const late = await publish(theirs);
  expect([late.status, late.body.refusals?.map(({ code }) => code)]).toEqual([412, ['BOOK-09']]);
  expect(late.body.refusals?.[0]?.words).toContain('hail_country_stone_in 1.75 → 1.5');
  const saved = await standards.send<Draft>(
    'PUT',
    `/rulebook/drafts/${theirs.id}`,
    edits({ rule: 'GAUGE-12', leave_out: true }),
    seen(theirs),
  );
  expect(saved.body).toMatchObject({ number: 4, base: 3, newest: 3 });
  const edition = await standards.get('/rulebook/editions/3');
  expect(edition.body).toMatchObject({
    state: 'in force',
    reason,
    running_jobs: 'stand',
    impact: expect.stringMatching(/^4 open surfaces checked: /),
    changes: [{ rule: 'GAUGE-07', was: '1.75', becomes: '1.5', because: source }],
  });
  const before = await standards.get('/rulebook/editions/2');
  expect(before.body).toMatchObject({ state: 'retired', retired_on: today });
}, 90_000);

test('what is confirmed from now on names the new edition; what was confirmed keeps its own', async () => {
  const { body: job } = await manager.get<JobBody>(`/jobs/${HOUSE.id}`);
  const surface = job.surfaces[0]!;
  expect(surface.stages.style.rules_edition?.number).toBe(2);
  const { profile, width } = surface.stages.style.content!;
  const answer = await manager.send<JobBody & Failed>(
    'POST',
    `/jobs/${HOUSE.id}/commands`,
    {
      type: 'choose-style',
      surface: surface.id,
      profile,
      width: { v: width, u: 'in' },
      reason: 'Looked at again under the new edition.',
      acknowledges: surface.stages.style.acknowledged,
    },
    { 'if-match': `"${job.version}"` },
  );
  expect([answer.status, answer.body.refusals ?? []]).toEqual([200, []]);
  expect(answer.body.surfaces[0]!.stages.style.rules_edition?.number).toBe(3);
});

test('today’s edition is asked apart from the record, and says so', async () => {
  const answer = await manager.get<{
    label: string;
    edition: number;
    decisions: readonly { stage: string; own_edition: number; answer: string }[];
  }>(`/jobs/${HOUSE.id}/under-today`);
  expect(answer.status).toBe(200);
  expect(answer.body.label).toMatch(/^Under edition 3, in force today\./);
  expect(answer.body.decisions.map(({ stage, own_edition }) => [stage, own_edition])).toEqual(
    expect.arrayContaining([
      ['style', 3],
      ['gauge', 2],
    ]),
  );
  expect(answer.body.decisions.every(({ answer: said }) => said === 'same')).toBe(true);
  const record = await manager.get<object>(`/jobs/${HOUSE.id}/decision-record`);
  expect(JSON.stringify(record.body)).not.toContain('in force today');
});

interface JobBody {
  readonly version: number;
  readonly surfaces: readonly {
    readonly id: string;
    readonly stages: {
      readonly style: {
        readonly content: { readonly profile: string; readonly width: string } | null;
        readonly acknowledged: readonly string[];
        readonly rules_edition: { readonly number: number } | null;
      };
    };
  }[];
}
