// Requirements 21 to 28 of the decision record, each by its number, on job files played by commands.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { EDITION_1, EDITION_2, RULE_BOOK, type Edition } from '#rules';
import {
  decidedBy,
  decisionRecord,
  evaluate,
  isStageEvent,
  jobAsOf,
  jobView,
  questionOf,
  replay,
  underAnother,
  type Command,
  type CommandInput,
  type Decided,
  type Evaluation,
  type PastEvent,
  type Shelf,
} from '#jobs';
import { canonical, createMemoryLedger } from '#ledger';
import { contextOf, story, type Story } from '../../libs/jobs/given.js';
import { BARN, HOUSE, playReading, playUpTo } from '../../libs/jobs/job-files.js';
import { built, ORDER, ordered, WARRANTY } from '../../libs/jobs/after-order/order-files.js';
import { SAMPLE_CATALOGUE } from '../../libs/jobs/sample.table.js';

const barn = playUpTo(BARN, 'gauge');
const house = playUpTo(HOUSE, 'gauge');
const stored = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
const recordOf = (events: readonly PastEvent[]) => stored(decisionRecord('job-1', events, {}));
const evaluationOf = (told: typeof barn): Evaluation =>
  told.job.surfaces['s1']!.stages.gauge.record!.evaluation!;
const decisions = (events: readonly PastEvent[]): readonly Decided[] =>
  events
    .map(stored)
    .filter(isStageEvent)
    .map((event) => decidedBy('job-1', event));
/** Rules whose cautions a command meets. */
const cautions = (told: Story, command: CommandInput): readonly string[] => {
  const made = told.decision(command);
  return made.ok
    ? []
    : made.refusals
        .filter(({ code }) => code === 'MOVE-05')
        .map(({ words }) => words.split(' ')[0] ?? '');
};
type FactsRecorded = Extract<PastEvent, { type: 'facts-recorded/1' }>;
const found = (fact: string, value: unknown): CommandInput =>
  ({
    type: 'record-facts',
    reason: 'found on site',
    facts: [{ on: 's1', fact, value, how: 'measured' }],
  }) as CommandInput;

describe('requirement 21: each gauge of an order or a warranty has one live decision', () => {
  const warranty = { ...WARRANTY, exclusions_named: [] } as CommandInput;
  const registered = built().play({
    type: 'file-registration',
    kind: 'paint',
    on: '2026-05-01',
    window_days: 60,
  });

  test('and is what that decision says', () => {
    const told = registered.play(warranty);
    const issued = told.job.after.orders['o1']!.revisions.at(-1)!;
    const record = recordOf(told.events);
    for (const line of issued.surfaces) {
      const live = record.surfaces
        .filter(({ id }) => id === line.surface)
        .flatMap(({ stages }) => stages)
        .filter(({ stage, status }) => stage === 'gauge' && status === 'confirmed');
      expect(live).toHaveLength(1);
      expect(live[0]!.chosen).toEqual(
        expect.arrayContaining([
          { what: 'thickness in', value: line.thickness_in },
          { what: 'gauge', value: line.gauge },
        ]),
      );
    }
    expect(issued.surfaces.map(({ surface }) => surface)).toEqual(
      told.job.after.warranties['w1']!.surfaces,
    );
  });

  test('where it does not count any more, neither an order nor a warranty is issued', () => {
    const changed = ordered().play({ type: 'open-change-order', order: 'o1', reason: 'deck' });
    expect(changed.play(found('deck-thickness', { v: '0.5', u: 'in' })).refusals(ORDER)).toContain(
      'ORDER-01',
    );
    const later = registered.play(found('deck-thickness', { v: '0.5', u: 'in' }));
    expect(registered.refusals(warranty)).toEqual([]);
    expect(later.refusals(warranty)).toContain('MOVE-13');
  });
});

/** What the job, a building or a surface was opened with, by its first entry. */
const OPENED_WITH = /^job\/|\/kind$/;

describe('requirement 22: every input says its source, its unit, who and when', () => {
  const told = [
    BARN.open,
    BARN.facts,
    found('wood-specific-gravity', { v: '0.42', u: 'G' }),
    BARN.style,
    BARN.coating,
    BARN.hazards,
    BARN.substrate,
    BARN.gauge,
  ].reduce(playReading, story());

  test('in the record of each stage', () => {
    const facts = recordOf(told.events).surfaces[0]!.stages.flatMap((stage) => stage.facts);
    expect(facts.length).toBeGreaterThan(30);
    for (const { path, value, how, by, at } of facts) {
      if (typeof value === 'object' && value !== null && 'v' in value)
        expect({ path, unit: (value as { u?: string }).u }).toEqual({
          path,
          unit: expect.stringMatching(/\S/),
        });
      if (!OPENED_WITH.test(path))
        expect({ path, by, at }).toEqual({
          path,
          by: expect.stringMatching(/^person-/),
          at: expect.stringMatching(/^2026-03-02T/),
        });
      if (path.split('/').length === 3 && !OPENED_WITH.test(path))
        expect({ path, how }).toEqual({
          path,
          how: expect.stringMatching(/^(measured|told|document|assumed)$/),
        });
    }
  });

  test('what is assumed is flagged as such, counts for a quote and not for an order', () => {
    const assumed = house.play({
      type: 'record-facts',
      reason: 'not seen yet',
      facts: [{ on: null, fact: 'elevation', value: { v: '900', u: 'ft' }, how: 'assumed' }],
    });
    expect(jobView(assumed.job).facts).toEqual(
      expect.arrayContaining([expect.objectContaining({ path: 'site/elevation', how: 'assumed' })]),
    );
    expect(assumed.refusals(ORDER)).toContain('ORDER-03');
  });

  test('nothing is filled in silently: a missing input is named, and the rule is not evaluated', () => {
    const without = {
      ...BARN.facts,
      facts: (BARN.facts as Extract<CommandInput, { type: 'record-facts' }>).facts.filter(
        ({ fact }) => fact !== 'support-spacings',
      ),
    } as CommandInput;
    const told = [BARN.open, without, BARN.style, BARN.coating, BARN.hazards].reduce(
      playReading,
      story(),
    );
    const refused = told.decision(BARN.substrate);
    expect(refused.ok ? [] : refused.refusals.map(({ code, words }) => `${code} ${words}`)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^SUB-01 .*spacing/)]),
    );
  });
});

describe('requirement 23: every past decision replays to the same bytes under the editions it names', () => {
  const digests = { rules: 'e'.repeat(64), catalogue: 'c'.repeat(64) };
  const shelf = (rules: string = digests.rules): Shelf => ({
    book: RULE_BOOK,
    rules: (number) =>
      number === EDITION_1.number ? { edition: EDITION_1, digest: rules } : undefined,
    catalogue: (number) =>
      number === SAMPLE_CATALOGUE.edition
        ? { edition: SAMPLE_CATALOGUE, digest: digests.catalogue }
        : undefined,
  });

  test.each([
    ['barn', barn],
    ['house', house],
  ] as const)('%s', (_, told) => {
    const made = decisions(told.events);
    expect(made.map(({ stage }) => stage)).toEqual([
      'style',
      'coating',
      'hazards',
      'substrate',
      'gauge',
    ]);
    for (const each of made) expect(replay(each, shelf(), canonical)).toEqual({ outcome: 'equal' });
  });

  test('an edition with other bytes than its digest says is not used, and one changed number is found', () => {
    const gauge = decisions(barn.events).at(-1)!;
    expect(replay(gauge, shelf('0'.repeat(64)), canonical).outcome).toBe('cannot');
    const forged = {
      ...gauge,
      evaluation: JSON.parse(
        JSON.stringify(gauge.evaluation).replace(/"utilization":"0\.(\d)/, '"utilization":"0.9$1'),
      ) as Evaluation,
    };
    expect(replay(forged, shelf(), canonical)).toMatchObject({ outcome: 'differs' });
  });

  test('engine and editions stand in the record, with their digests', () => {
    const { engine, rules_edition, catalogue_edition } = evaluationOf(barn);
    expect(engine).toMatch(/\S/);
    expect(rules_edition).toEqual({ number: EDITION_1.number, digest: digests.rules });
    expect(catalogue_edition).toEqual({
      number: SAMPLE_CATALOGUE.edition,
      digest: digests.catalogue,
    });
  });
});

describe('requirement 24: a changed rule changes no old record', () => {
  const stricter: Edition = {
    ...EDITION_2,
    number: 3,
    entries: EDITION_2.entries.map((entry) =>
      entry.rule === 'GAUGE-05' ? { ...entry, severity: 'refuse' } : entry,
    ),
  };

  test('the record reads the same; what the other edition says is an answer of its own', () => {
    const before = canonical(recordOf(barn.events));
    const gauge = decisions(barn.events).at(-1)!;
    const shelf: Shelf = {
      book: RULE_BOOK,
      rules: (number) =>
        [EDITION_1, stricter]
          .filter((each) => each.number === number)
          .map((edition) => ({ edition, digest: 'e'.repeat(64) }))[0],
      catalogue: () => ({ edition: SAMPLE_CATALOGUE, digest: 'c'.repeat(64) }),
    };
    const other = underAnother(gauge, stricter, shelf);
    expect(other).toMatchObject({ edition: 3, words: expect.stringMatching(/\S/) });
    expect(canonical(recordOf(barn.events))).toBe(before);
    expect(gauge.rules_edition.number).toBe(EDITION_1.number);
  });

  test('decided under the new edition it is another entry beside the old one', () => {
    const again = barn.play(
      {
        ...BARN.gauge,
        reason: 'under the new edition',
        acknowledges: cautions(barn, BARN.gauge),
      } as CommandInput,
      undefined,
      { edition: EDITION_2, editionDigest: '2'.repeat(64) },
    );
    const gauges = decisions(again.events).filter(({ stage }) => stage === 'gauge');
    expect(gauges.map((each) => each.rules_edition.number)).toEqual([1, 2]);
    expect(canonical(again.events.slice(0, barn.events.length))).toBe(canonical(barn.events));
  });
});

/** Utilizations, days and names carry no unit. */
const PURE_NUMBERS = /^zone|^margin$|utilization|day|valid|on$|option|class/;

describe('requirement 25: the trace lists every option with every rule', () => {
  test.each([
    ['barn', barn],
    ['house', house],
  ] as const)('%s: none is left out, and what is not evaluated says why', (_, told) => {
    const rules = EDITION_1.entries
      .filter(({ rule, version }) => RULE_BOOK.get(`${rule}/${version}`)?.stage === 'gauge')
      .map(({ rule }) => rule)
      .sort();
    expect(rules.length).toBeGreaterThan(10);
    const { options } = evaluationOf(told);
    expect(options.length).toBeGreaterThan(2);
    const outcomes = new Set<string>();
    for (const { id, findings } of options) {
      expect({ id, rules: findings.map(({ rule }) => rule).sort() }).toEqual({ id, rules });
      for (const { rule, outcome, words, figures, margin } of findings) {
        outcomes.add(outcome);
        if (outcome !== 'pass')
          expect({ rule, outcome, words }).toEqual({
            rule,
            outcome,
            words: expect.stringMatching(/\S/),
          });
        for (const { name, u } of [...figures, ...(margin ? [margin] : [])])
          expect(
            u !== '' || PURE_NUMBERS.test(name) ? 'said' : `${rule}: ${name} has no unit`,
          ).toBe('said');
      }
    }
    expect([...outcomes]).toEqual(expect.arrayContaining(['pass', 'not-applicable']));
  });

  test('every zone has its demand, capacity and utilization, or says why there is no number', () => {
    for (const { zones, availability } of evaluationOf(barn).options.filter(
      (each) => each.availability !== 'not-made',
    )) {
      expect(availability).toBeDefined();
      for (const { panel, attachment, missing } of zones) {
        expect(panel.length + attachment.length + missing.length).toBeGreaterThan(0);
        for (const { demand, capacity, source } of [...panel, ...attachment]) {
          expect([demand.u, capacity.u]).toEqual([expect.stringMatching(/\S/), demand.u]);
          expect(source).toMatch(/\S/);
        }
      }
    }
  });
});

describe('requirement 26: "why not" is answered for every option of the catalogue edition', () => {
  const CLASSES = ['ruled-out', 'dominated', 'not-stocked', 'not-made', 'no-test'];

  test.each([
    ['barn', barn, 'rib-36'],
    ['house', house, 'seam-16'],
  ] as const)(
    '%s: every sheet of the profile, with one class and its reason',
    (_, told, profile) => {
      const evaluation = evaluationOf(told);
      const sheets = new Set(
        SAMPLE_CATALOGUE.made
          .filter((row) => row.profile === profile && row.metal === 'steel')
          .map(({ thickness }) => thickness.v),
      );
      expect(new Set(evaluation.options.map(({ thickness }) => thickness.v))).toEqual(sheets);
      for (const { id, why_not, admissible } of evaluation.options) {
        if (id === evaluation.recommendation.option) expect(why_not).toBeNull();
        else {
          expect(CLASSES).toContain(why_not?.class);
          expect(why_not?.words).toMatch(/\S/);
          if (why_not?.class !== 'dominated' && why_not?.class !== 'not-stocked')
            expect({ id, admissible }).toEqual({ id, admissible: false });
          if (why_not?.class === 'ruled-out') expect(why_not.rules.length).toBeGreaterThan(0);
        }
      }
    },
  );

  test('a set of changes that is shown turns its option; each of them alone left out does not', () => {
    const question = questionOf(
      playUpTo(BARN, 'substrate').job,
      playUpTo(BARN, 'substrate').job.surfaces['s1']!,
      (BARN.gauge as Extract<Command, { type: 'select-gauge' }>).attachment,
      contextOf(),
    );
    if (!('facts' in question)) throw new Error('the barn can be asked');
    const shown = evaluationOf(barn).what_would_change.filter(
      ({ site_fact, becomes }) => !site_fact && becomes !== 'comes-first',
    );
    expect(shown.length).toBeGreaterThan(0);
    for (const { option, becomes, changes } of shown) {
      const { admissible } = evaluate(question, []).options.find(({ id }) => id === option)!;
      expect({ option, becomes }).toEqual({ option, becomes: admissible ? 'fails' : 'passes' });
      for (const { from, to } of changes) expect(from).not.toBe(to);
      const keys = changes.map(({ what }) => what);
      expect(new Set(keys).size).toBe(keys.length);
      const fewer = shown.filter(
        (other) =>
          other.option === option &&
          other.becomes === becomes &&
          other.changes.length < changes.length &&
          other.changes.every(({ what }) => keys.includes(what)),
      );
      expect(fewer).toEqual([]);
    }
  });
});

describe('requirement 27: what was known, and what was true, as of a moment', () => {
  const PATH = 'surface/s1/slope';
  const DAY = 86_400_000_000;
  const START = Date.UTC(2026, 2, 2) * 1000;
  const moment = (microseconds: number): string =>
    new Date(microseconds / 1000).toISOString().replace('Z', '000Z');
  const slope = (value: number): FactsRecorded => {
    const told = playUpTo(BARN, 'open').play({
      type: 'record-facts',
      facts: [
        { on: 's1', fact: 'slope', value: { v: String(value), u: 'per-12' }, how: 'measured' },
      ],
    });
    return told.events.at(-1) as FactsRecorded;
  };
  const opened = playUpTo(BARN, 'open').events;
  const first = slope(1);
  const entry = fc.record({
    value: fc.integer({ min: 2, max: 60 }),
    later: fc.integer({ min: 0, max: 3 }),
    counts: fc.integer({ min: -4, max: 4 }),
  });
  const history = fc.array(entry, { minLength: 1, maxLength: 8 });

  test('both axes agree with a replay by hand, on 1,000 random histories', async () => {
    let asked = 0;
    await fc.assert(
      fc.asyncProperty(
        history,
        fc.nat({ max: 26 }),
        fc.integer({ min: -5, max: 30 }),
        async (entries, knownDay, trueDay) => {
          let now = START;
          const ledger = createMemoryLedger({ now: () => now });
          await ledger.createLog('c');
          const append = (
            version: number,
            events: readonly { type: string; data: object; effectiveAt?: string }[],
          ) =>
            ledger.append({
              log: 'c',
              by: { person: 'p', role: 'office' },
              command: { id: `n${version}`, digest: 'd'.repeat(64) },
              streams: [{ stream: 'job/1', expectedVersion: version, events }],
            });
          // What the job is opened with counts from long before.
          await append(
            0,
            opened.map(({ type, data }) => ({
              type,
              data,
              effectiveAt: '2000-01-01T00:00:00.000000Z',
            })),
          );
          const byHand: { value: string; recorded: number; effective: number }[] = [];
          for (const [i, { value, later, counts }] of entries.entries()) {
            now += later * DAY + 1_000_000;
            const effective = now + counts * DAY;
            const v = String(value);
            const told = JSON.parse(
              JSON.stringify(first.data).replace('"v":"1"', `"v":"${v}"`),
            ) as object;
            const done = await append(opened.length + i, [
              { type: first.type, data: told, effectiveAt: moment(effective) },
            ]);
            expect(done.kind).toBe('appended');
            byHand.push({ value: v, recorded: now, effective });
          }
          const known = START + knownDay * DAY;
          const held = START + trueDay * DAY;
          const events = await ledger.readStream('c', 'job/1', {
            asOf: { recordedAt: moment(known), effectiveAt: moment(held) },
          });
          const fact = jobAsOf('1', events as unknown as readonly PastEvent[]).facts[PATH];
          const right = byHand.filter(
            ({ recorded, effective }) => recorded <= known && effective <= held,
          );
          if (right.length > 0) asked++;
          const values = fact ? [...fact.earlier.map(({ value }) => value), fact.value] : [];
          expect(values.map((value) => (value as { v: string }).v)).toEqual(
            right.map(({ value }) => value),
          );
          await ledger.close();
        },
      ),
      { numRuns: 1000, seed: 27 },
    );
    expect(asked).toBeGreaterThan(300);
  }, 120_000);
});

describe('requirement 28: an override needs a role, a rule that may be set aside, and a reason in words', () => {
  const strict = {
    edition: {
      ...EDITION_1,
      entries: EDITION_1.entries.map((each) =>
        each.rule === 'COAT-02' ? { ...each, severity: 'refuse' as const } : each,
      ),
    } satisfies Edition,
    catalogue: {
      ...SAMPLE_CATALOGUE,
      made: SAMPLE_CATALOGUE.made.map((row) => ({
        ...row,
        color_groups: [...new Set([...row.color_groups, 'dark' as const])],
      })),
    },
  };
  const told = playUpTo(BARN, 'style');
  const dark = { ...BARN.coating, color_group: 'dark' } as CommandInput;
  const aside = (reason: string) =>
    ({ ...dark, overrides: [{ rule: 'COAT-02', reason }] }) as CommandInput;

  test('the office may not, the manager may, and the automatic result stays visible', () => {
    expect(told.refusals(dark, ['project-manager'], strict)).toContain('COAT-02');
    expect(told.refusals(aside('the owner wants it'), ['office'], strict)).toContain('MOVE-06');
    expect(() => told.refusals(aside(''), ['project-manager'], strict)).toThrow();
    const set = told.play(aside('the owner wants it and knows'), ['project-manager'], strict);
    const stage = recordOf(set.events).surfaces[0]!.stages.find(
      (each) => each.stage === 'coating',
    )!;
    expect(stage.overrides).toMatchObject([
      {
        rule: 'COAT-02',
        reason: 'the owner wants it and knows',
        says: expect.stringMatching(/\S/),
      },
    ]);
    expect(stage.said.find(({ rule }) => rule === 'COAT-02')).toMatchObject({ outcome: 'fail' });
    expect(stage.by).toBe('person-project-manager');
  });

  test('code, physics and availability may not be set aside by anybody', () => {
    const low = [BARN.open, BARN.facts, found('slope', { v: '0.1', u: 'per-12' })].reduce(
      playReading,
      story(),
    );
    const forced = {
      ...BARN.style,
      overrides: [{ rule: 'STYLE-01', reason: 'the owner wants it' }],
    } as CommandInput;
    expect(low.refusals(forced, ['project-manager', 'administrator'])).toEqual(
      expect.arrayContaining(['MOVE-06']),
    );
  });

  test('another option than the recommended one needs its reason, and the record says a person took it', () => {
    const { options, recommendation } = evaluationOf(barn);
    const other = options.find(({ id, admissible }) => admissible && id !== recommendation.option)!;
    const pick = { ...BARN.gauge, option: other.id, reason: 'chosen again' } as CommandInput;
    const read = { ...pick, acknowledges: cautions(barn, pick) } as CommandInput;
    expect(barn.refusals(read)).toContain('MOVE-12');
    const why = 'The owner has these sheets on the yard.';
    const taken = playReading(barn, { ...pick, why } as CommandInput);
    expect(recordOf(taken.events).surfaces[0]!.why).toEqual(
      expect.arrayContaining([
        `The person took ${other.gauge} gauge (${other.thickness.v} in, ${other.grade}) instead: ${why}`,
        recommendation.sentence,
      ]),
    );
  });
});
