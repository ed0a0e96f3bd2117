// The feed of events: every entry once and in order for another program, ids alone, a wait that ends with
// a commit of any instance, and a token that opens nothing else.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { startService, type Service } from '../../apps/api/service.js';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { openOne } from '../fuzz/open-one.js';
import { call, company, settingsFor, withService, type Answer } from '../service.js';

interface CloudEvent {
  readonly specversion: string;
  readonly id: string;
  readonly source: string;
  readonly type: string;
  readonly sequence: string;
  readonly dataref: string;
  readonly data: { readonly position: number; readonly stream: string };
}
const running = withService();
let ours: Awaited<ReturnType<typeof people>>;
let second: Service;
let token: string;
let tokenId: string;
const people = () =>
  company(running, 'Ours', {
    administrator: ['administrator'],
    office: ['office'],
    reviewer: ['warranty-reviewer'],
  });

beforeAll(async () => {
  ours = await people();
  second = await startService(settingsFor(running.database.serviceUrl));
  const made = await ours.administrator.send<{ id: string; token: string }>(
    'POST',
    '/log/feed-tokens',
    { name: 'Bookkeeping' },
  );
  ({ id: tokenId, token } = made.body);
}, 60_000);
afterAll(() => second.stop());

const feed = (query: string, bearer = token, address = running.address) =>
  call<string | CloudEvent[]>(address, 'GET', `/log/events${query}`, undefined, {
    authorization: `Bearer ${bearer}`,
  });
const events = (answer: Answer<unknown>): CloudEvent[] => answer.body as CloudEvent[];
const next = (answer: Answer<unknown>): number => Number(answer.headers.get('next-after'));

test('page by page the whole log, each position once, with the next one given', async () => {
  const job = await openOne(ours.office, 'HANSEN-4471');
  const seen: CloudEvent[] = [];
  for (let after = 0; ;) {
    const answer = await feed(`?after=${after}&limit=3`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toContain('application/cloudevents-batch+json');
    if (events(answer).length === 0) break;
    seen.push(...events(answer));
    after = next(answer);
    expect(answer.headers.get('link')).toBe(`</api/log/events?after=${after}&limit=3>; rel="next"`);
  }
  const head = await running.service.get(Ledgers).ledger.head(ours.id);
  expect(seen.map(({ data }) => data.position)).toEqual(
    Array.from({ length: head.pos }, (_, i) => i + 1),
  );
  expect([...seen].sort((a, b) => (a.sequence < b.sequence ? -1 : 1))).toEqual(seen);
  expect(new Set(seen.map(({ id, source }) => `${source} ${id}`)).size).toBe(seen.length);
  expect(seen.filter(({ data }) => data.stream === `job/${job}`).length).toBeGreaterThan(0);
});

test('ids and no words: neither names nor notes, nor the number somebody typed', async () => {
  const job = await openOne(ours.office, 'HANSEN-4472');
  await ours.office.send(
    'POST',
    `/jobs/${job}/commands`,
    { type: 'add-note', about: null, words: 'Call Robin Hansen at 555-0100' },
    { 'if-match': '"3"' },
  );
  const text = JSON.stringify((await feed('?limit=1000')).body);
  expect(text).toContain('note-added/1');
  for (const word of ['HANSEN', 'Robin', '555-0100', 'A roof', 'A customer', 'office.'])
    expect(text).not.toContain(word);
});

test('a wait ends with the next commit, also of another instance, and at its bound', async () => {
  const { pos } = await running.service.get(Ledgers).ledger.head(ours.id);
  const asked = Date.now();
  const empty = await feed(`?after=${pos}&wait=1`);
  expect(events(empty)).toEqual([]);
  expect(next(empty)).toBe(pos);
  expect(Date.now() - asked).toBeGreaterThanOrEqual(990);
  const waiting = feed(`?after=${pos}&wait=30`, token, second.address);
  const begun = Date.now();
  await new Promise((resolve) => setTimeout(resolve, 100));
  await openOne(ours.office);
  expect(events(await waiting)[0]?.data.position).toBe(pos + 1);
  expect(Date.now() - begun).toBeLessThan(20_000);
});

test('a wait does not keep the service from stopping', async () => {
  const third = await startService(settingsFor(running.database.serviceUrl));
  const { pos } = await running.service.get(Ledgers).ledger.head(ours.id);
  const waiting = feed(`?after=${pos}&wait=30`, token, third.address);
  await new Promise((resolve) => setTimeout(resolve, 200));
  const begun = Date.now();
  await third.stop();
  expect(events(await waiting)).toEqual([]);
  expect(Date.now() - begun).toBeLessThan(10_000);
});

test('for who may: a session of an administrator or reviewer, or the token; the token opens nothing else', async () => {
  expect((await ours.reviewer.get('/log/events')).status).toBe(200);
  expect((await ours.office.get('/log/events')).status).toBe(403);
  expect((await call(running.address, 'GET', '/log/events')).status).toBe(401);
  expect((await feed('', 'x'.repeat(43))).status).toBe(401);
  for (const where of ['/jobs', '/users', '/log/events/1', '/log/readings', '/log/feed-tokens'])
    expect(
      (await call(running.address, 'GET', where, undefined, { authorization: `Bearer ${token}` }))
        .status,
    ).toBe(401);
});

test('an entry itself is read by who may, as it is kept, and the reading is noted', async () => {
  const [first] = events(await ours.reviewer.get('/log/events?limit=1'));
  const where = first?.dataref.replace('/api', '') ?? '';
  expect((await ours.office.get(where)).status).toBe(403);
  const entry = await ours.reviewer.get<{ pos: number; id: string }>(where);
  expect(entry.body).toMatchObject({ pos: 1, id: first?.id });
  const noted = await ours.administrator.get<{ readings: { about: string; reader: object }[] }>(
    '/log/readings?what=event',
  );
  expect(noted.body.readings).toMatchObject([
    { about: '1', reader: { id: ours.reviewer.person.id, name: 'reviewer' } },
  ]);
});

test('a token of another company shows that company alone; an ended one shows nothing', async () => {
  const theirs = await people();
  const made = await theirs.administrator.send<{ token: string }>('POST', '/log/feed-tokens', {
    name: 'Theirs',
  });
  const seen = events(await feed('?limit=1000', made.body.token));
  expect(new Set(seen.map(({ source }) => source))).toEqual(new Set([`/api/log/${theirs.id}`]));
  const other = await theirs.administrator.send('DELETE', `/log/feed-tokens/${tokenId}`);
  expect(other.status).toBe(404);
  expect((await ours.administrator.send('DELETE', `/log/feed-tokens/${tokenId}`)).status).toBe(204);
  expect((await feed('')).status).toBe(401);
});
