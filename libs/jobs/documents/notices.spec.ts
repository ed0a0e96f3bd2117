// Issued papers are told what happened to what they rest on.

import { expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import { ORDER, ordered } from '../after-order/order-files.js';
import { APPROVE, ASK, BARN, playUpTo } from '../job-files.js';
import type { PastEvent } from '../contract/events.js';
import { noticesSince } from './notices.js';

const issuing = (events: readonly PastEvent[], type: PastEvent['type']) =>
  events.find((event) => event.type === type)!;

test('an order is told of the revision that supersedes it; the new one is not', () => {
  const { events } = ordered()
    .play({ type: 'open-change-order', order: 'o1', reason: 'more' })
    .play({
      ...ORDER,
      lines: [{ ...ORDER.lines[0]!, count: 42 }, ORDER.lines[1]!],
    } as CommandInput);
  expect(noticesSince(events, issuing(events, 'order-issued/1')).map(({ words }) => words)).toEqual(
    ['Superseded by revision 2'],
  );
  expect(noticesSince(events, events.at(-1)!)).toEqual([]);
});

test('a packet is told that its own sign-off was revoked, by the entry that did', () => {
  const { events } = playUpTo(BARN, 'gauge')
    .play(ASK)
    .play(APPROVE, ['engineer'])
    .play({ type: 'revoke-sign-off', request: 'r1', reason: 'wrong chart' }, ['engineer']);
  expect(noticesSince(events, issuing(events, 'sign-off-requested/1'))).toEqual([
    {
      at: events.at(-1)!.recordedAt,
      entry: events.at(-1)!.id,
      words: 'The sign-off r1 was revoked: wrong chart',
    },
  ]);
});
