// Job files in which things go wrong: the engineer declines, a license lapses, spacing is found wider
// after delivery, a chart is replaced, spaced boards lie under the old roof, a warrantor does not approve.
// A refill from another lot, late registration and a fade term without a scale: after-order.spec.ts.

import { expect, test } from '@jest/globals';
import type { CommandInput } from './contract/commands.js';
import { ORDER, PAPERS, ready, v } from './after-order/order-files.js';
import { story, type Story } from './given.js';
import { APPROVE, ASK, BARN, HOUSE, LICENSE, playReading } from './job-files.js';
import { jobRow } from './row.js';
import { SAMPLE_CATALOGUE } from './sample.table.js';
import { jobView } from './view.js';

const BARN_ORDER = {
  ...ORDER,
  lines: [
    {
      id: 'p1',
      surface: 's1',
      what: 'panel',
      words: 'Ribbed 36, 26 gauge',
      length: v('240', 'in'),
      count: 20,
    },
  ],
} satisfies CommandInput;
const asked = (): Story =>
  [
    BARN.open,
    BARN.facts,
    BARN.style,
    { ...BARN.coating, color: 'tan' } as CommandInput,
    BARN.hazards,
    BARN.substrate,
    BARN.gauge,
    PAPERS,
    ASK,
  ].reduce(playReading, story());
const signed = (license = LICENSE): Story =>
  asked().play({ ...APPROVE, license } as CommandInput, ['engineer']);
const spacings = (value: string): CommandInput => ({
  type: 'record-facts',
  reason: 'found by the crew',
  facts: [
    {
      on: 's1',
      fact: 'support-spacings',
      value: [{ v: value }, { zone: '3', v: '24' }],
      how: 'measured',
    },
  ],
});

test('the engineer declines: nothing is ordered, and the row says on whom it waits', () => {
  const told = asked().play(
    { ...APPROVE, answer: 'decline', reasons: 'purlins too light' } as CommandInput,
    ['engineer'],
  );
  expect(told.refusals(BARN_ORDER)).toContain('ORDER-02');
  expect(jobRow(told.job)).toMatchObject({
    state: 'Blocked',
    next_action: 'South: the engineer declined',
  });
});

test('a license that lapses later leaves the past sign-off; it signs nothing new', () => {
  const lapsing = { ...LICENSE, expires: '2026-03-10' };
  const told = signed(lapsing);
  const later = { at: '2027-01-05T09:00:00Z' };
  expect(jobView(told.job).surfaces[0]?.sign_off).toMatchObject({
    status: 'confirmed',
    license: { expires: '2026-03-10' },
  });
  const again = told.play(
    { ...ASK, request: 'r2', expires: '2027-02-01' } as CommandInput,
    ['project-manager'],
    later,
  );
  expect(
    again.refusals(
      { ...APPROVE, request: 'r2', license: lapsing } as CommandInput,
      ['engineer'],
      later,
    ),
  ).toEqual(['MOVE-14']);
});

test('spacing found wider after delivery: gauge and sign-off need re-check, and only a change order goes on', () => {
  const delivered = signed()
    .play(BARN_ORDER)
    .play({
      type: 'record-receipt',
      order: 'o1',
      on: '2026-03-20',
      stored_dry: true,
      lots: [{ surface: 's1', lot: 'coil-3' }],
      lines: [{ line: 'p1', count: 20 }],
    });
  const told = delivered.play(spacings('60'), ['crew-lead']);
  const [surface] = jobView(told.job).surfaces;
  expect(surface?.stages.gauge.status).toBe('needs-recheck');
  expect(surface?.sign_off).toMatchObject({
    status: 'needs-recheck',
    differences: [{ path: 'surface/s1/support-spacings' }],
  });
  expect(jobRow(told.job)).toMatchObject({ stage: 'installation', state: 'Blocked' });
  expect(told.refusals({ ...BARN.substrate, reason: 'measured' } as CommandInput)).toEqual([
    'MOVE-19',
  ]);
  const changing = told.play({ type: 'open-change-order', order: 'o1', reason: 'wider spacing' });
  expect(
    changing.refusals({ ...BARN.substrate, reason: 'measured' } as CommandInput),
  ).not.toContain('MOVE-19');
  expect(changing.refusals(BARN_ORDER)).toEqual(expect.arrayContaining(['ORDER-01', 'ORDER-02']));
  expect(
    changing.refusals({ type: 'withdraw-change-order', order: 'o1', reason: 'as it was' }),
  ).toEqual(['MOVE-19']);
});

test('a chart replaced mid-job: what was decided keeps its edition; confirmed again it reads the new one', () => {
  const weaker = {
    ...SAMPLE_CATALOGUE,
    edition: SAMPLE_CATALOGUE.edition + 1,
    charts: SAMPLE_CATALOGUE.charts.map((chart) => ({
      ...chart,
      rows: chart.rows.map((row) => ({
        ...row,
        outward: { ...row.outward, v: String(Number(row.outward.v) / 2) },
      })),
    })),
  };
  const rest = { catalogue: weaker, catalogueDigest: 'd'.repeat(64) };
  const told = signed();
  const before = told.job.surfaces['s1']!.stages.gauge.record!;
  expect(before.catalogue_edition.number).toBe(SAMPLE_CATALOGUE.edition);
  const again = { ...BARN.gauge, reason: 'the chart was replaced' } as CommandInput;
  expect(told.refusals(again, undefined, rest)).toContain('GAUGE-01');
  expect(told.refusals(again)).not.toContain('GAUGE-01');
});

test('spaced boards under the old roof: that plane is on hold and is decided again from its style', () => {
  const REROOF: CommandInput = {
    type: 'record-facts',
    reason: 'told',
    facts: [
      { on: 's1', fact: 'reroof', value: true, how: 'measured' },
      { on: 's1', fact: 'old-roof-left', value: 'none', how: 'measured' },
    ],
  };
  const laid = [
    HOUSE.open,
    HOUSE.facts,
    REROOF,
    HOUSE.style,
    HOUSE.coating,
    HOUSE.hazards,
    { ...HOUSE.substrate, provisional: true } as CommandInput,
    HOUSE.gauge,
  ].reduce(playReading, story());
  expect(jobView(laid.job).surfaces[0]).toMatchObject({ tear_off: 'due', on_hold: false });
  const found = laid.play(
    {
      type: 'record-tear-off',
      surface: 's1',
      finding: 'different',
      words: 'spaced boards, no plywood',
    },
    ['crew-lead'],
  );
  expect(jobView(found.job).surfaces[0]).toMatchObject({
    on_hold: true,
    stages: { substrate: { status: 'needs-recheck' } },
  });
  const measured = found.play(
    {
      type: 'record-facts',
      reason: 'the old roof is off',
      facts: [
        { on: 's1', fact: 'substrate', value: 'spaced-boards', how: 'measured' },
        { on: 's1', fact: 'support-spacings', value: [{ v: '24' }], how: 'measured' },
      ],
    },
    ['crew-lead'],
  );
  const stages = jobView(measured.job).surfaces[0]!.stages;
  expect([stages.style.status, stages.gauge.status]).toEqual(['needs-recheck', 'needs-recheck']);
  expect(measured.refusals({ ...HOUSE.style, reason: 'spaced boards' } as CommandInput)).toContain(
    'STYLE-03',
  );
});

test('spaced boards under one plane: it is on hold alone, and the other plane goes on', () => {
  const of = (command: CommandInput): CommandInput =>
    JSON.parse(JSON.stringify(command).replaceAll('"s1"', '"s2"')) as CommandInput;
  const reroof: CommandInput = {
    type: 'record-facts',
    reason: 'told',
    facts: ['s1', 's2'].flatMap((on) => [
      { on, fact: 'reroof', value: true, how: 'measured' } as const,
      { on, fact: 'old-roof-left', value: 'none', how: 'measured' } as const,
    ]),
  };
  const north: CommandInput = {
    type: 'add-surface',
    id: 's2',
    building: 'b1',
    name: 'North',
    kind: 'roof',
  };
  const own = {
    ...HOUSE.facts,
    facts: (HOUSE.facts as Extract<CommandInput, { type: 'record-facts' }>).facts.filter(
      ({ on }) => on === 's1',
    ),
  } as CommandInput;
  const provisional = { ...HOUSE.substrate, provisional: true } as CommandInput;
  const steps = [HOUSE.style, HOUSE.coating, HOUSE.hazards, provisional, HOUSE.gauge];
  const laid = [HOUSE.open, north, HOUSE.facts, of(own), reroof, ...steps, ...steps.map(of)].reduce(
    playReading,
    story(),
  );
  const bare = laid
    .play(
      { type: 'record-tear-off', surface: 's1', finding: 'different', words: 'spaced boards' },
      ['crew-lead'],
    )
    .play(
      { type: 'record-tear-off', surface: 's2', finding: 'as-assumed', words: 'plywood, dry' },
      ['crew-lead'],
    );
  expect(
    jobView(bare.job).surfaces.map(({ name, on_hold, stages }) => ({
      name,
      on_hold,
      substrate: stages.substrate.status,
    })),
  ).toEqual([
    { name: 'South', on_hold: true, substrate: 'needs-recheck' },
    { name: 'North', on_hold: false, substrate: 'confirmed' },
  ]);
});

test('a weathertightness document is promised and its warrantor has not approved: nothing is ordered', () => {
  const told = ready().play({
    type: 'record-facts',
    reason: 'owner asks',
    facts: [
      {
        on: null,
        fact: 'promised-documents',
        value: ['paint', 'weathertightness'],
        how: 'document',
        source: 'job file',
      },
      {
        on: null,
        fact: 'terms-on-file',
        value: ['paint', 'weathertightness'],
        how: 'document',
        source: 'job file',
      },
      {
        on: null,
        fact: 'weathertightness-approved',
        value: false,
        how: 'document',
        source: 'job file',
      },
    ],
  });
  expect(told.refusals(ORDER)).toEqual(['WARR-02']);
});
