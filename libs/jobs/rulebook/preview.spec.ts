// The preview against the whole evaluation under the other edition, decision by decision.

import { describe, expect, test } from '@jest/globals';
import { EDITION_1, EDITION_2, RULE_BOOK, type Edition, type EditionEntry } from '#rules';
import { questionAt } from '../choosing/asking.js';
import { evaluate } from '../choosing/evaluate.js';
import type { Evaluation } from '../contract/evaluation.js';
import type { GaugeContent, PastEvent, WindContent } from '../contract/events.js';
import { BARN, HOUSE, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import {
  decidedBy,
  decidedIn,
  isStageEvent,
  recordedIn,
  whereOf,
  type Decided,
  type Shelf,
} from './decided.js';
import { preview, together, type Impact } from './preview.js';
import type { Answer } from '../contract/impact.js';
import { underAnother } from './under-another.js';

const shelf: Shelf = {
  book: RULE_BOOK,
  rules: (number) =>
    [EDITION_1, EDITION_2]
      .filter((each) => each.number === number)
      .map((edition) => ({ edition, digest: 'e'.repeat(64) }))[0],
  catalogue: () => ({ edition: SAMPLE_CATALOGUE, digest: 'c'.repeat(64) }),
};
const draftOf = (
  edits: Readonly<Record<string, Partial<EditionEntry>>>,
  from: Edition = EDITION_1,
): Edition => ({
  ...from,
  number: 3,
  entries: from.entries.map((entry) => ({ ...entry, ...edits[entry.rule] })),
});
const told = [playUpTo(BARN, 'gauge'), playUpTo(HOUSE, 'gauge')];
const gauges = told.flatMap(({ events }) =>
  events
    .filter((event: PastEvent) => event.type === 'gauge-selected/1')
    .filter(isStageEvent)
    .map((event) => decidedBy('job-1', event)),
);

/** The decision as it would stand had the wind been another: recorded by the same evaluation. */
function withWind(decided: Decided, share: number): Decided {
  const path = 'surface/s1/hazards/wind';
  const wind = decided.reads[path] as WindContent;
  const zones = wind.zones.map((each) => ({
    ...each,
    outward_psf: (Number(each.outward_psf) * share).toFixed(2),
  }));
  const reads = { ...decided.reads, [path]: { ...wind, zones } };
  const facts = decided.evaluation!.facts.map((each) =>
    each.path === path ? { ...each, value: reads[path] } : each,
  );
  const changed = { ...decided, reads, evaluation: { ...decided.evaluation!, facts } };
  const evaluation = evaluated(changed, EDITION_1);
  const { option } = decided.content as GaugeContent;
  return {
    ...changed,
    evaluation,
    findings: evaluation.options.find(({ id }) => id === option)!.findings,
  };
}

function evaluated(decided: Decided, edition: Edition): Evaluation {
  const { attachment, option } = decided.content as GaugeContent;
  const question = questionAt(recordedIn(decided), whereOf(decided), attachment, {
    book: RULE_BOOK,
    edition,
    editionDigest: 'e'.repeat(64),
    catalogue: SAMPLE_CATALOGUE,
    catalogueDigest: 'c'.repeat(64),
    day: decided.evaluation!.day,
  });
  return evaluate(question!, decided.evaluation!.facts, option);
}

/** The answer from whole evaluations, without looking at what differs between the editions. */
function byForce(decided: Decided, other: Edition): Answer {
  const { option } = decided.content as GaugeContent;
  const standing = (each: Evaluation): readonly string[] => {
    const picked = each.options.find(({ id }) => id === option)!;
    const refused = picked.findings.filter(
      ({ severity, outcome }) =>
        severity === 'refuse' && (outcome === 'fail' || outcome === 'not-evaluated'),
    );
    return [
      ...new Set([
        ...refused.map(({ rule }) => rule),
        ...each.sign_off_required.map((words) => words.split(':')[0]!),
      ]),
    ];
  };
  const [before, after] = [decided.evaluation!, evaluated(decided, other)];
  const [was, now] = [standing(before), standing(after)];
  const added = now.filter((rule) => !was.includes(rule));
  const picked = after.options.find(({ id }) => id === option)!;
  const unknown = (rule: string): boolean =>
    picked.findings.some((each) => each.rule === rule && each.outcome === 'not-evaluated') ||
    after.sign_off_required.some((words) => words.startsWith(`${rule}: not known yet`));
  if (added.length > 0) return added.every(unknown) ? 'cannot-say' : 'now-blocked';
  if (was.length > 0 && now.length === 0) return 'now-free';
  return before.recommendation.option === after.recommendation.option ? 'same' : 'other-option';
}

function run(generator: Generator<unknown, Impact, void>): {
  readonly impact: Impact;
  readonly steps: number;
} {
  for (let steps = 0; ; steps += 1) {
    const next = generator.next();
    if (next.done) return { impact: next.value, steps };
  }
}

const decisions = gauges.flatMap((each) =>
  Array.from({ length: 250 }, (_, i) => withWind(each, 0.4 + i * 0.004)),
);
const DRAFTS: readonly (readonly [string, Edition])[] = [
  ['29 gauge not stocked', draftOf({ 'GAUGE-05': { settings: { not_stocked: true } } })],
  [
    'a lower limit for sign-off',
    draftOf({ 'SIGN-01': { settings: { ...settingsOf('SIGN-01'), utilization_limit: 0.5 } } }),
  ],
  [
    'hail country from half an inch',
    draftOf({ 'GAUGE-07': { settings: { hail_country_stone_in: 0.5 } } }),
  ],
  ['the starting point on open framing refuses', draftOf({ 'GAUGE-11': { severity: 'refuse' } })],
  [
    'recommendations left out',
    {
      ...EDITION_1,
      number: 3,
      entries: EDITION_1.entries.filter(
        ({ rule }) => !['GAUGE-06', 'GAUGE-10', 'GAUGE-11'].includes(rule),
      ),
    },
  ],
  ['the full rulebook', EDITION_2],
];
function settingsOf(rule: string): EditionEntry['settings'] {
  return EDITION_1.entries.find((entry) => entry.rule === rule)!.settings;
}

describe('the preview of 500 decisions', () => {
  test.each(DRAFTS)('%s: counts equal brute force', (_, draft) => {
    const { impact, steps } = run(preview(decisions, draft, shelf));
    const forced = decisions.map((each) => byForce(each, draft));
    const counts = Object.fromEntries(
      Object.keys(impact.counts).map((answer) => [
        answer,
        forced.filter((each) => each === answer).length,
      ]),
    );
    expect(impact.counts).toEqual(counts);
    expect(impact.done).toBe(500);
    expect(steps).toBe(5);
    expect(impact.affected.length + impact.unlisted + impact.counts.same).toBe(500);
  });

  test('the drafts do not all say the same', () => {
    const answers = new Set(
      DRAFTS.flatMap(([, draft]) =>
        decisions
          .filter((_each, i) => i % 10 === 0)
          .map((each) => underAnother(each, draft, shelf).answer),
      ),
    );
    expect([...answers].sort()).toEqual(['now-blocked', 'other-option', 'same']);
  });

  test('two halves together are the whole; equal questions are asked once', () => {
    const [, draft] = DRAFTS[1]!;
    const whole = run(preview(decisions, draft, shelf)).impact;
    const halves = [decisions.slice(0, 250), decisions.slice(250)].map(
      (half) => run(preview(half, draft, shelf)).impact,
    );
    expect(together(halves[0]!, halves[1]!).counts).toEqual(whole.counts);
    expect(run(preview([...decisions, ...decisions], draft, shelf)).impact.asked).toBe(whole.asked);
  });

  test('stops where nobody asks for more', () => {
    let read = 0;
    const counted = function* () {
      for (const each of decisions) {
        read += 1;
        yield each;
      }
    };
    const generator = preview(counted(), DRAFTS[0]![1], shelf);
    generator.next();
    generator.return(undefined as never);
    expect(read).toBe(100);
  });
});

test('an open job is asked stage by stage, and the answer is labeled', () => {
  const all = decidedIn(told[0]!.job);
  expect(all.map(({ stage }) => stage)).toEqual([
    'style',
    'coating',
    'hazards',
    'substrate',
    'gauge',
  ]);
  const draft = draftOf({ 'SUB-02': { severity: 'refuse' } });
  const answers = all.map((each) => underAnother(each, draft, shelf));
  expect(
    answers.every(({ words }) =>
      words.startsWith('Under edition 3, which is not the edition of the decision: '),
    ),
  ).toBe(true);
  expect(underAnother(all[0]!, EDITION_1, shelf).answer).toBe('same');
});

const strict = () =>
  draftOf({
    'SUB-02': { severity: 'refuse' },
    'SIGN-01': { settings: { ...settingsOf('SIGN-01'), utilization_limit: 0.01 } },
  });

test('all that stands of an open surface counts once, at the worst of its stages', () => {
  const all = decidedIn(told[1]!.job);
  const single = all.map((each) => underAnother(each, strict(), shelf));
  const differing = single.filter(({ answer }) => answer !== 'same');
  expect(differing.map(({ answer }) => answer)).toContain('now-blocked');
  const { impact } = run(preview([all], strict(), shelf));
  expect(impact).toMatchObject({ done: 1, counts: { same: 0, 'now-blocked': 1 } });
  expect(impact.affected[0]!.rules).toEqual([...new Set(differing.flatMap(({ rules }) => rules))]);
});

test('a row of the table says what was before and what would be after', () => {
  const gauge = decidedIn(told[1]!.job).find(({ stage }) => stage === 'gauge')!;
  const said = underAnother(gauge, strict(), shelf);
  expect(said.before).toMatch(/^\d\d gauge, 0\.\d{4} in$/);
  expect(said.after).toBe(`${said.before}; in the way: SIGN-01`);
});

test('an old decision that lacks only facts cannot be said; of an open surface they are due', () => {
  const recorded = { ...decidedIn(told[0]!.job).find(({ stage }) => stage === 'coating')! };
  const old = { ...recorded, known: undefined };
  const due = underAnother(recorded, draftOf({}, EDITION_2), shelf);
  const said = underAnother(old, draftOf({}, EDITION_2), shelf);
  expect([due.answer, said.answer]).toEqual(['now-blocked', 'cannot-say']);
  expect(said.rules).toEqual(due.rules);
  expect(said.after).toMatch(/; not recorded then: what .*COAT-\d\d.* ask$/);
});
