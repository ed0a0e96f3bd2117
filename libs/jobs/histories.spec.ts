// Random histories: whatever is tried in whatever order, the record replays to the same bytes, what
// counts rests on today's values, and no required sign-off is ever skipped.

import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { Role } from '#rules';
import type { CommandInput } from './contract/commands.js';
import { APPROVE, ASK, BARN, HOUSE, LICENSE } from './job-files.js';
import { ENGINEER, contextOf, past, story, type Story } from './given.js';
import { Command } from './contract/commands.js';
import { decide } from './decide.js';
import { evolve } from './evolve.js';
import { CONFIRMED_STAGES, initial, signOffRequired, surfaceStage, type Job } from './job.js';
import { lookupIn, same } from './lookup.js';

/** Always the same ones; HISTORIES=1000 tells more of them. */
const HISTORIES = Number(process.env['HISTORIES'] ?? 250);

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
const reasoned = (command: CommandInput): CommandInput =>
  ({ ...command, reason: 'tried again' }) as CommandInput;
const s1 = (fact: string, value: unknown, how = 'measured'): CommandInput =>
  ({
    type: 'record-facts',
    reason: 'found',
    facts: [{ on: 's1', fact, value, how }],
  }) as CommandInput;

/** Commands that matter to movement, with roles that may give them. */
const MOVES: readonly (readonly [CommandInput, Role])[] = [
  ...[BARN, HOUSE].flatMap((file) =>
    (['style', 'coating', 'hazards', 'substrate', 'gauge'] as const).map(
      (step) => [reasoned(file[step]), 'project-manager'] as const,
    ),
  ),
  [reasoned(BARN.facts), 'office'],
  [reasoned(HOUSE.facts), 'office'],
  [s1('support-spacings', [{ v: '54' }]), 'crew-lead'],
  [s1('support-spacings', [{ v: '36' }]), 'crew-lead'],
  [s1('slope', v('3', 'per-12')), 'office'],
  [s1('reroof', true), 'office'],
  [s1('substrate', 'purlins', 'assumed'), 'office'],
  [s1('removes-bracing-sheets', true), 'office'],
  [
    { type: 'confirm-substrate', surface: 's1', provisional: true, reason: 'old roof on' },
    'office',
  ],
  [
    { type: 'record-tear-off', surface: 's1', finding: 'as-assumed', words: 'as drawn' },
    'crew-lead',
  ],
  [{ type: 'record-tear-off', surface: 's1', finding: 'different', words: 'rotten' }, 'crew-lead'],
  [{ type: 'reopen-stage', surface: 's1', stage: 'style', reason: 'owner asks' }, 'office'],
  [{ type: 'reopen-stage', surface: 's1', stage: 'gauge', reason: 'owner asks' }, 'office'],
  [{ type: 'describe-job', priorities: ['long-life'], reason: 'owner asks' }, 'office'],
  ...(['r1', 'r2', 'r3'] as const).flatMap((request) => [
    [{ ...ASK, request } as CommandInput, 'project-manager'] as const,
    [{ ...APPROVE, request } as CommandInput, 'engineer'] as const,
    [
      { ...APPROVE, request, answer: 'decline', reasons: 'too light' } as CommandInput,
      'engineer',
    ] as const,
    [
      {
        ...APPROVE,
        request,
        answer: 'approve-with-conditions',
        conditions: { thickness: v('0.0236', 'in'), words: '24 gauge' },
      } as CommandInput,
      'engineer',
    ] as const,
    [
      { type: 'revoke-sign-off', request, reason: 'withdrawn' } as CommandInput,
      'engineer',
    ] as const,
  ]),
  [
    {
      type: 'record-engineer-design',
      design: 'd1',
      surfaces: ['s1'],
      license: LICENSE,
      documents: [{ digest: 'd'.repeat(64), name: 'letter.pdf' }],
      dated: '2026-03-01',
      scope: 'roof',
      adopts: { words: 'as drawn' },
    },
    'office',
  ],
];

function attempt(told: Story, [command, role]: readonly [CommandInput, Role]): Story {
  const cautions = told.decision(command, [role]);
  const acknowledged = cautions.ok
    ? command
    : ({
        ...command,
        ...('surface' in command
          ? {
              acknowledges: cautions.refusals
                .filter(({ code }) => code === 'MOVE-05')
                .map(({ words }) => words.split(' ')[0]),
            }
          : {}),
      } as CommandInput);
  const parsed = Command.safeParse(acknowledged);
  const sent = parsed.success ? acknowledged : command;
  const decision = told.decision(sent, [role]);
  if (!decision.ok) {
    for (const { code } of decision.refusals) expect(code).toMatch(/^[A-Z]+-\d\d$/);
    expect(decision.refusals.length).toBeGreaterThan(0);
    return told;
  }
  return told.play(sent, [role]);
}

/** Everything that counts rests on today's values. */
function checkStanding(job: Job): void {
  const at = lookupIn(job);
  for (const surface of Object.values(job.surfaces)) {
    for (const stage of CONFIRMED_STAGES) {
      const { status, record } = surface.stages[stage];
      if (status !== 'confirmed' || !record) continue;
      const moved = Object.entries(record.reads).filter(
        ([path, value]) => !path.endsWith('#how') && !same(at(path) ?? null, value ?? null),
      );
      expect({ stage, moved }).toEqual({ stage, moved: [] });
    }
    if (surfaceStage(job, surface) !== 'done' || signOffRequired(surface).length === 0) continue;
    const signOff = job.signOffs[surface.signOff ?? ''];
    expect(['approved', 'approved-with-conditions', 'design-received']).toContain(
      signOff?.standing,
    );
    const scope = signOff?.scope[surface.id] ?? {};
    expect(
      Object.entries(scope).filter(([path, value]) => !same(at(path) ?? null, value ?? null)),
    ).toEqual([]);
  }
}

test('random histories replay to the same bytes and skip no required sign-off', () => {
  let done = 0;
  fc.assert(
    fc.property(
      fc.array(fc.nat({ max: MOVES.length - 1 }), { maxLength: 25 }),
      fc.boolean(),
      (moves, barn) => {
        const file = barn ? BARN : HOUSE;
        let told = story().play(file.open).play(file.facts);
        for (const step of ['style', 'coating', 'hazards', 'substrate', 'gauge'] as const)
          told = attempt(told, [file[step], 'project-manager']);
        for (const move of moves) {
          told = attempt(told, MOVES[move]!);
          checkStanding(told.job);
        }
        const replayed = JSON.parse(JSON.stringify(told.events)).reduce(
          evolve,
          initial('job-1'),
        ) as Job;
        expect(JSON.stringify(replayed)).toBe(JSON.stringify(told.job));
        if (surfaceStage(told.job, told.job.surfaces['s1']!) === 'done') done += 1;
      },
    ),
    { numRuns: HISTORIES, seed: 20260302 },
  );
  // One in twenty comes through at least, or they would show little.
  expect(done).toBeGreaterThan(HISTORIES / 20);
}, 900_000);

test('an event out of order or unknown is a fault, not a shrug', () => {
  const told = story().play(BARN.open);
  expect(() => evolve(told.job, told.events[0]!)).toThrow('does not follow');
  expect(() =>
    evolve(told.job, past({ type: 'no-such/1', data: {} } as never, told.job.version + 1)),
  ).toThrow('unknown event');
});

test('the engineer who was asked is the only one who may answer', () => {
  const told = attempt(story().play(BARN.open), [BARN.facts, 'office']);
  expect(told.refusals(APPROVE, ['engineer'])).toEqual(['MOVE-03']);
  const made = decide(told.job, Command.parse(APPROVE), contextOf(['administrator']));
  expect(made.ok ? [] : made.refusals.map(({ code }) => code)).toEqual(['MOVE-04']);
  expect(ENGINEER).toMatch(/^[0-9a-f-]{36}$/);
});
