// Papers folded from one job's events: the order with its revisions, the engineer's packet, a warranty
// document, the letter on a claim.

import { describe, expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import { APPROVE, ASK, BARN, playUpTo } from '../job-files.js';
import { ENGINEER, SITE } from '../given.js';
import { built, ORDER, ordered, WARRANTY } from '../after-order/order-files.js';
import { decisionLetter } from './decision-letter.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { engineerPacket } from './engineer-packet.js';
import { fastenerNames } from './moment.js';
import { orderPaper } from './order-paper.js';
import { warrantyPaper } from './warranty-paper.js';

const NAMES = {
  [SITE]: '12 County Road',
  [ENGINEER]: 'Avery Stone',
  'person-project-manager': 'Dana Field',
};
const digestOf = (value: unknown): string =>
  `digest of ${Object.keys(value as object).length} inputs`;

describe('order', () => {
  const revised = ordered()
    .play({ type: 'open-change-order', order: 'o1', reason: 'two more pieces' })
    .play({
      ...ORDER,
      lines: [{ ...ORDER.lines[0]!, count: 42 }, ORDER.lines[1]!],
    } as CommandInput);

  test('each revision reads as it was issued, whatever came after', () => {
    const first = orderPaper(revised.events, 'o1', 1, NAMES)!;
    expect(first).toEqual(orderPaper(ordered().events, 'o1', 1, NAMES));
    expect(first).toMatchObject({
      revision: 1,
      buyer: 'Dana Field',
      deliver_to: '12 County Road',
      change_reason: null,
      difference: [],
    });
    expect(first.surfaces[0]).toMatchObject({ gauge: '24', thickness_in: '0.0236' });
    const second = orderPaper(revised.events, 'o1', 2, NAMES)!;
    expect(second).toMatchObject({
      change_reason: 'two more pieces',
      difference: [{ line: 'p1', what: 'changed' }],
    });
  });

  test('a revision that was not issued has no paper', () => {
    expect(orderPaper(revised.events, 'o1', 3)).toBeUndefined();
  });
});

describe('engineer packet', () => {
  const asked = playUpTo(BARN, 'gauge').play(ASK);

  test('says the evaluation, why an engineer is required, and the digest of the scope', () => {
    const packet = engineerPacket(asked.events, 'r1', { names: NAMES, digestOf })!;
    expect(packet).toMatchObject({
      engineer: 'Avery Stone',
      site: '12 County Road',
      jurisdiction: 'KS',
      expires: '2026-04-01',
    });
    const [surface] = packet.surfaces;
    expect(surface!.required.length).toBeGreaterThan(0);
    expect(surface!.evaluation.options.some(({ id }) => id === surface!.selected)).toBe(true);
    expect(surface!.panel.at(-1)).toEqual([
      'Digest of the inputs in scope',
      expect.stringMatching(/^digest of \d\d inputs$/),
    ]);
  });

  test('names the fastener by the edition that was decided under, or not at all', () => {
    const under = (edition: number) =>
      engineerPacket(asked.events, 'r1', {
        names: fastenerNames([{ ...SAMPLE_CATALOGUE, edition }]),
        digestOf,
      })!.surfaces[0]!.fastener_name;
    expect([under(SAMPLE_CATALOGUE.edition), under(99)]).toEqual([
      'Screw #14 with washer',
      undefined,
    ]);
  });

  test('stays what it was when the job goes on', () => {
    const later = asked.play(APPROVE, ['engineer']).play({
      type: 'record-facts',
      reason: 'measured again',
      facts: [{ on: 's1', fact: 'slope', value: { v: '5', u: 'per-12' }, how: 'measured' }],
    });
    expect(engineerPacket(later.events, 'r1', { digestOf })).toEqual(
      engineerPacket(asked.events, 'r1', { digestOf }),
    );
  });
});

const reviewer = ['warranty-reviewer'] as const;
const issued = built()
  .play({ type: 'file-registration', kind: 'paint', on: '2026-06-22', window_days: 60 })
  .play({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput);

test('a warranty document says its own warrantor, term, lots, late registration and what is excluded', () => {
  const paper = warrantyPaper(issued.events, 'w1', NAMES)!;
  expect(paper).toMatchObject({
    kind: 'paint',
    title: 'limited',
    warrantor: { name: 'Invented Coil Coating' },
    years: 30,
    start_because: 'the day of completion',
    registration: { due_by: '2026-06-11', late_days: 11 },
    exclusions_triggered: ['paint registered 11 days late'],
  });
  expect(paper.surfaces).toEqual([
    'South: Snap seam 16, 24 gauge (0.0236 in), steel AZ50, PVDF slate, lot coil-7',
  ]);
  expect(paper.terms).toEqual([
    { what: 'fade, dark colors', limit: '5 units, scale not named', years: 30 },
    { what: 'chalk', limit: 'not under 8', years: 30 },
  ]);
  expect(warrantyPaper(issued.events, 'w2')).toBeUndefined();
});

test('a decision letter says tests as they stood and who decided', () => {
  const open = issued.play(
    {
      type: 'open-claim',
      claim: 'q1',
      surface: 's1',
      kind: 'leak',
      document: 'w1',
      notice: '2034-03-01',
      words: 'water at the ridge',
    },
    reviewer,
  );
  expect(decisionLetter(open.events, 'q1')).toBeUndefined();
  const decided = open.play(
    {
      type: 'decide-claim',
      claim: 'q1',
      decision: 'declined',
      reason: 'paint says nothing of leaks',
      clause: '2',
    },
    reviewer,
  );
  const letter = decisionLetter(decided.events, 'q1', NAMES)!;
  expect(letter).toMatchObject({
    decision: 'declined',
    clause: '2',
    surface: 'South',
    kind: 'leak',
    warranty:
      'document w1: limited warranty, paint, by Invented Coil Coating, from 2026-04-12 for 30 years',
  });
  expect(letter.tests.map(({ test: name }) => name)).toEqual(
    expect.arrayContaining(['term in force at the notice date', 'as built']),
  );
});
