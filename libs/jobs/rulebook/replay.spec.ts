// Every decision of the job files replays byte for byte on what its event holds, under its own
// editions, also after they changed; and a forged one does not.

import { describe, expect, test } from '@jest/globals';
import { EDITION_1, EDITION_2, RULE_BOOK, type Edition } from '#rules';
import type { PastEvent } from '../contract/events.js';
import type { Story } from '../given.js';
import { BARN, HOUSE, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { decidedBy, isStageEvent, type Decided, type Shelf } from './decided.js';
import { replay } from './replay.js';

/** Sorted keys; refuses what is not JSON, as the record does. */
function canonical(value: unknown): string {
  if (value === undefined || (typeof value === 'number' && !Number.isFinite(value)))
    throw new Error('not JSON');
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonical(each)}`).join(',')}}`;
}

const DIGESTS = { rules: 'e'.repeat(64), catalogue: 'c'.repeat(64) };
const shelf = (rules: readonly Edition[] = [EDITION_1, EDITION_2]): Shelf => ({
  book: RULE_BOOK,
  rules: (number) => {
    const edition = rules.find((each) => each.number === number);
    return edition && { edition, digest: DIGESTS.rules };
  },
  catalogue: (number) =>
    number === 1 ? { edition: SAMPLE_CATALOGUE, digest: DIGESTS.catalogue } : undefined,
});

/** What a store gives back: plain JSON, without the objects it was made from. */
const stored = (event: PastEvent): PastEvent => JSON.parse(JSON.stringify(event)) as PastEvent;
const decisions = (told: Story): readonly Decided[] =>
  told.events
    .map(stored)
    .filter(isStageEvent)
    .map((event) => decidedBy('job-1', event));
const gauge = (told: Story): Decided => decisions(told).find(({ stage }) => stage === 'gauge')!;

describe.each([
  ['barn', BARN],
  ['house', HOUSE],
] as const)('%s', (_, file) => {
  const told = playUpTo(file, 'gauge');

  test('all five stages replay to equal bytes', () => {
    const made = decisions(told);
    expect(made).toHaveLength(5);
    expect(made.map((each) => [each.stage, replay(each, shelf(), canonical)])).toEqual(
      made.map(({ stage }) => [stage, { outcome: 'equal' }]),
    );
  });

  test('what is published later changes nothing', () => {
    const later: Edition = {
      ...EDITION_2,
      number: 3,
      entries: EDITION_2.entries.filter(({ rule }) => rule !== 'GAUGE-05'),
    };
    expect(replay(gauge(told), shelf([EDITION_1, EDITION_2, later]), canonical)).toEqual({
      outcome: 'equal',
    });
  });
});

describe('what does not replay says so', () => {
  const decided = gauge(playUpTo(HOUSE, 'gauge'));

  test('a changed utilization is named by its place', () => {
    const evaluation = JSON.parse(
      JSON.stringify(decided.evaluation).replace(
        '"utilization":"0.8280"',
        '"utilization":"0.8281"',
      ),
    ) as NonNullable<Decided['evaluation']>;
    const answer = replay({ ...decided, evaluation }, shelf(), canonical);
    expect(answer).toMatchObject({ outcome: 'differs' });
    expect(answer).toMatchObject({
      at: expect.stringMatching(/^\/evaluation\/options\/1\/.*utilization$/),
    });
  });

  test('a changed fact gives another answer', () => {
    const path = 'surface/s1/hazards/wind';
    const wind = JSON.parse(JSON.stringify(decided.reads[path]).replace('-38', '-39')) as unknown;
    const reads = { ...decided.reads, [path]: wind };
    expect(replay({ ...decided, reads }, shelf(), canonical)).toMatchObject({ outcome: 'differs' });
  });

  test('an edition that is missing, or is another than the one recorded', () => {
    expect(replay(decided, shelf([]), canonical)).toEqual({
      outcome: 'cannot',
      words: 'Rules edition 1 is not known.',
    });
    const forged = { ...decided, catalogue_edition: { number: 1, digest: 'd'.repeat(64) } };
    expect(replay(forged, shelf(), canonical)).toMatchObject({
      outcome: 'cannot',
      words: expect.stringContaining('digest differs'),
    });
  });
});
