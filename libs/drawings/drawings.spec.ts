// Each drawing says in words and in its table what its picture shows, prints without a page's colors,
// carries no script, and takes hostile words as words.

import { describe, expect, test } from '@jest/globals';
import {
  chartDifference,
  cutList,
  feetInches,
  forPrint,
  gaugeComparison,
  loadAgainstSpan,
  longestSpan,
  planeDrawing,
  timeline,
  zonePlan,
  type Drawing,
  type GaugeLine,
  type ZonePlanFacts,
} from './index.js';

const square = (left: number, low: number, right: number, high: number) =>
  [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ] as const;

const PLAN: ZonePlanFacts = {
  title: 'Wind zones <of> "the" barn & shed',
  pieces: [
    { part: 'roof', zone: '1', polygon: square(0, 4, 60, 36) },
    { part: 'roof', zone: '2', polygon: square(0, 0, 60, 4), width_ft: 4 },
    { part: 'roof', zone: '2', polygon: square(0, 36, 60, 40), width_ft: 4 },
  ],
  pressures: [
    { part: 'roof', zone: '1', inward_psf: '16.0', outward_psf: '-30.0' },
    { part: 'roof', zone: '2', inward_psf: '16.0', outward_psf: '-41.5' },
  ],
  basis: 'strength level',
  source: 'letter of the building department',
};

const rows = (pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([span_in, load_psf]) => ({ span_in, load_psf }));
const GAUGES: readonly GaugeLine[] = [
  {
    gauge: '24 gauge (0.0236 in)',
    points: rows([
      [24, 150],
      [36, 70],
      [48, 40],
    ]),
  },
  {
    gauge: '26 gauge (0.0187 in)',
    points: rows([
      [24, 110],
      [36, 50],
      [48, 28],
    ]),
  },
];
const SPAN = {
  title: 'Uplift against span',
  direction: 'uplift',
  gauges: GAUGES,
  demand_psf: 35,
  interpolation: false,
  chosen: { gauge: '26 gauge (0.0187 in)', span_in: 36 },
  source: 'chart C-12',
} as const;

const COMPARED = {
  title: 'Uplift: calculation against chart',
  direction: 'uplift',
  gauges: [
    {
      gauge: '24 gauge (0.0239 in, SS 50)',
      points: [
        {
          span_in: 36,
          chart_psf: 100,
          calculated_psf: 90,
          difference: -10,
          limit_state: 'bending',
        },
        { span_in: 48, chart_psf: 50, calculated_psf: 52, difference: 4, limit_state: 'shear' },
      ],
    },
    {
      gauge: '26 gauge (0.0179 in, SS 80)',
      points: [
        { span_in: 36, chart_psf: 80, calculated_psf: 80, difference: 0, limit_state: 'bending' },
      ],
    },
  ],
} as const;

const OPTIONS = [
  {
    name: '24 gauge (0.0236 in)',
    chosen: true,
    outcome: 'chosen',
    governs: 'zone 2',
    utilization: '0.8280',
    weight: '1.234 psf',
    price_difference: 'the choice',
  },
  {
    name: '26 gauge (0.0187 in)',
    chosen: false,
    outcome: 'ruled out',
    governs: 'zone 2',
    utilization: '1.8104',
    weight: '0.934 psf',
    price_difference: '$ 65.00 less',
  },
  {
    name: '22 gauge (0.0296 in)',
    chosen: false,
    outcome: 'no test',
    governs: null,
    utilization: null,
    weight: '1.547 psf',
    price_difference: 'no price',
  },
] as const;

const DECISIONS = [
  { at: '2026-02-20T09:05:00Z', words: 'Style: ribbed', by: 'office', standing: 'stands' },
  {
    at: '2026-03-12T09:05:00Z',
    words: 'Gauge: 26',
    by: 'project manager',
    standing: 'needs re-check',
  },
];

const STRIPS = [
  { mark: 'A', polygon: square(0, 0, 3, 18), length_in: 218.5 },
  { mark: 'A', polygon: square(3, 0, 6, 18), length_in: 218.5 },
  { mark: 'B', polygon: square(6, 0, 8, 10), length_in: 122 },
];

const DRAWINGS: Readonly<Record<string, Drawing>> = {
  zonePlan: zonePlan(PLAN),
  loadAgainstSpan: loadAgainstSpan(SPAN),
  chartDifference: chartDifference(COMPARED)!,
  gaugeComparison: gaugeComparison({ title: 'Gauges compared', options: OPTIONS }),
  timeline: timeline({ title: 'Decisions', decisions: DECISIONS, as_of: '2026-03-01T00:00:00Z' }),
  cutList: cutList({
    title: 'Cut list',
    outline: square(0, 0, 8, 18),
    openings: [{ name: 'skylight', polygon: square(1, 5, 3, 8) }],
    strips: STRIPS,
  }),
};

describe.each(Object.entries(DRAWINGS))('%s', (_name, drawing) => {
  test('has title, one sentence, and a table whose rows fit its columns', () => {
    expect(drawing.title).not.toBe('');
    expect(drawing.finding).toMatch(/^[A-Z0-9].*\.$/);
    expect(drawing.table.rows.length).toBeGreaterThan(0);
    for (const row of drawing.table.rows) expect(row).toHaveLength(drawing.table.columns.length);
  });

  test('names itself inside the picture, without script, id or link', () => {
    expect(drawing.svg).toContain('<title>');
    expect(drawing.svg).toContain('<desc>');
    expect(drawing.svg).not.toMatch(/<script|\son\w+=|\sid=|href|<style|NaN|undefined|Infinity/);
  });

  test('prints in black and white: no variable, every color a gray', () => {
    const printed = forPrint(drawing.svg);
    expect(printed).not.toMatch(/var\(|currentColor/);
    for (const [, r, g, b] of printed.matchAll(/#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})\b/g))
      expect([g, b]).toEqual([r, r]);
  });
});

test('words from people are text, whatever they hold', () => {
  expect(DRAWINGS['zonePlan']!.svg).toContain(
    '<title>Wind zones &lt;of&gt; &quot;the&quot; barn &amp; shed</title>',
  );
});

test('a zone without pressures is not drawn', () => {
  const pieces = [...PLAN.pieces, { part: 'roof', zone: '3', polygon: square(0, 0, 4, 4) }];
  expect(() => zonePlan({ ...PLAN, pieces })).toThrow(
    'zone 3 (roof) is drawn but has no pressures',
  );
});

test('the plan is to scale: both directions share one', () => {
  const outline = /d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/
    .exec(DRAWINGS['zonePlan']!.svg)!
    .slice(1)
    .map(Number);
  const [x1, y1, x2, , , y3] = outline as [number, number, number, number, number, number];
  expect((x2 - x1) / 60).toBeCloseTo((y1 - y3) / 32, 2);
});

test('the longest span: the last row that bears the demand, or the crossing where the source permits', () => {
  expect(longestSpan(GAUGES[0]!, 35, false)).toBe(48);
  expect(longestSpan(GAUGES[1]!, 35, false)).toBe(36);
  // 36 + 12 x (50 - 35) / (50 - 28) = 44.18, down to 44.1: at 44.2 the line gives 34.97.
  expect(longestSpan(GAUGES[1]!, 35, true)).toBe(44.1);
  expect(longestSpan(GAUGES[1]!, 120, true)).toBeNull();
});

test('a choice that no row covers is refused, not drawn', () => {
  expect(() => loadAgainstSpan({ ...SPAN, chosen: { ...SPAN.chosen, span_in: 54 } })).toThrow(
    'no row gives 26 gauge',
  );
});

test('the chart is the level line; the finding names the farthest on each side', () => {
  const { finding, table } = DRAWINGS['chartDifference']!;
  expect(finding).toBe(
    'The calculated uplift load is up to 10 % (24 gauge at 36 in) under the chart, ' +
      'and up to 4 % (24 gauge at 48 in) over it.',
  );
  expect(table.rows.map((row) => row[5])).toEqual(['calculated', 'chart', 'neither']);
  const [{ gauge, points }] = COMPARED.gauges;
  const over = chartDifference({ ...COMPARED, gauges: [{ gauge, points: points.slice(1) }] });
  expect(over?.finding).toBe(
    'The calculated uplift load is up to 4 % (24 gauge at 48 in) over the chart.',
  );
  expect(chartDifference({ ...COMPARED, gauges: [{ gauge, points: [] }] })).toBeUndefined();
});

test('the comparison says what became of each option', () => {
  expect(DRAWINGS['gaugeComparison']!.finding).toBe(
    '24 gauge is chosen, used to 0.8280 of its capacity; 26 gauge ruled out, 22 gauge no test.',
  );
});

test('what came after the moment is counted apart', () => {
  expect(DRAWINGS['timeline']!.finding).toBe(
    '1 decision recorded, as of 1 Mar 2026, 00:00 UTC, all of them standing; 1 came later.',
  );
});

test('pieces are counted by mark, longest first; one mark cannot have two lengths', () => {
  expect(DRAWINGS['cutList']!.table.rows).toEqual([
    ['A', '2', `18'-2 1/2"`],
    ['B', '1', `10'-2"`],
  ]);
  const strips = [...STRIPS, { ...STRIPS[0]!, length_in: 100 }];
  expect(() => cutList({ title: 'x', outline: square(0, 0, 8, 18), openings: [], strips })).toThrow(
    'piece A has two lengths',
  );
});

test('feet and inches to the sixteenth; never 12 inches', () => {
  expect([38, 38.25, 0, 11.99, 143.97].map(feetInches)).toEqual([
    `3'-2"`,
    `3'-2 1/4"`,
    `0'-0"`,
    `1'-0"`,
    `12'-0"`,
  ]);
  expect(() => feetInches(-1)).toThrow();
});

test('a plane of a take-off: courses apart, sides along their edges and in the table', () => {
  const ring = (list: readonly (readonly [number, number])[]) =>
    list.map(([x, y]) => [String(x), String(y)] as const);
  const piece = (mark: string, length: string, low: number, high: number) => ({
    mark,
    length_in: length,
    polygons: [
      ring([
        [0, low],
        [4, low],
        [4, high],
        [0, high],
      ]),
    ],
  });
  const drawing = planeDrawing(
    {
      name: 'front',
      outline: ring([
        [0, 0],
        [4, 0],
        [4, 30],
        [0, 30],
      ]),
      openings: [],
      sides: [
        { from: ['0', '0'], to: ['4', '0'], edge: 'eave', length_ft: '4' },
        { from: ['4', '0'], to: ['4', '30'], edge: 'rake', length_ft: '30' },
        { from: ['4', '30'], to: ['0', '30'], edge: 'none', length_ft: '4' },
        { from: ['0', '30'], to: ['0', '0'], edge: 'rake', length_ft: '30' },
      ],
      strips: [{ pieces: [piece('1a', '186', 0, 15), piece('1a', '186', 15, 30)] }],
    },
    'Cut list',
  );
  expect(drawing.finding).toBe(`2 pieces all of one length; the longest is 1A, 15'-6".`);
  expect(drawing.table.rows).toEqual([
    ['1A', '2', `15'-6"`],
    ['side: eave', '1', `4'-0"`],
    ['side: rake', '2', `30'-0"`],
  ]);
  // Each course is labelled by itself, and the side that goes on is no edge.
  expect(drawing.svg.match(/>1A 15/g)?.length).toBe(4);
  expect(drawing.svg).not.toContain('>none ');
});
