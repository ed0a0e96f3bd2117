// The large demonstration, small: twenty jobs over the nine years, recorded, the same every time, and
// going on after an interruption.

import { expect, test } from '@jest/globals';
import { jobRow } from '#jobs';
import { Ledgers } from '../../api/data/ledgers.js';
import { Jobs } from '../../api/jobs/fold.js';
import { withService } from '../../../tests/service.js';
import { daysFrom, dice, FIRST_DAY, LAST_DAY } from './dice.js';
import { fillLarge } from './fill-large.js';
import { pastCatalogues, PAST_RULES } from './past-editions.js';
import { planned } from './plan.js';
import { isThere, LARGE, onDuty, STAFF, type Post } from './staff.js';
import { editionFaults, RULE_BOOK } from '#rules';

const running = withService();
const JOBS = 20;
const PAPER = { digest: 'f'.repeat(64), name: 'invented.txt' };
const lines: string[] = [];
const fill = (jobs = JOBS) =>
  fillLarge(running.service, { jobs, seed: 1, say: (line) => lines.push(line) });

test('twenty jobs are told, recorded with their simulated days, and marked as invented', async () => {
  const { ledger } = running.service.get(Ledgers);
  const cut = () => {
    throw new Error('cut');
  };
  await expect(fillLarge(running.service, { jobs: JOBS, seed: 1, say: cut })).rejects.toThrow(
    'cut',
  );
  const { pos } = await ledger.head(LARGE.company);
  await fill();
  expect((await ledger.head(LARGE.company)).pos).toBe(pos + 1);
  expect(lines.at(-1)).toMatch(/^20 of 20 invented jobs, \d+ entries$/);
  const jobs = await Promise.all(
    Array.from({ length: JOBS }, (_, n) =>
      running.service.get(Jobs).load(LARGE.company, planned(n, JOBS, 1, PAPER).plan.id),
    ),
  );
  for (const job of jobs) expect(job.version).toBeGreaterThan(3);
  const stages = new Set(jobs.map((job) => jobRow(job).stage));
  expect(stages.size).toBeGreaterThan(1);
  expect(stages).toContain('warranty');
  const events = await ledger.readAll(LARGE.company, { after: 0, limit: 10_000 });
  const told = events.filter(({ stream }) => stream.startsWith('job/'));
  expect(told.length).toBeGreaterThan(JOBS * 10);
  for (const event of told) {
    expect(
      event.effectiveAt.slice(0, 10) >= FIRST_DAY && event.effectiveAt.slice(0, 10) <= LAST_DAY,
    ).toBe(true);
  }
  const years = new Set(told.map(({ effectiveAt }) => effectiveAt.slice(0, 4)));
  expect(years.size).toBeGreaterThan(7);
  expect(events.at(-1)).toMatchObject({ type: 'demonstration-filled/1', data: { invented: true } });
}, 300_000);

test('every entry is by somebody who was there on its day', async () => {
  const { ledger } = running.service.get(Ledgers);
  const events = await ledger.readAll(LARGE.company, { after: 0, limit: 10_000 });
  for (const { by, effectiveAt, stream } of events.filter((each) =>
    each.stream.startsWith('job/'),
  )) {
    const person = STAFF.find(({ id }) => id === by.person);
    expect({ stream, there: person && isThere(person, effectiveAt.slice(0, 10)) }).toEqual({
      stream,
      there: true,
    });
  }
});

test('filling it again records nothing', async () => {
  const { ledger } = running.service.get(Ledgers);
  const before = await ledger.head(LARGE.company);
  await fill();
  expect((await ledger.head(LARGE.company)).pos).toBe(before.pos);
});

test('the same seed gives the same jobs, another one others', () => {
  const of = (seed: number) =>
    Array.from({ length: 50 }, (_, n) => {
      const { id, number, name, opened, customer, site, kind } = planned(
        n,
        3_000,
        seed,
        PAPER,
      ).plan;
      return JSON.stringify({ id, number, name, opened, customer, site, kind: kind.id });
    });
  expect(of(1)).toEqual(of(1));
  expect(of(2)).not.toEqual(of(1));
  const [one, other] = [dice(7), dice(7)];
  for (let i = 0; i < 5; i++) expect(one.next()).toBe(other.next());
});

test('every post is held on every day, and the past editions may have been published', () => {
  const posts: readonly Post[] = ['office', 'manager', 'crew', 'engineer', 'reviewer', 'standards'];
  for (let day = 0; day <= daysFrom(FIRST_DAY, LAST_DAY); day += 7) {
    const date = new Date(Date.parse(FIRST_DAY) + day * 86_400_000).toISOString().slice(0, 10);
    for (const post of posts) expect(onDuty(post, date, day).post).toBe(post);
  }
  PAST_RULES.forEach((edition, i) =>
    expect(editionFaults(edition, RULE_BOOK, PAST_RULES[i - 1])).toEqual([]),
  );
  expect(pastCatalogues().map(({ edition }) => edition)).toEqual([1, 2, 3, 4, 5]);
});
