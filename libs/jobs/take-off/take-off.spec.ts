// The take-off as part of the record: hand-worked numbers, every fault at its place, what makes it
// stale, and an order whose pieces are its pieces.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { CommandInput } from '../contract/commands.js';
import type { TakeOffSheet } from '../contract/take-off.js';
import type { Story } from '../given.js';
import { ORDER, ready, v } from '../after-order/order-files.js';
import { BARN, HOUSE, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { HOUSE_TAKE_OFF, type TakeOffInput } from './take-off-files.js';
import { takeOffSheet } from './view.js';

const house = playUpTo(HOUSE, 'gauge');
const sheetOf = ({ job }: Story): TakeOffSheet => takeOffSheet(job, 's1', SAMPLE_CATALOGUE)!;
const shape = (rest: object): TakeOffInput =>
  ({ ...HOUSE_TAKE_OFF, drawn: { ...HOUSE_TAKE_OFF.drawn, ...rest } }) as TakeOffInput;

describe('the house, worked by hand', () => {
  const { result, lines } = sheetOf(house.play(HOUSE_TAKE_OFF));

  test('two planes of 42 ft by 16 ft of run at 6 in 12', () => {
    const slope = 16 * Math.sqrt(1.25);
    expect(Number(result.totals.area_ft2)).toBeCloseTo(2 * 42 * slope, 2);
    // 31.5 strips are 32; 17.8885 ft and an inch at the eave are 215.66 in, in whole inches 216.
    expect(result.pieces).toEqual([{ mark: '1a', length_in: '216', count: 64 }]);
    expect(result.totals.bought_ft2).toBe(String((64 * 18 * 16) / 12));
  });

  test('trims: each edge in full stock lengths of 126 in less 2 in of lap, and one rest', () => {
    // Eave 504 in: 4 x 124 leave 8; two eaves. Rake 214.66: 124 leave 90.69; four of them, none two
    // in one stock. Ridge 504 in once.
    expect(result.trims.map(({ name, stocks }) => [name, stocks])).toEqual([
      ['Eave trim', 9],
      ['Rake trim', 8],
      ['Ridge cap', 5],
    ]);
    expect(result.trims[0]?.patterns).toEqual([
      { cuts_in: ['126'], times: 8 },
      { cuts_in: ['8', '8'], times: 1 },
    ]);
    expect(result.trims.every(({ proved }) => proved)).toBe(true);
  });

  test('clips at 24 in: 9 rows and one that closes, on each of 64 strips; two screws each', () => {
    expect(result.fasteners).toMatchObject({ kind: 'clip', count: 640, screws: 1280 });
    expect(result.spares).toEqual({ panels: 1, fasteners: 32, touch_up: 2 });
  });

  test('closures on both sides of the ridge, bundles under weight and count where they land', () => {
    expect(result.closures).toEqual([{ name: 'Ridge closure, 16 in', length_ft: '84', count: 63 }]);
    expect(
      result.bundles.map(({ name, plane, place, count }) => [name, plane, place, count]),
    ).toEqual([
      ['B1', 'front', 'driveway', 20],
      ['B2', 'front', 'driveway', 12],
      ['B3', 'back', 'back yard, on blocking', 20],
      ['B4', 'back', 'back yard, on blocking', 12],
    ]);
  });

  test('lines with weight and the price per square of the catalogue edition', () => {
    const row = SAMPLE_CATALOGUE.made.find(
      (each) => each.profile === 'seam-16' && each.thickness.v === '0.0236',
    )!;
    expect(lines[0]).toMatchObject({ id: '1a', what: 'panel', count: 64, length: v('216', 'in') });
    expect(lines[0]?.price?.v).toBe((15.36 * Number(row.price.v)).toFixed(2));
    expect(Number(lines[0]?.weight?.v)).toBeCloseTo(1536 * Number(result.panel.weight_psf), 1);
    expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
  });
});

describe('on open framing', () => {
  const barn = playUpTo(BARN, 'gauge');
  const roof = {
    ...HOUSE_TAKE_OFF,
    fastening: {},
    bundles: undefined,
    closures: [],
    sealants: [],
    underlayments: [],
  };

  test('screws stand at the supports, the closest measured spacing counts, across as their spacing asks', () => {
    const { result } = sheetOf(barn.play(JSON.parse(JSON.stringify(roof)) as CommandInput));
    // Screws 9 in apart across 36 in are 4 in a row. The zones are not laid, so zone 3's supports at
    // 24 in count: 214.66 in have 9 rows and one that closes.
    expect(result.fasteners.zones).toEqual([
      { zone: '3', spacing_in: '24', per_row: 4, rows: 280, count: 1120 },
    ]);
    expect(result.notes.join(' ')).toContain('the closest spacing counts: front, back');
  });
});

describe('what cannot be counted', () => {
  const words = (command: unknown): readonly string[] => {
    const made = house.decision(command as CommandInput);
    return made.ok ? [] : made.refusals.map(({ pointer, words: each }) => `${pointer} ${each}`);
  };

  test('names every fault at the place where it was filled in', () => {
    const found = words({
      ...shape({
        openings: [
          { plane: 'front', name: 'chimney', x_ft: '40', y_ft: '1', width_ft: '4', height_ft: '3' },
        ],
      }),
      trims: [
        { name: 'Eave trim', edges: ['eave'], stock_in: '0', lap_in: '2', weight_plf: '0.75' },
      ],
      underlayments: [],
    });
    expect(found).toEqual([expect.stringMatching(/^\/trims\/0\/stock_in .*stock/)]);
    expect(
      words(
        shape({
          openings: [
            {
              plane: 'front',
              name: 'chimney',
              x_ft: '40',
              y_ft: '1',
              width_ft: '4',
              height_ft: '3',
            },
          ],
        }),
      ),
    ).toEqual([expect.stringMatching(/^\/drawn\/openings\/0 .*chimney must lie inside front/)]);
  });

  test('a plane that is not there, a piece over the longest, too heavy a bundle', () => {
    expect(
      words(
        shape({
          openings: [
            { plane: 'west', name: 'x', x_ft: '1', y_ft: '1', width_ft: '1', height_ft: '1' },
          ],
        }),
      ),
    ).toEqual([
      '/drawn/openings/0/plane Openings 1 plane: x is on west; the planes are front, back.',
    ]);
    expect(words(shape({ across_ft: '90' })).join(' ')).toMatch(
      /needs pieces to .*the longest is 540 in/,
    );
    expect(
      words({ ...HOUSE_TAKE_OFF, bundles: { ...HOUSE_TAKE_OFF.bundles, most_lb: '20' } }).join(' '),
    ).toMatch(/weighs 29.6 lb/);
  });

  test('more strips than one take-off holds', () => {
    expect(
      words(shape({ along_ft: '999', across_ft: '900', shape: 'gable', rise_per_12: '0.1' })),
    ).not.toEqual([]);
    const planes = Array.from({ length: 5 }, (_, i) => ({
      name: `p${i}`,
      lies: 'wall',
      measured: 'on-slope',
      start: 'left',
      outline: [
        [0, 0],
        [900, 0],
        [900, 10],
        [0, 10],
      ].map(([x, y]) => ({ x_ft: String(x), y_ft: String(y), edge: 'none' })),
    }));
    expect(words({ ...HOUSE_TAKE_OFF, drawn: { by: 'planes', planes } }).join(' ')).toMatch(
      /would be 3375 strips/,
    );
  });

  test('before the gauge is confirmed', () => {
    expect(playUpTo(HOUSE, 'substrate').refusals(HOUSE_TAKE_OFF)).toEqual(['MOVE-01']);
  });
});

test('whatever numbers are typed, it is counted or refused at a place, and never falls over', () => {
  const text = fc.oneof(
    fc.constantFrom('0', '-1', '0.000001', '999999999', '-999999999.999999', '1', '12', '40'),
    fc.integer({ min: -20_000, max: 200_000 }).map((n) => String(n / 100)),
  );
  const wild = fc.record({
    along_ft: text,
    across_ft: text,
    overhang_ft: text,
    rise_per_12: text,
    x_ft: text,
    width_ft: text,
    round_up_in: text,
    add_in: text,
    stock_in: text,
    lap_in: text,
    weight_plf: text,
    roll_ft: text,
    most_lb: text,
    shape: fc.constantFrom('shed', 'gable', 'hip'),
    plane: fc.constantFrom('front', 'roof', 'left'),
  });
  let counted = 0;
  fc.assert(
    fc.property(wild, (w) => {
      const made = house.decision({
        ...HOUSE_TAKE_OFF,
        drawn: {
          ...HOUSE_TAKE_OFF.drawn,
          shape: w.shape,
          along_ft: w.along_ft,
          across_ft: w.across_ft,
          overhang_ft: w.overhang_ft,
          rise_per_12: w.rise_per_12,
          openings: [
            {
              plane: w.plane,
              name: 'o',
              x_ft: w.x_ft,
              y_ft: '1',
              width_ft: w.width_ft,
              height_ft: '1',
            },
          ],
        },
        panel: {
          round_up_in: w.round_up_in,
          end_lap_in: '6',
          ends: [{ edge: 'eave', add_in: w.add_in }],
        },
        trims: [
          {
            name: 't',
            edges: ['eave', 'rake'],
            stock_in: w.stock_in,
            lap_in: w.lap_in,
            weight_plf: w.weight_plf,
            screw_spacing_in: '12',
          },
        ],
        sealants: [
          { name: 's', edges: ['eave'], end_laps: true, side_laps: true, roll_ft: w.roll_ft },
        ],
        bundles: undefined,
      } as unknown as CommandInput);
      if (made.ok) counted += 1;
      else
        for (const { pointer, words } of made.refusals)
          expect([pointer, words]).toEqual([
            expect.stringMatching(/^\//),
            expect.stringMatching(/\w+.*\.$/),
          ]);
    }),
    { numRuns: 300 },
  );
  expect(counted).toBe(0);
});

test('random dimensions within reach are counted', () => {
  const within = fc.record({
    along_ft: fc.integer({ min: 1, max: 800 }),
    across_ft: fc.integer({ min: 1, max: 60 }),
    rise: fc.integer({ min: 1, max: 240 }),
    lap: fc.integer({ min: 0, max: 24 }),
    stock: fc.integer({ min: 48, max: 600 }),
  });
  fc.assert(
    fc.property(within, ({ along_ft, across_ft, rise, lap, stock }) => {
      const { bundles: _, ...rest } = HOUSE_TAKE_OFF;
      const made = house.decision({
        ...rest,
        drawn: {
          ...HOUSE_TAKE_OFF.drawn,
          along_ft: String(along_ft),
          across_ft: String(across_ft),
          rise_per_12: String(rise / 2),
        },
        panel: { round_up_in: '0.125', end_lap_in: '6', ends: [] },
        trims: [
          {
            name: 't',
            edges: ['eave', 'rake', 'ridge'],
            stock_in: String(stock),
            lap_in: String(lap),
            weight_plf: '1',
          },
        ],
      } as CommandInput);
      expect(made.ok ? [] : made.refusals.map(({ words }) => words)).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

describe('a take-off counts while what it was made from stands', () => {
  const taken = house.play(HOUSE_TAKE_OFF);
  const slope = (rise: string): CommandInput => ({
    type: 'record-facts',
    reason: 'measured again',
    facts: [{ on: 's1', fact: 'slope', value: v(rise, 'per-12'), how: 'measured' }],
  });

  test('a closer spacing, another slope; setting it back revives nothing', () => {
    const closer = taken.play({
      ...HOUSE.gauge,
      reason: 'edge zones',
      attachment: { fastener: 'clip-s', zones: [{ zone: 'all', spacing: v('18', 'in') }] },
    } as CommandInput);
    expect(sheetOf(closer)).toMatchObject({
      stands: 'stale',
      stale_because: ['the attachment changed from 24 in to 18 in'],
    });
    const back = taken.play(slope('7')).play(slope('6'));
    expect(sheetOf(back).stands).toBe('stale');
    expect(sheetOf(back).stale_because[0]).toMatch(/changed from 6 in 12 to 7 in 12$/);
  });

  test('another color of the same sheet touches nothing; a new take-off counts again', () => {
    const colored = taken.play({
      ...HOUSE.coating,
      color: 'sea mist',
      reason: 'owner',
    } as CommandInput);
    expect(sheetOf(colored).stands).toBe('current');
    const closer = taken.play({
      ...HOUSE.gauge,
      reason: 'edge zones',
      attachment: { fastener: 'clip-s', zones: [{ zone: 'all', spacing: v('18', 'in') }] },
    } as CommandInput);
    expect(sheetOf(closer.play(HOUSE_TAKE_OFF))).toMatchObject({
      number: 2,
      stands: 'current',
      stale_because: [],
    });
  });
});

describe('the order of a take-off', () => {
  const drawn = ready().play(HOUSE_TAKE_OFF);
  const from = (sheet: TakeOffSheet, rest: object = {}): CommandInput =>
    ({
      ...ORDER,
      lines: sheet.lines,
      lengths: [{ surface: 's1', by: 'take-off', standing: 'signed', signed_by: 'crew lead' }],
      ...rest,
    }) as CommandInput;

  test('keeps which take-off it is', () => {
    const ordered = drawn.play(from(sheetOf(drawn)));
    expect(ordered.job.after.orders['o1']?.revisions[0]?.take_offs).toMatchObject([
      { surface: 's1', number: 1, measured_from: 'Roof plan, sheet A2 (invented)' },
    ]);
  });

  test('is refused without one, with other pieces, and once it is stale', () => {
    expect(ready().refusals(from(sheetOf(drawn)))).toContain('MOVE-21');
    const lines = sheetOf(drawn).lines.map((line) =>
      line.what === 'panel' ? { ...line, count: 63 } : line,
    );
    const fewer = drawn.decision(from(sheetOf(drawn), { lines }));
    expect(fewer.ok ? [] : fewer.refusals.map(({ words }) => words)).toEqual([
      'South: not the pieces of take-off 1. 216 in: 64 taken off, 63 ordered. Order pieces beyond it as spares, or say that the lengths were entered.',
    ]);
    const changed = drawn.play({
      ...HOUSE.gauge,
      reason: 'edge zones',
      attachment: { fastener: 'clip-s', zones: [{ zone: 'all', spacing: v('18', 'in') }] },
    } as CommandInput);
    const refused = changed.decision(from(sheetOf(drawn)));
    expect(refused.ok ? [] : refused.refusals.map(({ words }) => words)).toContain(
      'South: take-off 1 no longer counts: the attachment changed from 24 in to 18 in. Record it again.',
    );
  });

  test('counts in the order are those of the take-off, for any shape', () => {
    const papers = ready();
    const size = (least: number, most: number) =>
      fc.integer({ min: least * 4, max: most * 4 }).map((n) => String(n / 4));
    const arbitrary = fc.record({
      shape: fc.constantFrom('shed', 'gable', 'hip'),
      along_ft: size(30, 60),
      across_ft: size(10, 30),
      overhang_ft: size(0, 2),
      rise_per_12: size(3, 9),
      start: fc.constantFrom('left', 'right', 'centered'),
    });
    fc.assert(
      fc.property(arbitrary, (given) => {
        const { bundles: _, ...plain } = shape({ ...given, openings: [] });
        const story = papers.play({
          ...plain,
          panel: { ...plain.panel, end_lap_in: '6' },
        } as TakeOffInput);
        const sheet = sheetOf(story);
        const { job } = story.play(from(sheet));
        const ordered = job.after.orders['o1']!.revisions[0]!.lines.filter(
          ({ what }) => what === 'panel',
        );
        expect(
          ordered.map(({ id, count, length }) => ({ mark: id, length_in: length?.v, count })),
        ).toEqual(sheet.result.pieces);
        const drawnStrips = sheet.result.planes.flatMap(({ strips }) =>
          strips.flatMap(({ pieces }) => pieces.map(({ mark }) => mark)),
        );
        for (const { mark, count } of sheet.result.pieces)
          expect(drawnStrips.filter((each) => each === mark)).toHaveLength(count);
        const covered = sheet.result.planes.flatMap(({ strips }) =>
          strips.flatMap(({ pieces }) => pieces.flatMap(({ polygons }) => polygons.map(areaOf))),
        );
        const area = Number(sheet.result.totals.area_ft2);
        expect(Math.abs(covered.reduce((sum, each) => sum + each, 0) - area)).toBeLessThan(
          0.05 + area * 1e-4,
        );
      }),
      { numRuns: 40 },
    );
  });
});

const areaOf = (points: readonly (readonly [string, string])[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [x2, y2] = points[(i + 1) % points.length]!;
      return sum + Number(x) * Number(y2) - Number(x2) * Number(y);
    }, 0) / 2,
  );
