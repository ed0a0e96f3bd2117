// Every state of a surface against every command: each cell is decided, each refusal has a rule id.
// The table itself is approved text, so that a change of movement shows in a diff.

import { expect, test } from '@jest/globals';
import { RULE_BOOK } from '#rules';
import { MAY, MOVES, type CommandInput, type Role } from '#jobs';
import { expectApproved } from './approve.js';
import { APPROVE, ASK, BARN, HOUSE, LICENSE, playReading, playUpTo } from '../libs/jobs/job-files.js';
import { story, type Story } from '../libs/jobs/given.js';

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
const facts = (fact: string, value: unknown): CommandInput =>
  ({ type: 'record-facts', reason: 'found', facts: [{ on: 's1', fact, value, how: 'measured' }] }) as CommandInput;

const gauge = playUpTo(BARN, 'gauge');
const asked = gauge.play(ASK);
const conditions = { thickness: v('0.0236', 'in'), words: '24 gauge' };
const reroof = (): Story =>
  playReading(playUpTo(HOUSE, 'facts').play(facts('reroof', true)), HOUSE.style).play(HOUSE.coating);
const provisional: CommandInput = { type: 'confirm-substrate', surface: 's1', provisional: true };
const torn = playReading(playReading(reroof(), HOUSE.hazards), provisional);

const STATES: Readonly<Record<string, Story>> = {
  'not opened': story(),
  'opened, no facts': playUpTo(BARN, 'open'),
  'facts recorded': playUpTo(BARN, 'facts'),
  'style chosen': playUpTo(BARN, 'style'),
  'coating chosen': playUpTo(BARN, 'coating'),
  'hazards assessed': playUpTo(BARN, 'hazards'),
  'substrate confirmed': playUpTo(BARN, 'substrate'),
  'substrate provisional, tear-off due': torn,
  'tear-off different': torn.play({ type: 'record-tear-off', surface: 's1', finding: 'different', words: 'spaced boards' }, ['crew-lead']),
  'gauge selected, sign-off open': gauge,
  'gauge selected, none needed': playUpTo(HOUSE, 'gauge'),
  'gauge needs re-check': gauge.play(facts('support-spacings', [{ v: '36' }])),
  'sign-off waiting': asked,
  'sign-off waiting, input changed': asked.play(facts('support-spacings', [{ v: '36' }])),
  approved: asked.play(APPROVE, ['engineer']),
  'approved with conditions': asked.play({ ...APPROVE, answer: 'approve-with-conditions', conditions } as CommandInput, ['engineer']),
  declined: asked.play({ ...APPROVE, answer: 'decline', reasons: 'too light' } as CommandInput, ['engineer']),
  revoked: asked.play(APPROVE, ['engineer']).play({ type: 'revoke-sign-off', request: 'r1', reason: 'error' }, ['engineer']),
  'approved, then input changed': asked.play(APPROVE, ['engineer']).play(facts('support-spacings', [{ v: '36' }])),
  withdrawn: gauge.play({ type: 'withdraw-surface', surface: 's1', reason: 'owner dropped it' }),
};

const COMMANDS: Readonly<Record<keyof typeof MAY, CommandInput>> = {
  'open-job': BARN.open,
  'describe-job': { type: 'describe-job', name: 'Renamed' },
  'add-building': { type: 'add-building', id: 'b2', name: 'Annex' },
  'add-surface': { type: 'add-surface', id: 's2', building: 'b1', name: 'North', kind: 'roof' },
  'withdraw-surface': { type: 'withdraw-surface', surface: 's1', reason: 'dropped' },
  'record-facts': facts('slope', v('5', 'per-12')),
  'choose-style': BARN.style,
  'choose-coating': BARN.coating,
  'assess-hazards': BARN.hazards,
  'confirm-substrate': BARN.substrate,
  'select-gauge': BARN.gauge,
  'reopen-stage': { type: 'reopen-stage', surface: 's1', stage: 'style', reason: 'owner asks' },
  'record-tear-off': { type: 'record-tear-off', surface: 's1', finding: 'as-assumed', words: 'as drawn' },
  'request-sign-off': { ...ASK, request: 'r2' } as CommandInput,
  'answer-sign-off': APPROVE,
  'record-engineer-design': {
    type: 'record-engineer-design', design: 'd1', surfaces: ['s1'], license: LICENSE, documents: [{ digest: 'd'.repeat(64), name: 'letter.pdf' }],
    dated: '2026-03-01', scope: 'roof', adopts: { words: 'as drawn' },
  },
  'reaffirm-sign-off': {
    type: 'reaffirm-sign-off', request: 'r1', license: LICENSE, statement: 'still right',
    differences: [{ surface: 's1', path: 'surface/s1/support-spacings', from: [{ v: '47.5' }, { v: '48' }, { v: '46' }, { zone: '3', v: '24' }], to: [{ v: '36' }] }],
  },
  'revoke-sign-off': { type: 'revoke-sign-off', request: 'r1', reason: 'error' },
  'add-note': { type: 'add-note', about: 's1', words: 'called the owner' },
};

const KNOWN = new Set([...Object.keys(MOVES), ...[...RULE_BOOK.values()].map(({ id }) => id)]);
const roleOf = (type: keyof typeof MAY): readonly Role[] => [MAY[type].at(-1) as Role];

test('every state against every command is decided, and every refusal has a rule id', () => {
  const lines = Object.entries(STATES).flatMap(([state, told]) => [
    `# ${state}`,
    ...Object.entries(COMMANDS).map(([type, command]) => {
      const codes = told.refusals(command, roleOf(type as keyof typeof MAY));
      for (const code of codes) expect(KNOWN).toContain(code);
      return `${type.padEnd(24)} ${codes.length === 0 ? 'accepted' : [...new Set(codes)].join(' ')}`;
    }),
    '',
  ]);
  expectApproved('movement-matrix.txt', lines.join('\n'));
});

test('a role that may not is refused in every state, whatever the command', () => {
  for (const [state, told] of Object.entries(STATES)) {
    for (const [type, command] of Object.entries(COMMANDS)) {
      expect({ state, type, codes: told.refusals(command, ['customer']) }).toEqual({ state, type, codes: ['MOVE-04'] });
      expect(told.refusals(command, ['administrator'])).toEqual(['MOVE-04']);
    }
  }
});
