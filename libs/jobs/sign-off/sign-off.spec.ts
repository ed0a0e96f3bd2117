// What an engineer may do, and what binds afterwards.

import { describe, expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import { surfaceStage, type Job } from '../job.js';
import { APPROVE, ASK, BARN, LICENSE, playReading, playUpTo } from '../job-files.js';

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
const asked = () => playUpTo(BARN, 'gauge').play(ASK);
const stage = (job: Job) => surfaceStage(job, job.surfaces['s1']!);
const spacing = (value: string): CommandInput => ({
  type: 'record-facts',
  reason: 'measured again',
  facts: [
    {
      on: 's1',
      fact: 'support-spacings',
      value: [{ v: value }, { zone: '3', v: '24' }],
      how: 'measured',
    },
  ],
});
const heavier: CommandInput = {
  ...BARN.gauge,
  option: 'steel-0.0236-ss-80',
  why: 'the engineer asks for 24',
  reason: 'conditions',
} as CommandInput;
const CONDITIONS = { thickness: v('0.0236', 'in'), words: '24 gauge throughout' };

describe('approval', () => {
  test('approves what stands; a second answer is refused', () => {
    const told = asked().play(APPROVE, ['engineer']);
    expect(stage(told.job)).toBe('done');
    expect(told.refusals(APPROVE, ['engineer'])).toContain('MOVE-07');
  });

  test('is refused where a license has expired or is of another jurisdiction', () => {
    expect(
      asked().refusals(
        { ...APPROVE, license: { ...LICENSE, expires: '2026-03-01' } } as CommandInput,
        ['engineer'],
      ),
    ).toEqual(['MOVE-14']);
    expect(
      asked().refusals(
        { ...APPROVE, license: { ...LICENSE, jurisdiction: 'MO' } } as CommandInput,
        ['engineer'],
      ),
    ).toEqual(['MOVE-14']);
  });

  test('is refused to anyone but the engineer who was asked, whatever their roles', () => {
    const other = {
      by: { person: 'another-engineer', roles: ['engineer', 'administrator'] as const },
    };
    expect(asked().refusals(APPROVE, ['engineer'], other)).toEqual(['MOVE-15']);
  });

  test('is refused where an input changed since it was asked, and after its last day', () => {
    expect(asked().play(spacing('50')).refusals(APPROVE, ['engineer'])).toContain('MOVE-16');
    expect(asked().refusals(APPROVE, ['engineer'], { at: '2026-04-02T09:00:00Z' })).toContain(
      'MOVE-07',
    );
  });

  test('with conditions binds the gauge stage, which must be confirmed again', () => {
    const told = asked().play(
      { ...APPROVE, answer: 'approve-with-conditions', conditions: CONDITIONS } as CommandInput,
      ['engineer'],
    );
    expect(stage(told.job)).toBe('gauge');
    expect(told.refusals({ ...BARN.gauge, reason: 'keep 26' } as CommandInput)).toContain(
      'MOVE-09',
    );
    const bound = playReading(told, heavier);
    expect(bound.job.signOffs['r1']?.differences).toEqual([]);
    expect(stage(bound.job)).toBe('done');
  });

  test('declined keeps the surface at sign-off until another request is approved', () => {
    const told = asked().play(
      { ...APPROVE, answer: 'decline', reasons: 'purlins too light' } as CommandInput,
      ['engineer'],
    );
    expect(stage(told.job)).toBe('sign-off');
    const again = told
      .play({ ...ASK, request: 'r2' } as CommandInput)
      .play({ ...APPROVE, request: 'r2' } as CommandInput, ['engineer']);
    expect(stage(again.job)).toBe('done');
  });

  test('revoked keeps its history and blocks', () => {
    const told = asked()
      .play(APPROVE, ['engineer'])
      .play({ type: 'revoke-sign-off', request: 'r1', reason: 'wrong chart' }, ['engineer']);
    expect(stage(told.job)).toBe('sign-off');
    expect(told.events.some(({ type }) => type === 'sign-off-approved/1')).toBe(true);
  });
});

describe('re-check', () => {
  const stale = () =>
    playReading(
      playReading(asked().play(APPROVE, ['engineer']).play(spacing('47')), { ...BARN.substrate }),
      { ...BARN.gauge },
    );

  test('a changed input puts the sign-off up for re-check with old and new; the office cannot cure it', () => {
    const told = stale();
    expect(told.job.signOffs['r1']?.differences.map(({ path }) => path)).toContain(
      'surface/s1/support-spacings',
    );
    expect(stage(told.job)).toBe('sign-off');
    expect(told.refusals(APPROVE, ['project-manager'])).toEqual(['MOVE-04']);
  });

  test("is cured by the engineer's reaffirmation that lists exactly the differences", () => {
    const told = stale();
    const differences = told.job.signOffs['r1']!.differences.map((each) => ({ ...each }));
    const reaffirm = {
      type: 'reaffirm-sign-off',
      request: 'r1',
      license: LICENSE,
      statement: 'still holds',
      differences,
    } as CommandInput;
    expect(
      told.refusals(
        {
          ...reaffirm,
          differences: differences.map((each) => ({ ...each, to: 'other' })),
        } as CommandInput,
        ['engineer'],
      ),
    ).toEqual(['MOVE-16']);
    expect(stage(told.play(reaffirm, ['engineer']).job)).toBe('done');
  });

  test('who recorded a value, a price, a color or the priorities never cost a review', () => {
    const told = asked()
      .play(APPROVE, ['engineer'])
      .play({ type: 'describe-job', priorities: ['long-life'], reason: 'owner asks' })
      .play({
        type: 'record-facts',
        reason: 'asked',
        facts: [{ on: null, fact: 'water', value: 'bay', how: 'measured' }],
      });
    expect(told.job.signOffs['r1']?.differences).toEqual([]);
  });
});

describe("an engineer's design received", () => {
  const design = {
    type: 'record-engineer-design',
    design: 'd1',
    surfaces: ['s1'],
    license: LICENSE,
    documents: [{ digest: 'd'.repeat(64), name: 'sealed letter' }],
    dated: '2026-02-25',
    scope: 'roof panels and their attachment',
    adopts: { ...CONDITIONS, support_spacing: v('48', 'in') },
  } as CommandInput;

  test('may come first: the gauge stage then adopts what it says', () => {
    const told = playUpTo(BARN, 'substrate').play(design);
    expect(told.refusals(BARN.gauge)).toContain('MOVE-09');
    const done = playReading(told, heavier);
    expect(stage(done.job)).toBe('done');
    expect(done.job.signOffs['d1']?.standing).toBe('design-received');
  });

  test('is refused where it is dated after today or its license had lapsed', () => {
    const told = playUpTo(BARN, 'substrate');
    expect(told.refusals({ ...design, dated: '2026-03-09' } as CommandInput)).toEqual(['MOVE-10']);
    expect(
      told.refusals({ ...design, license: { ...LICENSE, expires: '2026-01-01' } } as CommandInput),
    ).toEqual(['MOVE-14']);
  });

  test('supports measured wider than it allows keep the gauge back', () => {
    const told = playUpTo(BARN, 'facts').play(spacing('52')).play(design);
    const up = ['style', 'coating', 'hazards', 'substrate'].reduce(
      (now, step) => playReading(now, BARN[step as 'style']),
      told,
    );
    expect(up.refusals(heavier).filter((code) => code === 'MOVE-09')).toEqual(['MOVE-09']);
  });
});
