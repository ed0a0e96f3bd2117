// The large demonstration, small: twenty jobs over the nine years, recorded, the same every time, and
// going on after an interruption.

import { expect, test } from '@jest/globals';
import { DEFAULT_POLICY, jobRow } from '#jobs';
import { Ledgers } from '../../api/data/ledgers.js';
import { Jobs } from '../../api/jobs/fold.js';
import { withService } from '../../../tests/service.js';
import { daysFrom, dice, FIRST_DAY, LAST_DAY } from './dice.js';
import { fillLarge } from './fill-large.js';
import { pastCatalogues, PAST_RULES } from './past-editions.js';
import { planned } from './plan.js';
import { tell, type Said } from './tell.js';
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

/** Of the 3,000, some in which these things happen; each thing in more than one, since a catalogue may change. */
const WITH_TROUBLES = [
  0, 7, 9, 25, 27, 32, 42, 56, 61, 62, 68, 82, 88, 90, 135, 193, 239, 249, 256, 297, 346, 441, 443,
  1021, 1025, 2029, 2041, 2050,
];
const NOTES: readonly (readonly [trouble: string, words: RegExp])[] = [
  ['a license lapsed', /^The license of/],
  ['a chart was replaced', /^The panel maker replaced/],
  ['a weathertightness document was not approved', /^The warrantor has not approved/],
  ['a backup was restored', /the backup of 9 Jun 2021/],
];
const TROUBLES = [
  ...NOTES.map(([trouble]) => trouble),
  'declined',
  'approved with conditions',
  'revoked',
  'spaced boards under the old roof',
  'wider spacing after delivery',
  'a refill from another lot',
  'registered late',
  'a fade claim whose term names no scale',
];

function troublesOf({ job, command, events }: Said): readonly string[] {
  switch (command.type) {
    case 'add-note':
      return NOTES.filter(([, words]) => words.test(command.words)).map(([trouble]) => trouble);
    case 'answer-sign-off':
      return command.answer === 'approve'
        ? []
        : [command.answer === 'decline' ? 'declined' : 'approved with conditions'];
    case 'revoke-sign-off':
      return ['revoked'];
    case 'record-facts':
      return [
        ...(command.facts.some(({ value }) => value === 'spaced-boards')
          ? ['spaced boards under the old roof']
          : []),
        ...(command.reason?.startsWith('Measured again with the panels on site')
          ? ['wider spacing after delivery']
          : []),
      ];
    case 'record-receipt':
      return command.lots.some(({ lot }) => lot.endsWith('-R'))
        ? ['a refill from another lot']
        : [];
    case 'file-registration':
      return events.some(({ type, data }) => type === 'registration-filed/1' && data.late_days > 0)
        ? ['registered late']
        : [];
    case 'open-claim':
      return command.kind === 'fade' &&
        job.after.warranties[command.document ?? '']?.fade?.scale === 'not named'
        ? ['a fade claim whose term names no scale']
        : [];
    default:
      return [];
  }
}

test('what goes wrong in the nine years is among their plans: each trouble is told in memory', async () => {
  const rules = PAST_RULES.map((edition) => ({ edition, digest: 'e'.repeat(64) }));
  const catalogues = pastCatalogues().map((edition) => ({ edition, digest: 'c'.repeat(64) }));
  const newest = <T extends { edition: { in_force_from: string } }>(
    all: readonly T[],
    at: string,
  ) => all.filter(({ edition }) => edition.in_force_from <= at).at(-1)!;
  const told = new Set<string>();
  for (const n of WITH_TROUBLES) {
    const { plan } = planned(n, 3_000, 1, PAPER);
    await tell(plan, {
      contextAt: (at, { id, roles }) => {
        const [rule, catalogue] = [newest(rules, at), newest(catalogues, at)];
        return {
          at,
          by: { person: id, roles },
          book: RULE_BOOK,
          policy: DEFAULT_POLICY,
          edition: rule.edition,
          editionDigest: rule.digest,
          catalogue: catalogue.edition,
          catalogueDigest: catalogue.digest,
        };
      },
      append: (said) => {
        for (const trouble of troublesOf(said)) told.add(trouble);
        return Promise.resolve();
      },
      packet: () => Promise.resolve('a'.repeat(64)),
    });
  }
  expect([...told].sort()).toEqual([...TROUBLES].sort());
}, 120_000);
