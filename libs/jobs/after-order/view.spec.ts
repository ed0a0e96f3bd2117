// Where a job stands after the order, in words, and what its view shows.

import { describe, expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import { jobRow } from '../row.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { jobView } from '../view.js';
import { built, ORDER, ordered, ready, receipt, v, WARRANTY } from './order-files.js';

const reviewer = ['warranty-reviewer'] as const;
const issued = () =>
  built()
    .play({ type: 'file-registration', kind: 'paint', on: '2026-06-22', window_days: 60 })
    .play({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput);
const claimed = () =>
  issued().play(
    {
      type: 'open-claim',
      claim: 'q1',
      surface: 's1',
      kind: 'leak',
      document: 'w1',
      notice: '2034-03-01',
      words: 'water at the ridge',
    },
    reviewer,
  );

describe('the row of the list', () => {
  test.each([
    ['ready to order', ready(), '6/6 Ready to order', 'Ready', 'Issue the order', 'office'],
    ['ordered', ordered(), 'Delivery', 'Waiting', 'Delivery: receive what was ordered', 'supplier'],
    [
      'changing',
      ordered().play({ type: 'open-change-order', order: 'o1', reason: 'more' }),
      'Order, changing',
      'Blocked',
      'Change order is open: issue the new revision or withdraw it',
      'project manager',
    ],
    [
      'delivered',
      ordered().play(receipt('coil-7', 40)),
      'Installation',
      'Ready',
      'Record what was built, and the inspection',
      'crew lead',
    ],
    ['built', built(), 'Warranty', 'Ready', 'Issue the warranty document: paint', 'office'],
    ['warranty out', issued(), 'Complete', 'Done', 'Complete', 'office'],
    ['a claim is open', claimed(), 'Warranty', 'Ready', 'Decide claim q1', 'warranty reviewer'],
  ] as const)('%s', (_, { job }, stage_words, state, next_action, on) => {
    expect(jobRow(job)).toMatchObject({ stage_words, state, next_action, on });
  });

  test('another thing acknowledged than ordered blocks', () => {
    const { job } = ordered().play({
      type: 'record-acknowledgment',
      order: 'o1',
      dated: '2026-03-07',
      lines: [{ ...ORDER.lines[0]!, length: v('264', 'in') }, ORDER.lines[1]!],
    } as CommandInput);
    expect(jobRow(job)).toMatchObject({
      stage: 'delivery',
      state: 'Blocked',
      next_action: 'Order o1: the supplier acknowledged something else',
    });
  });

  test('a changed fact after the order blocks before anything else', () => {
    const { job } = ordered().play({
      type: 'record-facts',
      reason: 'measured',
      facts: [{ on: 's1', fact: 'slope', value: v('3', 'per-12'), how: 'measured' }],
    });
    expect(jobRow(job)).toMatchObject({
      stage: 'delivery',
      state: 'Blocked',
      next_action: expect.stringContaining('needs a re-check'),
    });
  });
});

describe('the view', () => {
  test('says what is still short, and the lots by plane', () => {
    const { after } = jobView(ordered().play(receipt('coil-7', 39)).job);
    expect(after.orders[0]).toMatchObject({
      short: ['Snap seam 16, 24 gauge: 39 of 40 came', 'Sliding clip: 0 of 600 came'],
    });
    expect(after.lots).toEqual([{ surface: 's1', lots: ['coil-7'], mixed: 'no' }]);
  });

  test('says a late registration, and an open claim as its tests compute', () => {
    const view = jobView(claimed().job, SAMPLE_CATALOGUE);
    expect(view.after.registrations[0]?.words).toBe('registered 2026-06-22, filed 11 days late');
    expect(view.after.warranties[0]).toMatchObject({ ends: '2056-04-12' });
    expect(view.after.claims[0]?.tests?.map(({ test: name }) => name)).toContain('as built');
    expect(jobView(claimed().job).after.claims[0]?.tests).toBeNull();
  });
});
