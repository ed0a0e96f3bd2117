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
const codes = (decision: RulebookDecision): readonly string[] =>
  decision.ok ? [] : decision.refusals.map(({ code }) => code);

const DRAFT: RulebookCommandInput = {
  type: 'draft-rules-edition',
  in_force_from: '2026-12-01',
  summary: 'Hail country from 1.5 in; 29 is not stocked.',
  source: 'office meeting of 30 October',
  edits: [
    { rule: 'GAUGE-07', settings: { hail_country_stone_in: 1.5 } },
    { rule: 'GAUGE-05', settings: { not_stocked: true } },
  ],
};
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
      }[];
    };
    expect(edition.number).toBe(2);
    expect(edition.entries).toHaveLength(EDITION_1.entries.length);
    expect(changes.map(({ rule, what, was, becomes }) => [rule, what, was, becomes])).toEqual([
      ['GAUGE-05', 'setting not_stocked', 'false', 'true'],
      ['GAUGE-07', 'setting hail_country_stone_in', '1.75', '1.5'],
    ]);
    expect(changes.every(({ source }) => source.length > 0)).toBe(true);
  });

  test('names every fault at once', () => {
    const faulty: RulebookCommandInput = {
      ...DRAFT,
      in_force_from: '2026-10-01',
      edits: [
        { rule: 'GAUGE-01', severity: 'note' },
        { rule: 'GAUGE-07', settings: { stone: 1 } },
        { rule: 'GAUGE-07', version: 1 },
        { rule: 'NONE-01' },
        { rule: 'NONE-02', leave_out: true },
        { rule: 'GAUGE-02', leave_out: true },
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
    expect(codes(when([FIRST], { ...DRAFT, edits: [{ rule: 'GAUGE-07' }] }))).toEqual(['BOOK-06']);
    expect(codes(when([FIRST], DRAFT, { roles: ['project-manager'] }))).toEqual(['BOOK-01']);
  });

  test('may add a rule with its own settings and leave out guidance', () => {
    const more: RulebookCommandInput = {
      ...DRAFT,
      edits: [{ rule: 'GAUGE-17' }, { rule: 'GAUGE-06', leave_out: true }],
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
  test('takes exactly what was drafted, with a reason, and clears the draft', () => {
    const past = drafted();
    const made = when(past, { type: 'publish-rules-edition', number: 2, reason: 'agreed' });
    expect(made).toMatchObject({
      ok: true,
      events: [
        {
          type: 'rules-edition-published/1',
          data: { edition: (past[1]!.data as { edition: unknown }).edition, reason: 'agreed' },
        },
      ],
    });
    const after = [...past, ...(made.ok ? made.events : [])].reduce(evolveRulebook, EMPTY_RULEBOOK);
    expect(after.draft).toBeNull();
    expect(after.editions.map(({ number }) => number)).toEqual([1, 2]);
  });

  test('is refused without that draft, after its day, and when withdrawn', () => {
    const publish: RulebookCommandInput = {
      type: 'publish-rules-edition',
      number: 2,
      reason: 'agreed',
    };
    expect(codes(when([FIRST], publish))).toEqual(['BOOK-02']);
    expect(codes(when(drafted(), { ...publish, number: 3 }))).toEqual(['BOOK-02']);
    expect(codes(when(drafted(), publish, { day: '2026-12-02' }))).toEqual(['BOOK-08']);
    const withdrawn = when(drafted(), { type: 'withdraw-rules-draft', reason: 'not agreed' });
    expect(codes(when([...drafted(), ...(withdrawn.ok ? withdrawn.events : [])], publish))).toEqual(
      ['BOOK-02'],
    );
    expect(codes(when([FIRST], { type: 'withdraw-rules-draft', reason: 'none' }))).toEqual([
      'BOOK-02',
    ]);
  });

  test('its events are what the contract says', () => {
    for (const event of drafted())
      expect(
        RULEBOOK_EVENTS[event.type].safeParse(JSON.parse(JSON.stringify(event.data))).success,
      ).toBe(true);
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
