import { expect, test } from '@jest/globals';
import { request } from '../../tests/ledger-suite.js';
import { watchClock } from './clock-watch.js';
import type { ClockStep } from './clock-watch.js';
import { createMemoryLedger } from './memory-ledger.js';

const SECOND = 1_000_000;
const NOON = Date.parse('2026-11-25T12:00:00Z') * 1000;

test('a second is no step, more than that is one, told once until the clock has caught up', () => {
  const look = watchClock();
  expect(look(NOON - SECOND, NOON)).toBeUndefined();
  expect(look(NOON - SECOND - 1, NOON)).toEqual({
    clock: NOON - SECOND - 1,
    recordedAt: NOON,
    behind: SECOND + 1,
  });
  expect(look(NOON - SECOND - 1, NOON + 1)).toBeUndefined();
  expect(look(NOON, NOON + 2)).toBeUndefined();
  expect(look(NOON - 5 * SECOND, NOON + 2)).toMatchObject({ behind: 5 * SECOND + 2 });
});

test('set back once more before it has caught up is another step', () => {
  const look = watchClock();
  expect(look(NOON - 3600 * SECOND, NOON)).toBeDefined();
  expect(look(NOON - 3000 * SECOND, NOON + 1)).toBeUndefined();
  expect(look(NOON - 3060 * SECOND, NOON + 2)).toMatchObject({ behind: 3060 * SECOND + 2 });
  expect(look(NOON - 3059 * SECOND, NOON + 3)).toBeUndefined();
});

test('a ledger tells of a step with the log, goes on in order, and tells of each log apart', async () => {
  let now = NOON;
  const steps: [string, ClockStep][] = [];
  const ledger = createMemoryLedger({
    now: () => now,
    onClockStep: (log, step) => steps.push([log, step]),
  });
  for (const log of ['roofers', 'others']) {
    await ledger.createLog(log);
    await ledger.append({ ...request('a', 0, ['one']), log });
  }
  now -= 60 * SECOND;
  await ledger.append({ ...request('a', 1, ['two']), log: 'roofers' });
  await ledger.append({ ...request('a', 2, ['three']), log: 'roofers' });
  expect(steps).toEqual([['roofers', { clock: now, recordedAt: NOON, behind: 60 * SECOND }]]);
  await ledger.append({ ...request('a', 1, ['two']), log: 'others' });
  expect(steps.map(([log]) => log)).toEqual(['roofers', 'others']);
  const times = (await ledger.readAll('roofers', { after: 0, limit: 9 })).map((e) => e.recordedAt);
  expect(times).toEqual([
    '2026-11-25T12:00:00.000000Z',
    '2026-11-25T12:00:00.000001Z',
    '2026-11-25T12:00:00.000002Z',
  ]);
});
