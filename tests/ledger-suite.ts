// What every ledger must do, whatever its store: run by the memory ledger's and by the PostgreSQL
// ledger's spec.

import { beforeEach, expect, test } from '@jest/globals';
import { canonical, EMPTY_ROOT, leafHash, treeRoot } from '#ledger';
import type {
  LedgerOptions,
  AppendRequest,
  AppendResult,
  Ledger,
  NewEvent,
  Recorded,
} from '#ledger';

export interface Made {
  /** A ledger on a store of its own test, and every further one on the same store. */
  ledger(options?: LedgerOptions): Ledger;
}

const LOG = 'roofers';
let commands = 0;

export function request(
  stream: string,
  expectedVersion: number,
  events: readonly (NewEvent | string)[],
  command: Partial<AppendRequest['command']> = {},
): AppendRequest {
  return {
    log: LOG,
    command: { id: `command ${++commands}`, digest: 'digest', ...command },
    by: { person: 'p1', role: 'estimator' },
    streams: [
      {
        stream,
        expectedVersion,
        events: events.map((e) => (typeof e === 'string' ? { type: e, data: { said: e } } : e)),
      },
    ],
  };
}

/** Order, chain and root of a whole log, from its events alone. */
export async function expectSound(ledger: Ledger, log = LOG): Promise<Recorded[]> {
  const all = await ledger.readAll(log, { after: 0, limit: 100_000 });
  const leaves = all.map((event) => leafHash(canonical(event)));
  const heads = new Map<string, { version: number; leaf: string }>();
  all.forEach((event, i) => {
    const head = heads.get(event.stream);
    expect(event.version).toBe((head?.version ?? 0) + 1);
    expect(event.prev).toBe(head?.leaf ?? null);
    if (i > 0) expect(event.recordedAt > (all[i - 1] as Recorded).recordedAt).toBe(true);
    const leaf = (leaves[i] as Buffer).toString('hex');
    heads.set(event.stream, { version: event.version, leaf });
  });
  const head = await ledger.head(log);
  expect(head.pos).toBe(all.length);
  expect(head.root).toEqual(treeRoot(leaves));
  return all;
}

export function ledgerSuite(make: () => Made): void {
  let made: Made;
  let ledger: Ledger;

  beforeEach(async () => {
    made = make();
    ledger = made.ledger();
    await ledger.createLog(LOG);
  });

  test('a new log is empty, and making it again changes nothing', async () => {
    expect(await ledger.head(LOG)).toEqual({ pos: 0, root: EMPTY_ROOT, lastAt: '' });
    await ledger.append(request('a', 0, ['one']));
    await ledger.createLog(LOG);
    expect((await ledger.head(LOG)).pos).toBe(1);
  });

  test('what is appended is read back as it was given', async () => {
    const data = { text: 'gauge 24 – “€” \u0000 é', list: [1, 2.5, -0, null, true], z: { a: 1 } };
    const result = await ledger.append(request('a', 0, [{ type: 'said/1', data, id: 'e1' }]));
    const [event] = await ledger.readStream(LOG, 'a');
    expect(result).toMatchObject({ kind: 'appended', positions: [1], first: 1, last: 1 });
    expect(event).toMatchObject({
      log: LOG,
      pos: 1,
      stream: 'a',
      version: 1,
      prev: null,
      id: 'e1',
    });
    expect(event).toMatchObject({ type: 'said/1', by: { person: 'p1', role: 'estimator' } });
    expect(event?.data).toEqual({ ...data, list: [1, 2.5, 0, null, true] });
    expect(event?.salt).toMatch(/^[0-9a-f]{32}$/);
    expect(event?.recordedAt).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{6}Z$/);
    expect(event?.effectiveAt).toBe(event?.recordedAt);
    await expectSound(ledger);
  });

  test('versions and positions go on from one append to the next', async () => {
    await ledger.append(request('a', 0, ['one', 'two']));
    await ledger.append(request('b', 0, ['three']));
    const third = await ledger.append(request('a', 2, ['four']));
    expect(third).toMatchObject({ positions: [4], versions: { a: 3 } });
    expect((await ledger.readStream(LOG, 'a')).map((e) => e.pos)).toEqual([1, 2, 4]);
    expect((await ledger.readStream(LOG, 'a', { from: 2, upTo: 2 })).map((e) => e.pos)).toEqual([
      2,
    ]);
    expect(await ledger.readStream(LOG, 'nothing')).toEqual([]);
    await expectSound(ledger);
  });

  test.each([
    ['a stream said to be new that exists', 0],
    ['a version that is past', 1],
    ['a version that is not there yet', 3],
  ])('%s is refused with the actual version', async (_, expectedVersion) => {
    await ledger.append(request('a', 0, ['one', 'two']));
    const fresh = made.ledger();
    for (const each of [ledger, fresh]) {
      const result = await each.append(request('a', expectedVersion, ['three']));
      expect(result).toEqual({ kind: 'wrong-version', stream: 'a', actual: 2 });
    }
    expect((await ledger.head(LOG)).pos).toBe(2);
  });

  test('the same command is answered again and not done again', async () => {
    const once = request('a', 0, ['one', 'two'], { id: 'c1' });
    const first = (await ledger.append(once)) as Extract<AppendResult, { kind: 'appended' }>;
    await ledger.append(request('a', 2, ['three']));
    for (const each of [ledger, made.ledger()]) {
      expect(await each.append(once)).toEqual({ ...first, kind: 'repeated' });
    }
    const both = request('b', 0, ['four'], { id: 'c2' });
    const results = await Promise.all([ledger.append(both), ledger.append(both)]);
    expect(results.map((each) => each.kind)).toEqual(['appended', 'repeated']);
    expect((await expectSound(ledger)).length).toBe(4);
  });

  test('the same command id with another body is refused', async () => {
    await ledger.append(request('a', 0, ['one'], { id: 'c1' }));
    const other = request('b', 0, ['two'], { id: 'c1', digest: 'other' });
    expect(await ledger.append(other)).toEqual({ kind: 'command-reused' });
    expect((await ledger.head(LOG)).pos).toBe(1);
  });

  test('several streams are appended all or none', async () => {
    await ledger.append(request('a', 0, ['one']));
    const a = request('a', 1, ['two']).streams[0]!;
    const b = request('b', 0, ['three', 'four']).streams[0]!;
    const c = request('c', 7, ['five']).streams[0]!;
    const base = request('x', 0, ['x']);
    const refused = await ledger.append({ ...base, streams: [a, b, c] });
    expect(refused).toEqual({ kind: 'wrong-version', stream: 'c', actual: 0 });
    const kept = await ledger.append({ ...base, streams: [a, b] });
    expect(kept).toMatchObject({ kind: 'appended', first: 2, last: 4, versions: { a: 2, b: 2 } });
    await expectSound(ledger);
  });

  test('fifty writers at once leave no gap and no fork, and each stream keeps its order', async () => {
    const two = [ledger, made.ledger()];
    const writer = async (w: number): Promise<number> => {
      let kept = 0;
      let version = 0;
      for (let i = 0; i < 6; i++) {
        const result = await two[w % 2]!.append(request(`s${w % 10}`, version, [`${w}-${i}`]));
        if (result.kind === 'appended') kept++;
        if (result.kind === 'appended') version = result.versions[`s${w % 10}`]!;
        if (result.kind === 'wrong-version') version = result.actual;
      }
      return kept;
    };
    const kept = await Promise.all(Array.from({ length: 50 }, (_, w) => writer(w)));
    const all = await expectSound(ledger);
    expect(all.length).toBe(kept.reduce((sum, n) => sum + n, 0));
    expect(new Set(all.map((e) => e.command)).size).toBe(all.length);
  });

  test('requirement 15: times rise strictly, also when the clock steps back', async () => {
    const clock = [2_000_000_000_000_000, 1_000_000_000_000_000];
    const stepping = made.ledger({ now: () => clock.shift() ?? 1_500_000_000_000_000 });
    await stepping.append(request('a', 0, ['one', 'two']));
    await stepping.append(request('a', 2, ['three']));
    await made.ledger({ now: () => 0 }).append(request('a', 3, ['four']));
    const times = (await expectSound(stepping)).map((e) => e.recordedAt);
    expect(times).toEqual([
      '2033-05-18T03:33:20.000000Z',
      '2033-05-18T03:33:20.000001Z',
      '2033-05-18T03:33:20.000002Z',
      '2033-05-18T03:33:20.000003Z',
    ]);
  });

  test('a correction is true from an earlier time and known from now on', async () => {
    let now = Date.parse('2026-03-01T00:00:00Z') * 1000;
    const dated = made.ledger({ now: () => now });
    await dated.append(request('a', 0, ['first']));
    now = Date.parse('2026-06-01T00:00:00Z') * 1000;
    const correction = { type: 'corrected', data: {}, effectiveAt: '2026-02-01T12:00:00Z' };
    await dated.append(request('a', 1, [correction]));
    const types = async (asOf: { recordedAt?: string; effectiveAt?: string }) =>
      (await dated.readStream(LOG, 'a', { asOf })).map((e) => e.type);
    expect(await types({ recordedAt: '2026-04-01T00:00:00Z' })).toEqual(['first']);
    expect(await types({ effectiveAt: '2026-02-15T00:00:00Z' })).toEqual(['corrected']);
    expect(await types({ recordedAt: '2026-01-01T00:00:00Z' })).toEqual([]);
    expect(await types({})).toEqual(['first', 'corrected']);
  });

  test.each<[string, Partial<NewEvent>, string]>([
    ['what is not JSON', { data: { a: undefined } }, '/a: undefined is not JSON'],
    ['a day that does not exist', { effectiveAt: '2026-02-30T00:00:00Z' }, 'is not a time'],
    ['a local time', { effectiveAt: '2026-02-03T00:00:00+01:00' }, 'is not a time'],
    ['an empty type', { type: '' }, 'event type: 1 to 200 characters'],
  ])('%s is refused before it waits, and nothing is kept', async (_, wrong, message) => {
    const event = { type: 'ok', data: {}, ...wrong };
    await expect(ledger.append(request('a', 0, ['fine', event]))).rejects.toThrow(message);
    expect((await ledger.head(LOG)).pos).toBe(0);
  });

  test('a full queue refuses clearly and loses nothing it accepted', async () => {
    const small = made.ledger({ queueBytes: 2000 });
    const sent = Array.from({ length: 20 }, (_, i) => small.append(request(`s${i}`, 0, ['one'])));
    const kinds = (await Promise.all(sent)).map((each) => each.kind);
    expect(kinds).toContain('queue-full');
    expect(kinds.filter((kind) => kind === 'appended').length).toBe(
      (await expectSound(small)).length,
    );
  });

  test('an unknown log is a fault', async () => {
    await expect(ledger.head('nowhere')).rejects.toThrow('There is no log nowhere');
    const elsewhere = { ...request('a', 0, ['one']), log: 'nowhere' };
    await expect(ledger.append(elsewhere)).rejects.toThrow('There is no log nowhere');
  });

  test('logs are apart', async () => {
    await ledger.createLog('others');
    await ledger.append({ ...request('a', 0, ['theirs'], { id: 'c1' }), log: 'others' });
    await ledger.append(request('a', 0, ['ours'], { id: 'c1' }));
    expect((await expectSound(ledger, 'others')).map((e) => e.type)).toEqual(['theirs']);
    expect((await expectSound(ledger)).map((e) => e.type)).toEqual(['ours']);
  });

  test('pages of the whole log follow each other, and appends are told of', async () => {
    const told: number[] = [];
    const stop = ledger.onAppended((_, pos) => told.push(pos));
    await ledger.append(request('a', 0, ['1', '2', '3']));
    stop();
    await ledger.append(request('a', 3, ['4', '5']));
    const page = async (after: number) =>
      (await ledger.readAll(LOG, { after, limit: 2 })).map((e) => e.pos);
    expect([await page(0), await page(2), await page(4), await page(5)]).toEqual([
      [1, 2],
      [3, 4],
      [5],
      [],
    ]);
    expect(told).toEqual([3]);
    await ledger.close();
  });

  test('checkpoints and issued documents are kept, and bytes are erased on demand', async () => {
    await ledger.append(request('a', 0, ['one']));
    const { root } = await ledger.head(LOG);
    await ledger.keepCheckpoint(LOG, { size: 1, root, note: 'first' });
    await ledger.keepCheckpoint(LOG, { size: 1, root, note: 'second' });
    await ledger.keepCheckpoint(LOG, { size: 0, root: EMPTY_ROOT, note: 'zero' });
    expect((await ledger.checkpoints(LOG)).map((c) => [c.size, c.note])).toEqual([
      [0, 'zero'],
      [1, 'first'],
    ]);
    const digest = await ledger.keepIssued(LOG, Buffer.from('paper'), 'text/plain');
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    const kept = await ledger.issued(LOG, digest);
    expect(kept).toMatchObject({ mediaType: 'text/plain', bytes: Buffer.from('paper') });
    await ledger.eraseIssued(LOG, digest);
    const erased = await ledger.issued(LOG, digest);
    expect(erased).toMatchObject({ mediaType: 'text/plain', bytes: undefined });
    expect(erased?.erasedAt).toMatch(/Z$/);
    expect(await ledger.issued(LOG, '00'.repeat(32))).toBeUndefined();
  });

  test('leaves are the hashes of the bodies', async () => {
    await ledger.append(request('a', 0, ['one', 'two', 'three']));
    const all = await ledger.readAll(LOG, { after: 0, limit: 9 });
    const leaves = await ledger.leaves(LOG, 1, 3);
    expect(leaves).toEqual(all.slice(1).map((event) => leafHash(canonical(event))));
  });
}
