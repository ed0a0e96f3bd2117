// Every state of a surface against every command: each cell is decided, each refusal has a rule id.
// The table itself is approved text, so that a change of movement shows in a diff.

import { expect, test } from '@jest/globals';
import { RULE_BOOK } from '#rules';
import { MAY, MOVES, type CommandInput, type Role } from '#jobs';
import { expectApproved } from './approve.js';
import {
  APPROVE,
  ASK,
  BARN,
  HOUSE,
  LICENSE,
  playReading,
  playUpTo,
} from '../libs/jobs/job-files.js';
import { story, type Story } from '../libs/jobs/given.js';
import { HOUSE_TAKE_OFF } from '../libs/jobs/take-off/take-off-files.js';
import {
  built,
  file,
  ORDER,
  ordered,
  ready,
  receipt,
  WARRANTY,
} from '../libs/jobs/after-order/order-files.js';

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
const facts = (fact: string, value: unknown): CommandInput =>
  ({
    type: 'record-facts',
    reason: 'found',
    facts: [{ on: 's1', fact, value, how: 'measured' }],
  }) as CommandInput;

const gauge = playUpTo(BARN, 'gauge');
const asked = gauge.play(ASK);
const conditions = { thickness: v('0.0236', 'in'), words: '24 gauge' };
const reroof = (): Story =>
  playReading(playUpTo(HOUSE, 'facts').play(facts('reroof', true)), HOUSE.style).play(
    HOUSE.coating,
  );
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
  'tear-off different': torn.play(
    { type: 'record-tear-off', surface: 's1', finding: 'different', words: 'spaced boards' },
    ['crew-lead'],
  ),
  'gauge selected, sign-off open': gauge,
  'gauge selected, none needed': playUpTo(HOUSE, 'gauge'),
  'gauge needs re-check': gauge.play(facts('support-spacings', [{ v: '36' }])),
  'sign-off waiting': asked,
  'sign-off waiting, input changed': asked.play(facts('support-spacings', [{ v: '36' }])),
  approved: asked.play(APPROVE, ['engineer']),
  'approved with conditions': asked.play(
    { ...APPROVE, answer: 'approve-with-conditions', conditions } as CommandInput,
    ['engineer'],
  ),
  declined: asked.play({ ...APPROVE, answer: 'decline', reasons: 'too light' } as CommandInput, [
    'engineer',
  ]),
  revoked: asked
    .play(APPROVE, ['engineer'])
    .play({ type: 'revoke-sign-off', request: 'r1', reason: 'error' }, ['engineer']),
  'approved, then input changed': asked
    .play(APPROVE, ['engineer'])
    .play(facts('support-spacings', [{ v: '36' }])),
  'papers in order': ready(),
  ordered: ordered(),
  'change order open': ordered().play({
    type: 'open-change-order',
    order: 'o1',
    reason: 'two more pieces',
  }),
  'delivered and completed': built(),
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
  'record-tear-off': {
    type: 'record-tear-off',
    surface: 's1',
    finding: 'as-assumed',
    words: 'as drawn',
  },
  'request-sign-off': { ...ASK, request: 'r2' } as CommandInput,
  'answer-sign-off': APPROVE,
  'record-engineer-design': {
    type: 'record-engineer-design',
    design: 'd1',
    surfaces: ['s1'],
    license: LICENSE,
    documents: [{ digest: 'd'.repeat(64), name: 'letter.pdf' }],
    dated: '2026-03-01',
    scope: 'roof',
    adopts: { words: 'as drawn' },
  },
  'reaffirm-sign-off': {
    type: 'reaffirm-sign-off',
    request: 'r1',
    license: LICENSE,
    statement: 'still right',
    differences: [
      {
        surface: 's1',
        path: 'surface/s1/support-spacings',
        from: [{ v: '47.5' }, { v: '48' }, { v: '46' }, { zone: '3', v: '24' }],
        to: [{ v: '36' }],
      },
    ],
  },
  'revoke-sign-off': { type: 'revoke-sign-off', request: 'r1', reason: 'error' },
  'add-note': { type: 'add-note', about: 's1', words: 'called the owner' },
  'record-take-off': HOUSE_TAKE_OFF,
  'issue-order': ORDER,
  'open-change-order': { type: 'open-change-order', order: 'o1', reason: 'more' },
  'withdraw-change-order': { type: 'withdraw-change-order', order: 'o1', reason: 'not needed' },
  'record-acknowledgment': {
    type: 'record-acknowledgment',
    order: 'o1',
    dated: '2026-03-07',
    lines: [],
  },
  'record-receipt': receipt('coil-7', 40),
  'accept-mixed-lots': {
    type: 'accept-mixed-lots',
    surface: 's1',
    words: 'signed',
    files: [file('signed.pdf')],
  },
  'settle-receipt': { type: 'settle-receipt', order: 'o1', line: 'p1', words: 'on hand' },
  'record-as-built': {
    type: 'record-as-built',
    surface: 's1',
    fastener: 'clip-s',
    zones: [{ zone: 'all', spacing: v('24', 'in') }],
  },
  'record-inspection': { type: 'record-inspection', on: '2026-04-10', passed: true },
  'close-punch-item': { type: 'close-punch-item', item: 'k1', words: 'done' },
  'record-completion': { type: 'record-completion', on: '2026-04-12' },
  'file-registration': {
    type: 'file-registration',
    kind: 'paint',
    on: '2026-05-01',
    window_days: 60,
  },
  'issue-warranty': WARRANTY,
  'transfer-warranty': {
    type: 'transfer-warranty',
    document: 'w1',
    to: 'next owner',
    on: '2028-01-01',
    notice_given: true,
  },
  'open-claim': {
    type: 'open-claim',
    claim: 'q1',
    surface: 's1',
    kind: 'fade',
    notice: '2030-01-01',
    words: 'faded',
  },
  'record-reading': {
    type: 'record-reading',
    claim: 'q1',
    on: '2030-01-02',
    what: 'chalk',
    rating: '7',
    washed: false,
  },
  'decide-claim': {
    type: 'decide-claim',
    claim: 'q1',
    decision: 'declined',
    reason: 'not covered',
    clause: '3',
  },
};

const KNOWN = new Set([...Object.keys(MOVES), ...[...RULE_BOOK.values()].map(({ id }) => id)]);
const roleOf = (type: keyof typeof MAY): readonly Role[] => [MAY[type].at(-1) as Role];

test('every state against every command is decided, and every refusal has a rule id', () => {
  const lines = Object.entries(STATES).flatMap(([state, told]) => [
    `# ${state}`,
    ...Object.entries(COMMANDS).map(([type, command]) => {
      const codes = told.refusals(command, roleOf(type as keyof typeof MAY));
      for (const code of codes) expect(KNOWN.has(code) ? '' : `${type}: ${code}`).toBe('');
      return `${type.padEnd(24)} ${codes.length === 0 ? 'accepted' : [...new Set(codes)].join(' ')}`;
    }),
    '',
  ]);
  expectApproved('movement-matrix.txt', lines.join('\n'));
});

test('a role that may not is refused in every state, whatever the command', () => {
  for (const [state, told] of Object.entries(STATES)) {
    for (const [type, command] of Object.entries(COMMANDS)) {
      expect({ state, type, codes: told.refusals(command, ['customer']) }).toEqual({
        state,
        type,
        codes: ['MOVE-04'],
      });
      expect(told.refusals(command, ['administrator'])).toEqual(['MOVE-04']);
    }
  }
});
