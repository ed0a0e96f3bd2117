// From the order to the claim: gates with the whole list of what is missing, change orders, lots,
// late registration, a fade term without a scale.

import { describe, expect, test } from '@jest/globals';
import type { CommandInput } from '../contract/commands.js';
import type { Story } from '../given.js';
import { HOUSE, playUpTo } from '../job-files.js';
import { decisionLetter } from '../documents/decision-letter.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { fallsDue } from './due.js';
import {
  built,
  builtUpTo,
  file,
  ORDER,
  ordered,
  ready,
  receipt,
  v,
  WARRANTY,
} from './order-files.js';
import { inForce } from './state.js';

describe('the order', () => {
  test('is refused with the whole list of what is missing', () => {
    const codes = playUpTo(HOUSE, 'gauge').refusals(ORDER);
    expect(codes).toEqual(
      expect.arrayContaining([
        'ORDER-06',
        'ORDER-07',
        'ORDER-08',
        'ORDER-09',
        'ORDER-10',
        'ORDER-12',
      ]),
    );
    expect(codes.length).toBeGreaterThan(7);
  });

  test('is issued once everything is there, as revision 1', () => {
    const order = ordered().job.after.orders['o1']!;
    expect(inForce(order).revision).toBe(1);
    expect(inForce(order).surfaces[0]).toMatchObject({
      gauge: '24',
      thickness_in: '0.0236',
      color: 'slate',
    });
  });

  test('an assumed fact anywhere keeps it back', () => {
    const told = ready().play({
      type: 'record-facts',
      reason: 'guess',
      facts: [{ on: null, fact: 'elevation', value: v('900', 'ft'), how: 'assumed' }],
    });
    expect(told.refusals(ORDER)).toContain('ORDER-03');
  });

  test('afterwards stages stand still until a change order is open; the difference is by piece', () => {
    const told = ordered();
    const restyle = { ...HOUSE.style, reason: 'owner asks' } as CommandInput;
    expect(told.refusals(restyle)).toEqual(['MOVE-19']);
    expect(told.refusals(ORDER)).toContain('MOVE-19');
    const changing = told.play({
      type: 'open-change-order',
      order: 'o1',
      reason: 'two more pieces',
    });
    const again = changing.play({
      ...ORDER,
      lines: [{ ...ORDER.lines[0]!, count: 42 }, ORDER.lines[1]!],
    } as CommandInput);
    const { revisions } = again.job.after.orders['o1']!;
    expect(revisions.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(revisions[1]!.difference).toEqual([
      {
        line: 'p1',
        what: 'changed',
        from: '40 × Snap seam 16, 24 gauge at 288 in',
        to: '42 × Snap seam 16, 24 gauge at 288 in',
      },
    ]);
    expect(changing.refusals(receipt('coil-7', 40))).toEqual(['MOVE-19']);
  });

  test('an acknowledgment is compared line by line', () => {
    const told = ordered().play({
      type: 'record-acknowledgment',
      order: 'o1',
      dated: '2026-03-07',
      lines: [{ ...ORDER.lines[0]!, length: v('264', 'in') }],
    } as CommandInput);
    expect(
      told.job.after.orders['o1']!.acknowledgment?.differences.map(
        ({ what, line }) => `${what} ${line}`,
      ),
    ).toEqual(['changed p1', 'removed c1']);
  });
});

describe('delivery and installation', () => {
  test('a refill from another lot needs the owner, or the work is not complete', () => {
    const refilled = ordered()
      .play(receipt('coil-7', 39))
      .play(receipt('coil-9', 1))
      .play({ type: 'settle-receipt', order: 'o1', line: 'c1', words: 'clips were on hand' });
    const codes = refilled.refusals({ type: 'record-completion', on: '2026-04-12' });
    expect(codes).toContain('DELIV-05');
    const signed = refilled.play({
      type: 'accept-mixed-lots',
      surface: 's1',
      words: 'owner signed',
      files: [file('signed.pdf')],
    });
    expect(signed.refusals({ type: 'record-completion', on: '2026-04-12' })).not.toContain(
      'DELIV-05',
    );
  });

  test('clips wider than approved are named, and stop completion', () => {
    const told = ordered()
      .play(receipt('coil-7', 40))
      .play({
        type: 'record-as-built',
        surface: 's1',
        fastener: 'clip-s',
        zones: [{ zone: 'all', spacing: v('30', 'in') }],
        files: [file('a.jpg')],
      });
    expect(told.job.after.asBuilt['s1']?.differences).toEqual(['zone all: 30 in instead of 24 in']);
    expect(told.refusals({ type: 'record-completion', on: '2026-04-12' })).toContain('DELIV-09');
  });
});

describe('warranty and claim', () => {
  const late = (): Story =>
    built().play({ type: 'file-registration', kind: 'paint', on: '2026-06-22', window_days: 60 });
  const issued = (): Story =>
    late().play({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput);

  test('registration on day 71 of 60 is filed late and says so', () => {
    expect(late().job.after.registrations.paint).toMatchObject({
      due_by: '2026-06-11',
      late_days: 11,
    });
    expect(late().refusals(WARRANTY)).toContain('MOVE-05');
  });

  test('a full title is refused unless every test is met', () => {
    expect(
      late().refusals({ ...WARRANTY, title: 'full', acknowledges: ['WARR-07'] } as CommandInput),
    ).toContain('WARR-08');
  });

  test('a triggered exclusion must be named on the document', () => {
    expect(
      late().refusals({
        ...WARRANTY,
        exclusions_named: [],
        acknowledges: ['WARR-07'],
      } as CommandInput),
    ).toContain('WARR-14');
  });

  test("another text than the catalogue's is refused; cover full for longer than the term is no term", () => {
    const catalogue = {
      ...SAMPLE_CATALOGUE,
      warrantors: [
        {
          name: 'Invented Coil Coating',
          address: '1 Mill Lane, Anytown KS (invented)',
          documents: [{ kind: 'paint' as const, version: 'edition 3', text: file('terms.pdf') }],
        },
      ],
    };
    const read = { ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput;
    expect(late().refusals(read, undefined, { catalogue })).toEqual([]);
    const other = { ...read, terms: { digest: '0'.repeat(64), name: 'terms.pdf' } } as CommandInput;
    expect(late().refusals(other, undefined, { catalogue })).toEqual(['WARR-12']);
    expect(late().refusals({ ...read, full_years: 31 } as CommandInput)).toEqual(['MOVE-10']);
  });

  test('each kind is a document of its own; a registration window in the catalogue falls due on its last day', () => {
    const catalogue = {
      ...SAMPLE_CATALOGUE,
      warrantors: [
        {
          name: 'Invented Coil Coating',
          address: '1 Mill Lane, Anytown KS (invented)',
          documents: [{ kind: 'paint' as const, version: 'edition 3', registration_days: 60 }],
        },
      ],
    };
    const told = builtUpTo(4).play({ type: 'record-completion', on: '2026-04-12' }, undefined, {
      catalogue,
    });
    expect(fallsDue(told.job).filter(({ kind }) => kind === 'registration-window')).toMatchObject([
      { about: 'paint', on: '2026-06-11', words: 'Register the paint warranty by 2026-06-11' },
    ]);
    const issued = late().play({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput);
    expect(issued.refusals({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput)).toEqual([
      'MOVE-07',
    ]);
    const {
      fade: _,
      chalk: __,
      ...rest
    } = WARRANTY as Extract<CommandInput, { type: 'issue-warranty' }>;
    const workmanship = issued.play({
      ...rest,
      document: 'w2',
      kind: 'workmanship',
      warrantor: 'Ridge and Valley Roofing (invented)',
      warrantor_address: '2 Works Road, Anytown KS',
      years: 2,
      acknowledges: ['WARR-07'],
    });
    expect(
      Object.values(workmanship.job.after.warranties).map(
        ({ kind, warrantor }) => `${kind} by ${warrantor}`,
      ),
    ).toEqual([
      'paint by Invented Coil Coating',
      'workmanship by Ridge and Valley Roofing (invented)',
    ]);
  });

  test('no paint, no paint document: bare metal, or a finish without a term in the catalogue', () => {
    const none = { catalogue: { ...SAMPLE_CATALOGUE, terms: [] } };
    expect(
      late().refusals({ ...WARRANTY, acknowledges: ['WARR-07'] } as CommandInput, undefined, none),
    ).toContain('WARR-10');
  });

  test('a fade claim whose term names no scale stays an open question; a person decides', () => {
    const claimed = issued()
      .play(
        {
          type: 'open-claim',
          claim: 'q1',
          surface: 's1',
          kind: 'fade',
          lot: 'coil-7',
          document: 'w1',
          notice: '2034-03-01',
          words: 'south side has faded',
          files: [file('wide.jpg')],
        },
        ['warranty-reviewer'],
      )
      .play(
        {
          type: 'record-reading',
          claim: 'q1',
          on: '2034-03-20',
          what: 'color',
          scale: 'Hunter',
          illuminant: 'C',
          observer: '2',
          washed: true,
          instrument: 'meter',
          calibrated: '2034-03-01',
          retained: { L: '30', a: '1', b: '-2' },
          weathered: { L: '34', a: '1', b: '-1' },
        },
        ['warranty-reviewer'],
      )
      .play(
        {
          type: 'decide-claim',
          claim: 'q1',
          decision: 'accepted-in-part',
          reason: 'term is open; goodwill',
          clause: '4',
        },
        ['warranty-reviewer'],
      );
    const tests = claimed.job.after.claims['q1']!.decided!.tests;
    expect(tests.find(({ test: name }) => name === 'fade')).toMatchObject({ outcome: 'open' });
    expect(tests.find(({ test: name }) => name.startsWith('term'))).toMatchObject({
      outcome: 'met',
      words: 'notice 2034-03-01, in year 8; the term runs from 2026-04-12 for 30 years',
    });
    expect(tests.find(({ test: name }) => name.startsWith('cover left'))).toMatchObject({
      words: '100.0 %: 240 of 240 months, in a straight line after 10 full years',
    });
    const letter = decisionLetter(claimed.events, 'q1')!;
    expect(letter).toMatchObject({
      share_left: '100.0 %: 240 of 240 months, in a straight line after 10 full years',
      reason: 'term is open; goodwill',
      clause: '4',
    });
    const scales = letter.tests.find(({ test: name }) => name === 'fade')?.words ?? '';
    for (const scale of ['Hunter', 'CIELAB', 'CIEDE2000']) expect(scales).toContain(scale);
    expect(tests.find(({ test: name }) => name === 'as built')).toMatchObject({ outcome: 'met' });
  });
});
