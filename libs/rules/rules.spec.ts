// Every rule on every one of its cases: the outcome, what it reads, the numbers in its words.

import { describe, expect, it } from '@jest/globals';
import { CASES } from './cases/cases.js';
import type { RuleCases } from './cases/rule-cases.js';
import { ALL_RULES, type Facts, type Rule, type Settings, type Verdict } from './index.js';

const OUTCOMES = {
  passes: 'pass',
  refuses: 'fail',
  notApplicable: 'not-applicable',
  unknown: 'not-evaluated',
} as const;

interface Case {
  readonly facts: Facts;
  readonly settings: Settings;
  readonly outcome: Verdict['outcome'];
  readonly severity?: string | undefined;
}

function casesOf(rule: Rule): readonly Case[] {
  const cases: RuleCases = CASES[rule.id as keyof typeof CASES];
  const kinds = Object.entries(OUTCOMES) as [keyof typeof OUTCOMES, Verdict['outcome']][];
  return [
    ...kinds.flatMap(([kind, outcome]) =>
      (cases[kind] ?? []).map((facts) => ({ facts, settings: rule.settings, outcome })),
    ),
    ...(cases.withSettings ?? []),
  ];
}

/** The facts, which tell what was read of them and refuse what the rule does not declare. */
function guarded(rule: Rule, facts: Facts, read: Set<string>): Facts {
  const refuse = (): never => {
    throw new Error(`${rule.id} looks at its facts otherwise than by a declared key`);
  };
  return new Proxy(facts, {
    get(target, key) {
      if (!(rule.reads as readonly (string | symbol)[]).includes(key)) {
        throw new Error(`${rule.id} reads ${String(key)}, which it does not declare`);
      }
      read.add(String(key));
      return Reflect.get(target, key);
    },
    has: refuse,
    ownKeys: refuse,
  });
}

describe.each(ALL_RULES.map((rule): [string, Rule] => [rule.id, rule]))('%s', (_id, rule) => {
  const play = () =>
    casesOf(rule).map((each) => {
      const read = new Set<string>();
      return { ...each, read, verdict: rule.check(guarded(rule, each.facts, read), each.settings) };
    });

  it('has each case come out as it says', () => {
    const played = play();
    expect(played.map(({ facts, verdict }) => ({ facts, outcome: verdict.outcome }))).toEqual(
      played.map(({ facts, outcome }) => ({ facts, outcome })),
    );
    for (const { severity, verdict } of played) {
      if (severity !== undefined) expect(verdict).toMatchObject({ severity });
    }
  });

  it('reads all that it declares', () => {
    expect(new Set(play().flatMap(({ read }) => [...read]))).toEqual(new Set(rule.reads));
  });

  it('has its numbers in its words when it fails, and a negative margin', () => {
    for (const { verdict } of play()) {
      if (verdict.outcome !== 'fail') continue;
      for (const { v } of verdict.figures ?? []) expect(verdict.words).toContain(v);
      // HAZ-02 cautions also where there is room left to the limit from which it requires.
      if (verdict.margin && verdict.severity !== 'caution')
        expect(Number(verdict.margin.v)).toBeLessThanOrEqual(0);
    }
  });

  it('names limit and margin together, where it measures', () => {
    for (const { verdict } of play()) {
      if (verdict.outcome !== 'pass' && verdict.outcome !== 'fail') continue;
      expect(verdict.limit === undefined).toBe(verdict.margin === undefined);
      if (verdict.figures?.some(({ name }) => name === 'limit' || name === 'least'))
        expect(verdict.margin).toBeDefined();
    }
  });

  it('says exactly what it said when this version was approved', () => {
    const { check: _, ...data } = rule;
    expect({ ...data, verdicts: play().map(({ verdict }) => verdict) }).toMatchSnapshot();
  });
});

describe('the rules together', () => {
  it('never repeat an id', () => {
    expect(new Set(ALL_RULES.map((rule) => rule.id)).size).toBe(ALL_RULES.length);
  });

  it('have cases for these ids and no others', () => {
    expect(Object.keys(CASES).sort()).toEqual(ALL_RULES.map((rule) => rule.id).sort());
  });

  it('cite a place in every source but common practice', () => {
    for (const cite of ALL_RULES.flatMap((rule: Rule) => rule.cites)) {
      expect(cite.where === '').toBe(cite.source === 'practice');
    }
  });
});
