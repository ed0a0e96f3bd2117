// Verification goes on from where it stood, remembers no stream, and still joins ranges to each other.

import { expect, test } from '@jest/globals';
import { canonical } from './canonical.js';
import { createLedger } from './create-ledger.js';
import { leafHash } from './merkle.js';
import { createMemoryStore } from './memory-store.js';
import type { EventRow, Store } from './store.js';
import { verifyLog } from './verify-log.js';
import type { VerifyProgress } from './verify-log.js';

const LOG = 'roofers';
const ENTRIES = 10_400;
const STREAMS = 13;

async function filled(): Promise<Store> {
  const store = createMemoryStore();
  const ledger = createLedger(store);
  await ledger.createLog(LOG);
  for (let i = 0; i < ENTRIES; i += 100) {
    await Promise.all(
      Array.from({ length: STREAMS }, (_, s) => {
        const first = Math.ceil((i - s) / STREAMS) * STREAMS + s;
        const count = first >= i + 100 ? 0 : Math.floor((i + 99 - first) / STREAMS) + 1;
        const version = Math.max(0, (first - s) / STREAMS);
        const events = Array.from({ length: count }, () => ({ type: 't/1', data: {} }));
        return ledger.append({
          log: LOG,
          command: { id: `${i}-${s}`, digest: 'd' },
          by: { person: 'p', role: 'r' },
          streams: [{ stream: `s${s}`, expectedVersion: version, events }],
        });
      }),
    );
  }
  return store;
}

const store = await filled();
const all = await store.readRows(LOG, 0, ENTRIES);

/** The same log with some rows otherwise, as their reader sees them. */
const altered = (change: (row: EventRow) => EventRow): Store => {
  const rows = all.map(change);
  return {
    ...store,
    readRows: async (_, after, limit) => rows.slice(after, after + limit),
    readLinks: async (_, wanted, upTo) =>
      rows
        .filter((row) => row.pos <= upTo)
        .filter((row) => wanted.some((w) => w.stream === row.stream && w.version === row.version))
        .map(({ stream, version, leaf }) => ({ stream, version, leaf: leaf.toString('hex') })),
  };
};

function rewritten(row: EventRow, change: object): EventRow {
  const body = canonical({ ...(JSON.parse(row.body) as object), ...change });
  return { ...row, ...change, body, leaf: leafHash(body) };
}

test('a second process goes on from kept progress to the same report', async () => {
  const kept: VerifyProgress[] = [];
  const root = (await store.readHead(LOG)).root;
  const checkpoints = [{ origin: LOG, size: ENTRIES, root }];
  const whole = await verifyLog(store, LOG, checkpoints, {
    onProgress: (progress) => void kept.push(progress),
  });
  expect(whole).toMatchObject({ events: ENTRIES, checkpoints: 1, fault: undefined });
  expect(kept.map(({ size }) => size)).toEqual([5000, 10_000, ENTRIES]);
  let asked = Infinity;
  const later: Store = {
    ...store,
    readRows: (log, after, limit) => {
      asked = Math.min(asked, after);
      return store.readRows(log, after, limit);
    },
  };
  expect(await verifyLog(later, LOG, checkpoints, { from: kept[1]! })).toEqual(whole);
  expect(asked).toBe(10_000);
});

test.each([
  ['follows another entry than its version before', { prev: 'ab'.repeat(32) }, 'does not follow'],
  ['is a version that is there already', { version: 3 }, 'is there before it'],
  ['leaves a version out', { version: 5000 }, 'is not there before it'],
])('the first of a stream in a range that %s is found', async (_, change, says) => {
  const at = 5001;
  const report = await verifyLog(
    altered((row) => (row.pos === at ? rewritten(row, change) : row)),
    LOG,
    [],
  );
  expect(report.fault).toMatchObject({ pos: at, says: expect.stringContaining(says) as unknown });
});
