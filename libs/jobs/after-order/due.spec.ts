// What falls due, and that it goes once it is done.

import { expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import { APPROVE, ASK, BARN, playUpTo } from '../job-files.js';
import { fallsDue } from './due.js';
import { built, ORDER, ordered, ready, receipt, WARRANTY } from './order-files.js';

const kinds = (job: Parameters<typeof fallsDue>[0]) =>
  fallsDue(job).map(({ kind, on }) => `${kind} ${on}`);

test('a sign-off is waited for until the engineer answers', () => {
  const asked = playUpTo(BARN, 'gauge').play(ASK);
  expect(kinds(asked.job)).toEqual(['sign-off-waiting 2026-04-01']);
  expect(kinds(asked.play(APPROVE, ['engineer']).job)).toEqual([]);
});

test('a quote expires until it is ordered; then the delivery is due until it came', () => {
  expect(kinds(ready().job)).toEqual(['quote-expiring 2026-04-01']);
  const withDay = ready().play({ ...ORDER, delivery: '2026-03-18' } as CommandInput);
  expect(kinds(withDay.job)).toEqual(['delivery 2026-03-18']);
  expect(kinds(withDay.play(receipt('coil-7', 40)).job)).toEqual([]);
  expect(kinds(ordered().job)).toEqual([]);
});

test('after completion the promised document is registered, then its term ends one day', () => {
  expect(kinds(built().job)).toEqual(['registration-window 2026-06-11']);
  const late = built().play({
    type: 'file-registration',
    kind: 'paint',
    on: '2026-06-22',
    window_days: 60,
  });
  expect(kinds(late.job)).toEqual([]);
  expect(kinds(late.play({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput).job)).toEqual([
    'term-ends 2056-04-12',
  ]);
});

test('no registration is due for a kind whose text in the catalogue asks for none, and without a text its own day is not known', () => {
  const promised = (kinds_: readonly string[]): CommandInput => ({
    type: 'record-facts',
    reason: 'promised besides',
    facts: [
      {
        on: null,
        fact: 'promised-documents',
        value: [...kinds_],
        how: 'document',
        source: 'job file',
      },
    ],
  });
  expect(kinds(built().play(promised(['workmanship'])).job)).toEqual([]);
  expect(kinds(built().play(promised(['substrate'])).job)).toEqual([
    'registration-window 2026-04-12',
  ]);
});
