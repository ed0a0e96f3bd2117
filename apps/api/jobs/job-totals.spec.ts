import { expect, jest, test } from '@jest/globals';
import { JobTotals } from './job-totals.js';

const counted = (total: number) => jest.fn(() => Promise.resolve(total));

test('stands while the list stands still, and is counted anew once it moved', async () => {
  const totals = new JobTotals();
  const count = counted(12);
  expect(await totals.of('all', 7, count)).toBe(12);
  expect(await totals.of('all', 7, count)).toBe(12);
  expect(count).toHaveBeenCalledTimes(1);
  expect(await totals.of('all', 8, counted(13))).toBe(13);
});

test('of more than 5,000 stands for five seconds, whatever happens, and no longer', async () => {
  jest.useFakeTimers({ now: 1_000_000 });
  try {
    const totals = new JobTotals();
    await totals.of('all', 7, counted(5001));
    jest.setSystemTime(1_004_999);
    expect(await totals.of('all', 9, counted(5002))).toBe(5001);
    jest.setSystemTime(1_005_000);
    expect(await totals.of('all', 9, counted(5002))).toBe(5002);
    // A clock that went back keeps nothing for ever.
    jest.setSystemTime(900_000);
    expect(await totals.of('all', 9, counted(5003))).toBe(5003);
  } finally {
    jest.useRealTimers();
  }
});

test('each filter has its own, and the oldest are forgotten', async () => {
  const totals = new JobTotals();
  for (let i = 0; i < 300; i++) await totals.of(`filter ${i}`, 1, counted(i));
  const again = counted(-1);
  expect(await totals.of('filter 299', 1, again)).toBe(299);
  expect(await totals.of('filter 0', 1, again)).toBe(-1);
  expect(again).toHaveBeenCalledTimes(1);
});
