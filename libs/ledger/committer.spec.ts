import { beforeEach, expect, test } from '@jest/globals';
import { createLedger } from './create-ledger.js';
import { request } from '../../tests/ledger-suite.js';
import type { Ledger } from './ledger.js';
import { createMemoryStore } from './memory-store.js';
import type { Batch, CommitOutcome, Store } from './store.js';

const LOG = 'roofers';
let store: Store;
let batches: Batch[];
let surveys: number;
/** What the store answers in place of committing; undefined: it commits. */
let instead: (() => CommitOutcome | Promise<never>) | undefined;
let ledger: Ledger;

beforeEach(async () => {
  const memory = createMemoryStore();
  [batches, surveys, instead] = [[], 0, undefined];
  store = {
    ...memory,
    write: (log, work) =>
      memory.write(log, (writer) =>
        work({
          survey: (...args) => {
            surveys++;
            return writer.survey(...args);
          },
          commit: async (batch) => {
            batches.push(batch);
            return instead?.() ?? writer.commit(batch);
          },
        }),
      ),
  };
  ledger = createLedger(store);
  await ledger.createLog(LOG);
});

test('a batch refused at an unmoved head is a fault, not retried', async () => {
  await ledger.append(request('a', 0, ['one']));
  for (const outcome of ['moved', 'taken'] as const) {
    instead = () => outcome;
    batches = [];
    await expect(ledger.append(request('a', 1, ['two']))).rejects.toThrow(
      'refused a batch at its current head 1',
    );
    expect(batches.length).toBe(1);
  }
  instead = undefined;
  expect(await ledger.append(request('a', 1, ['two']))).toMatchObject({ positions: [2] });
});

test('a store’s fault reaches every caller of the batch, and the next batch starts afresh', async () => {
  instead = () => Promise.reject(new Error('connection lost'));
  const both = [request('a', 0, ['one']), request('b', 0, ['two'])];
  const faults = await Promise.allSettled(both.map((each) => ledger.append(each)));
  expect(faults.map((each) => each.status)).toEqual(['rejected', 'rejected']);
  instead = undefined;
  const kinds = await Promise.all(both.map(async (each) => (await ledger.append(each)).kind));
  expect(kinds).toEqual(['appended', 'appended']);
});

test('all that wait go together, one for each stream, and own streams keep their order', async () => {
  await ledger.append(request('x', 0, ['first']));
  batches = [];
  const all = [
    ...Array.from({ length: 30 }, (_, i) => request(`s${i}`, 0, ['one'])),
    request('s0', 1, ['two']),
    request('s0', 2, ['three']),
  ];
  const results = await Promise.all(all.map((each) => ledger.append(each)));
  expect(results.every((each) => each.kind === 'appended')).toBe(true);
  expect(batches.map((batch) => batch.events.length)).toEqual([16, 15, 1]);
});

test('a stream that is known is appended to in one round trip', async () => {
  await ledger.append(request('a', 0, ['one']));
  [batches, surveys] = [[], 0];
  for (let v = 1; v <= 5; v++) await ledger.append(request('a', v, ['next']));
  await ledger.append(request('new', 0, ['one']));
  expect([batches.length, surveys]).toEqual([6, 0]);
});

test('another writer’s commit is noticed, and the request decided anew', async () => {
  await ledger.append(request('a', 0, ['one']));
  const other = createLedger(store);
  await other.append(request('a', 1, ['theirs']));
  const late = await ledger.append(request('a', 1, ['ours']));
  expect(late).toEqual({ kind: 'wrong-version', stream: 'a', actual: 2 });
  expect(await ledger.append(request('a', 2, ['ours']))).toMatchObject({ positions: [3] });
  await other.append(request('b', 0, ['theirs']));
  expect(await ledger.append(request('c', 0, ['ours']))).toMatchObject({ positions: [5] });
});

test('a request beside a refused one in the same batch is kept', async () => {
  await ledger.append(request('a', 0, ['one']));
  const [wrong, right] = await Promise.all([
    ledger.append(request('a', 7, ['two'])),
    ledger.append(request('b', 0, ['three'])),
  ]);
  expect(wrong).toEqual({ kind: 'wrong-version', stream: 'a', actual: 1 });
  expect(right).toMatchObject({ kind: 'appended', positions: [2] });
});

test('while a batch is under way, what waits is bounded and waits for no more than the next', async () => {
  let release = () => {};
  const held = new Promise<void>((resolve) => (release = resolve));
  const small = createLedger(
    {
      ...store,
      write: (log, work) =>
        store.write(log, (writer) =>
          work({
            ...writer,
            commit: async (batch) => {
              await held;
              return writer.commit(batch);
            },
          }),
        ),
    },
    { queueBytes: 5000 },
  );
  const first = small.append(request('x', 0, ['first']));
  await new Promise((resolve) => setTimeout(resolve, 10));
  const later = Array.from({ length: 40 }, (_, i) => small.append(request(`s${i}`, 0, ['one'])));
  batches = [];
  release();
  const kinds = (await Promise.all([first, ...later])).map((each) => each.kind);
  const kept = kinds.filter((kind) => kind === 'appended').length;
  expect(kept).toBeGreaterThan(3);
  expect(kinds.filter((kind) => kind === 'queue-full').length).toBe(41 - kept);
  expect(batches.map((batch) => batch.events.length)).toEqual([1, kept - 1]);
});
