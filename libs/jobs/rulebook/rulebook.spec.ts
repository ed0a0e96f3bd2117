// Drafting, withdrawing and publishing an edition: given/when/then over the rulebook's stream.

import { describe, expect, test } from '@jest/globals';
import { EDITION_1, EDITION_2, RULE_BOOK } from '#rules';
import {
  RulebookCommand,
  RULEBOOK_EVENTS,
  type RulebookCommandInput,
  type RulebookEvent,
} from '../contract/rulebook.js';
import { editionDifference } from './difference.js';
import {
  decideRulebook,
  EMPTY_RULEBOOK,
  evolveRulebook,
  type RulebookContext,
  type RulebookDecision,
} from './rulebook.js';

const FIRST: RulebookEvent = {
  type: 'rules-edition-published/1',
  data: { edition: EDITION_1, reason: 'The first edition comes with the product.' },
};
const CONTEXT: RulebookContext = {
  roles: ['standards-manager'],
  book: RULE_BOOK,
  day: '2026-11-02',
};

const when = (
  past: readonly RulebookEvent[],
  command: RulebookCommandInput,
  context: Partial<RulebookContext> = {},
): RulebookDecision =>
  decideRulebook(past.reduce(evolveRulebook, EMPTY_RULEBOOK), RulebookCommand.parse(command), {
    ...CONTEXT,
    ...context,
  });
const eventsOf = (decision: RulebookDecision): readonly RulebookEvent[] =>
  decision.ok ? decision.events : [];
const codes = (decision: RulebookDecision): readonly string[] =>
  decision.ok ? [] : decision.refusals.map(({ code }) => code);

const DRAFT: RulebookCommandInput = {
  type: 'draft-rules-edition',
  draft: 'd1',
  seen: 0,
  in_force_from: '2026-12-01',
  summary: 'Hail country from 1.5 in; 29 is not stocked.',
  edits: [
    { rule: 'GAUGE-07', settings: { hail_country_stone_in: 1.5 }, source: 'hail reports of 2026' },
    { rule: 'GAUGE-05', settings: { not_stocked: true }, source: 'office meeting of 30 October' },
  ],
};
const PUBLISH: RulebookCommandInput = {
  type: 'publish-rules-edition',
  draft: 'd1',
  seen: 2,
  running_jobs: 'stand',
  reason: 'agreed',
};
const source = 'office meeting';
const drafted = (
  command = DRAFT,
  past: readonly RulebookEvent[] = [FIRST],
): readonly RulebookEvent[] => {
  const made = when(past, command);
  if (!made.ok) throw new Error(made.refusals.map(({ words }) => words).join());
  return [...past, ...made.events];
};

describe('a draft', () => {
  test('is the newest edition with the edits, and lists each difference with its source', () => {
    const event = drafted()[1]!;
    expect(event.type).toBe('rules-edition-drafted/1');
    const { edition, changes } = event.data as {
      edition: typeof EDITION_1;
      changes: readonly {
        rule: string;
        what: string;
        was: string | null;
        becomes: string | null;
        source: string;
        because?: string;
      }[];
    };
    expect(edition.number).toBe(2);
    expect(edition.entries).toHaveLength(EDITION_1.entries.length);
    expect(changes.map(({ rule, what, was, becomes }) => [rule, what, was, becomes])).toEqual([
      ['GAUGE-05', 'setting not_stocked', 'false', 'true'],
      ['GAUGE-07', 'setting hail_country_stone_in', '1.75', '1.5'],
    ]);
    expect(changes.every((each) => each.source.length > 0)).toBe(true);
    expect(changes.map(({ because }) => because)).toEqual([
      'office meeting of 30 October',
      'hail reports of 2026',
    ]);
  });

  test('names every fault at once', () => {
    const faulty: RulebookCommandInput = {
      ...DRAFT,
      in_force_from: '2026-10-01',
      edits: [
        { rule: 'GAUGE-01', severity: 'note', source },
        { rule: 'GAUGE-07', settings: { stone: 1 }, source },
        { rule: 'GAUGE-07', version: 1, source },
        { rule: 'NONE-01', source },
        { rule: 'NONE-02', leave_out: true, source },
        { rule: 'GAUGE-02', leave_out: true, source },
      ],
    };
    expect([...codes(when([FIRST], faulty))].sort()).toEqual([
      'BOOK-04',
      'BOOK-04',
      'BOOK-04',
      'BOOK-04',
      'BOOK-05',
      'BOOK-07',
      'BOOK-08',
    ]);
  });

  test('needs a first edition, a difference and the role', () => {
    expect(codes(when([], DRAFT))).toEqual(['BOOK-03']);
    expect(codes(when([FIRST], { ...DRAFT, edits: [{ rule: 'GAUGE-07', source }] }))).toEqual([
      'BOOK-06',
    ]);
    expect(codes(when([FIRST], DRAFT, { roles: ['project-manager'] }))).toEqual(['BOOK-01']);
  });

  test('may add a rule with its own settings and leave out guidance', () => {
    const more: RulebookCommandInput = {
      ...DRAFT,
      edits: [
        { rule: 'GAUGE-17', source },
        { rule: 'GAUGE-06', leave_out: true, source },
      ],
    };
    const { changes } = drafted(more)[1]!.data as {
      changes: readonly { rule: string; was: string | null; becomes: string | null }[];
    };
    expect(changes.map(({ rule, was, becomes }) => [rule, was, becomes])).toEqual([
      ['GAUGE-17', null, 'version 1, caution'],
      ['GAUGE-06', 'version 1, note', null],
    ]);
  });
});

describe('publishing', () => {
  test('takes exactly what was drafted, with a reason and what becomes of running jobs', () => {
    const past = drafted();
    const impact = { scope: 'open', position: 12, checked: 3, words: '3 same' } as const;
    const made = when(past, { ...PUBLISH, impact });
    const { edition, changes } = past[1]!.data as { edition: unknown; changes: unknown };
    const data = { edition, changes, reason: 'agreed', draft: 'd1', running_jobs: 'stand', impact };
    expect(made).toEqual({ ok: true, events: [{ type: 'rules-edition-published/1', data }] });
    const after = [...past, ...(made.ok ? made.events : [])].reduce(evolveRulebook, EMPTY_RULEBOOK);
    expect(after.drafts).toEqual({});
    expect(after.editions.map(({ number }) => number)).toEqual([1, 2]);
  });

  test('is refused without that draft, after its day, and when withdrawn', () => {
    expect(codes(when([FIRST], PUBLISH))).toEqual(['BOOK-02']);
    expect(codes(when(drafted(), { ...PUBLISH, draft: 'd2' }))).toEqual(['BOOK-02']);
    expect(codes(when(drafted(), PUBLISH, { day: '2026-12-02' }))).toEqual(['BOOK-08']);
    const withdraw: RulebookCommandInput = {
      type: 'withdraw-rules-draft',
      draft: 'd1',
      reason: 'not agreed',
    };
    expect(codes(when([FIRST], withdraw))).toEqual(['BOOK-02']);
    expect(codes(when([...drafted(), ...eventsOf(when(drafted(), withdraw))], PUBLISH))).toEqual([
      'BOOK-02',
    ]);
  });

  test('its events are what the contract says', () => {
    for (const event of [...drafted(), ...eventsOf(when(drafted(), PUBLISH))])
      expect(
        RULEBOOK_EVENTS[event.type].safeParse(JSON.parse(JSON.stringify(event.data))).success,
      ).toBe(true);
  });
});

describe('two people at once', () => {
  const other: RulebookCommandInput = {
    ...DRAFT,
    draft: 'd2',
    summary: 'No note on solid decks.',
    edits: [{ rule: 'GAUGE-06', leave_out: true, source }],
  };
  const both = drafted(other, drafted());

  test('each has a draft of their own', () => {
    const { drafts } = both.reduce(evolveRulebook, EMPTY_RULEBOOK);
    expect(Object.keys(drafts)).toEqual(['d1', 'd2']);
    expect(drafts['d2']).toMatchObject({ version: 3, base: 1 });
  });

  test('the second is not published over the first, is told what changed, and saved again it is', () => {
    const published = [...both, ...eventsOf(when(both, PUBLISH))];
    const late: RulebookCommandInput = { ...PUBLISH, draft: 'd2', seen: 3 };
    const refused = when(published, late);
    expect(codes(refused)).toEqual(['BOOK-09']);
    expect(refused.ok ? '' : refused.refusals[0]!.words).toContain(
      'GAUGE-07 setting hail_country_stone_in 1.75 → 1.5',
    );
    const again = drafted({ ...other, seen: 3 }, published);
    const edition = eventsOf(when(again, { ...late, seen: 5 }))[0]!.data as {
      edition: typeof EDITION_1;
    };
    expect(edition.edition.number).toBe(3);
    const kept = edition.edition.entries.find(({ rule }) => rule === 'GAUGE-07');
    expect(kept?.settings['hail_country_stone_in']).toBe(1.5);
  });

  test('one draft is not saved or published over a newer version of it', () => {
    const saved = drafted({ ...DRAFT, seen: 2, summary: 'Said better.' }, drafted());
    expect(codes(when(saved, { ...DRAFT, seen: 2 }))).toEqual(['BOOK-10']);
    expect(codes(when(saved, PUBLISH))).toEqual(['BOOK-10']);
    expect(codes(when(saved, { ...PUBLISH, seen: 3 }))).toEqual([]);
  });
});

test('the two editions of the product differ by the rules that the second adds', () => {
  const changes = editionDifference(EDITION_1, EDITION_2, RULE_BOOK);
  expect(changes.map(({ rule }) => rule).sort()).toEqual(
    EDITION_2.entries
      .map(({ rule }) => rule)
      .filter((rule) => !EDITION_1.entries.some((each) => each.rule === rule))
      .sort(),
  );
  expect(editionDifference(EDITION_1, EDITION_1, RULE_BOOK)).toEqual([]);
});
