// Roofs worked by hand, with the arithmetic; and what holds for any plane.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { Outcome } from '../check.js';
import { builtRoof, rectangularOpening, type BuiltRoof } from './built-roof.js';
import { STARTS, type PlaneRequest } from './request.js';
import {
  ask,
  corners,
  freePlane,
  PANEL,
  randomPlane,
  requestOf,
} from '../../../tests/standards/random-planes.js';
import { takeOff, type TakeOff } from './take-off.js';

const got = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};
const roof = (dimensions: Partial<BuiltRoof>): readonly PlaneRequest[] =>
  got(
    builtRoof({
      shape: 'gable',
      along_ft: 40,
      across_ft: 24,
      overhang_ft: 0,
      rise_per_12: 6,
      start: 'left',
      ...dimensions,
    }),
  );
const edge = ({ edges }: TakeOff, kind: string): number =>
  edges.find((each) => each.edge === kind)?.length_ft ?? 0;
const near = (p: number, q: number, by: number): boolean => Math.abs(p - q) <= by;

describe('roofs worked by hand', () => {
  test('shed, 30 by 20 ft in plan, 3 in 12', () => {
    // F = sqrt(1 + (3/12)^2) = sqrt(1.0625) = 1.0307764; slope 20 F = 20.615528 ft = 247.38634 in.
    // 30 ft / 3 ft = 10 strips; each piece 247.38634 + 1 at the eave = 248.38634, ordered 248.5 in.
    // Area 30 x 20.615528 = 618.46584 ft2; bought 10 x 3 x 248.5 / 12 = 621.25; waste 2.78416.
    const panel = { ...PANEL, round_up_in: 0.25, ends_in: { eave: 1 } };
    const taken = got(
      takeOff(ask(roof({ shape: 'shed', along_ft: 30, across_ft: 20, rise_per_12: 3 }), { panel })),
    );
    expect(taken.planes[0]!.pieces).toEqual([{ length_in: 248.5, count: 10 }]);
    expect(taken.totals.area_ft2).toBeCloseTo(618.46584, 5);
    expect(taken.totals.bought_ft2).toBeCloseTo(621.25, 9);
    expect(taken.totals.waste_ft2).toBeCloseTo(2.78416, 5);
    expect([edge(taken, 'eave'), edge(taken, 'peak')]).toEqual([30, 30]);
    expect(edge(taken, 'rake')).toBeCloseTo(2 * 20.615528, 5);
  });

  test('gable, walls 40 by 24 ft, 1 ft overhang, 6 in 12: panels and trims', () => {
    // F = sqrt(1.25) = 1.1180340; run 24/2 + 1 = 13 ft; slope 13 F = 14.534442 ft = 174.41330 in.
    // Eave 42 ft = 504 in; 504 / 16 = 31.5: 32 strips a side. Eave + 1, ridge - 1: 174.41330,
    // ordered in eighths: 174.5. Bought 64 x (16/12) x (174.5/12) = 1240.8889 ft2.
    const panel = { ...PANEL, coverage_in: 16, ends_in: { eave: 1, ridge: -1 } };
    const trim = (name: string, edges: readonly ['ridge' | 'eave' | 'rake']) => ({
      name,
      edges,
      stock_in: 126,
      lap_in: 4,
      weight_plf: 0.5,
      screw_spacing_in: 24,
    });
    const trims = [trim('ridge cap', ['ridge']), trim('drip', ['eave']), trim('rake', ['rake'])];
    const taken = got(takeOff(ask(roof({ overhang_ft: 1 }), { panel, trims })));
    expect(taken.planes.map(({ pieces }) => pieces)).toEqual([
      [{ length_in: 174.5, count: 32 }],
      [{ length_in: 174.5, count: 32 }],
    ]);
    expect(taken.totals.bought_ft2).toBeCloseTo(1240.8889, 4);
    // Both planes share one ridge of 42 ft; four rakes of 14.534442 ft.
    expect([edge(taken, 'ridge'), edge(taken, 'eave')]).toEqual([42, 84]);
    expect(edge(taken, 'rake')).toBeCloseTo(58.137768, 5);
    // 504 in of 126 in stock lapped 4: full ones cover 122 each, ceil((504 - 126) / 122) = 4; rest
    // 504 - 488 = 16 in. Ridge: 4 + 1. Eaves: 8 full, and 16 + 16 from one: 9.
    // Rake 174.4375 in (sixteenths): 1 full, rest 52.4375; two fit in 126: 4 full + 2 = 6.
    expect(taken.trims.map(({ name, stocks }) => [name, stocks])).toEqual([
      ['ridge cap', 5],
      ['drip', 9],
      ['rake', 6],
    ]);
    expect(taken.trims[1]!.patterns).toEqual([
      { cuts_in: [126], times: 8 },
      { cuts_in: [16, 16], times: 1 },
    ]);
    expect(taken.trims[2]!.patterns).toEqual([
      { cuts_in: [126], times: 4 },
      { cuts_in: [52.4375, 52.4375], times: 2 },
    ]);
    // Offcut of the eaves' last stock: 126 - 32 = 94 in = 7.8333 ft. Screws 504 / 24 = 21, + 1, twice.
    expect(taken.trims[1]!.offcut_ft).toBeCloseTo(94 / 12, 9);
    expect(taken.trims[1]!.screws).toBe(44);
    expect(taken.trims.every(({ proved }) => proved)).toBe(true);
  });

  test('hip, 48 by 28 ft, 8 in 12, with a chimney 3 by 2 ft in plan', () => {
    // F = sqrt(1 + 4/9) = 1.2018504. Plan 48 x 28 = 1344, less chimney 6: 1338 F = 1608.0758 ft2.
    const [front, ...others] = roof({ shape: 'hip', along_ft: 48, across_ft: 28, rise_per_12: 8 });
    const chimney = rectangularOpening('chimney', { x_ft: 22, y_ft: 5, width_ft: 3, height_ft: 2 });
    const planes = [{ ...front!, openings: [chimney] }, ...others];
    const taken = got(takeOff(ask(planes, { panel: { ...PANEL, coverage_in: 24 } })));
    expect(taken.totals.area_ft2).toBeCloseTo(1338 * Math.sqrt(13 / 9), 9);
    expect(taken.totals.area_ft2).toBeCloseTo(1608.0758, 3);
    // Hip: 14 ft in plan both ways, rise 14 x 8/12 = 9.3333: sqrt(196 + 196 + 87.1111) = 21.88861.
    expect(edge(taken, 'hip')).toBeCloseTo(4 * 21.88861, 4);
    expect([edge(taken, 'ridge'), edge(taken, 'eave')]).toEqual([20, 152]);
    // Front: strips of 2 ft; the longest edges are 2, 4, 6, 8, 10, 12 ft of run at both hips and 14
    // between (12 strips). The chimney from 22 to 25 ft cuts strip 22-24 wholly: 5 F and 7 F; strip
    // 24-26 only in part: one piece, notched. In inches, F x 12 = 14.422205 a foot, in eighths:
    // 14: 201.9109 -> 202; 12: 173.0665 -> 173.125; 10: 144.2220 -> 144.25; 8: 115.3776 -> 115.5;
    // 7: 100.9554 -> 101; 6: 86.5332 -> 86.625; 5: 72.1110 -> 72.125; 4: 57.6888 -> 57.75;
    // 2: 28.8444 -> 28.875.
    expect(taken.planes[0]!.pieces.map(({ length_in, count }) => [length_in, count])).toEqual([
      [202, 11],
      [173.125, 2],
      [144.25, 2],
      [115.5, 2],
      [101, 1],
      [86.625, 2],
      [72.125, 1],
      [57.75, 2],
      [28.875, 2],
    ]);
    // Ends: 14 strips, each of 2 to 14 ft twice.
    const ends = [202, 173.125, 144.25, 115.5, 86.625, 57.75, 28.875].map((length_in) => ({
      length_in,
      count: 2,
    }));
    expect(taken.planes[1]!.pieces).toEqual(ends);
    expect(taken.planes[3]!.pieces).toEqual(ends);
  });

  test('L with two valleys: main roof 60 by 30 ft, wing 20 ft wide and 12 ft out, 6 in 12', () => {
    // Valley in plan from (20, 0) to (30, 10): run 10 sqrt 2, rise 5: sqrt(200 + 25) = 15 ft.
    const front = freePlane(
      corners([
        [0, 0, 'eave'],
        [20, 0, 'valley', 'left valley'],
        [30, 10, 'valley', 'right valley'],
        [40, 0, 'eave'],
        [60, 0, 'rake'],
        [60, 15, 'ridge', 'main'],
        [0, 15, 'rake'],
      ]),
      { name: 'front', measured: 'in-plan' },
    );
    const back = freePlane(
      corners([
        [0, 0, 'eave'],
        [60, 0, 'rake'],
        [60, 15, 'ridge', 'main'],
        [0, 15, 'rake'],
      ]),
      { name: 'back', measured: 'in-plan' },
    );
    const left = freePlane(
      corners([
        [0, 0, 'eave'],
        [12, 0, 'rake'],
        [12, 10, 'ridge', 'wing'],
        [-10, 10, 'valley', 'left valley'],
      ]),
      { name: 'wing left', measured: 'in-plan' },
    );
    const right = freePlane(
      corners([
        [0, 0, 'eave'],
        [12, 0, 'valley', 'right valley'],
        [22, 10, 'ridge', 'wing'],
        [0, 10, 'rake'],
      ]),
      { name: 'wing right', measured: 'in-plan' },
    );
    const taken = got(takeOff(ask([front, back, left, right])));
    expect(edge(taken, 'valley')).toBeCloseTo(30, 9);
    expect(edge(taken, 'ridge')).toBeCloseTo(60 + 22, 9);
    // In plan 60 x 30 + 20 x 12 = 2040; on the slope 2040 sqrt(1.25) = 2280.7893 ft2. Front: 60 x 15
    // less the triangle 20 x 10 / 2; wing planes (12 + 22) / 2 x 10 each.
    const F = Math.sqrt(1.25);
    expect(
      taken.planes.map(({ area_ft2 }) => area_ft2 / F).map((a) => Math.round(a * 1e6) / 1e6),
    ).toEqual([800, 900, 170, 170]);
    expect(taken.totals.area_ft2).toBeCloseTo(2280.7893, 4);
    // Front in 3 ft strips: the longest edge is 15 ft of run in 14 of 20; from the valley up 15 - 1,
    // 15 - 4, 15 - 7 at both sides of (30, 10), whose strips 27-30 and 30-33 start at 7.
    // x 13.416408 in a foot: 15: 201.2461 -> 201.25; 14: 187.8297 -> 187.875; 11: 147.5805 ->
    // 147.625; 8: 107.3313 -> 107.375.
    expect(taken.planes[0]!.pieces.map(({ length_in, count }) => [length_in, count])).toEqual([
      [201.25, 14],
      [187.875, 2],
      [147.625, 2],
      [107.375, 2],
    ]);
  });

  test('pieces over the longest one are lapped in lines across the plane', () => {
    // 100 ft up the slope, longest 40, lap 6 in: ceil((100 - 0.5) / 39.5) = 3 pieces of
    // (100 + 2 x 0.5) / 3 = 33.6667 ft = 404 in. Lap area: 2 laps x 4 strips x 3 ft x 0.5 ft = 12.
    const plane = freePlane(
      corners([
        [0, 0, 'eave'],
        [12, 0],
        [12, 100],
        [0, 100],
      ]),
    );
    const panel = { ...PANEL, longest_ft: 40, end_lap_in: 6 };
    const outcome = takeOff(ask([plane], { panel }));
    const { pieces, laps_ft2, cut_list, waste_ft2 } = got(outcome).planes[0]!;
    expect(pieces).toEqual([{ length_in: 404, count: 12 }]);
    expect([laps_ft2, waste_ft2]).toEqual([12, 12]);
    expect(cut_list.laps_ft.map((y) => Math.round(y * 1e6) / 1e6)).toEqual([33.166667, 66.333333]);
    expect(outcome.ok && outcome.notes.join(' ')).toContain('over a support');
    expect(takeOff(ask([plane], { panel: { ...PANEL, longest_ft: 40 } }))).toMatchObject({
      ok: false,
      faults: [{ pointer: '/planes/0', message: expect.stringContaining('takes no end lap') }],
    });
  });

  test('closures on both planes, sealant in laps, underlayment in courses', () => {
    // Gable 40 by 24 ft, no overhang: two planes 40 x 12 F = 13.416408 ft.
    const taken = got(
      takeOff(
        ask(roof({}), {
          closures: [{ name: 'outside closure', edges: ['ridge'], length_in: 36 }],
          sealants: [
            { name: 'tape', edges: ['eave'], end_laps: true, side_laps: true, roll_ft: 50 },
          ],
          underlayments: [
            { name: 'felt', roll_width_in: 36, roll_length_ft: 72, side_lap_in: 4, end_lap_in: 6 },
            {
              name: 'ice barrier',
              roll_width_in: 36,
              roll_length_ft: 67,
              side_lap_in: 3,
              end_lap_in: 6,
              along: { edges: ['eave'], courses: 2 },
            },
          ],
        }),
      ),
    );
    // Ridge on both planes: 80 ft = 960 in / 36 = 26.67 -> 27.
    expect(taken.closures).toEqual([{ name: 'outside closure', length_ft: 80, count: 27 }]);
    // Eaves 80; 40 ft / 3 = 14 strips a plane, 13 side laps of 13.416408 on two planes: 348.8266.
    expect(taken.sealants[0]!.length_ft).toBeCloseTo(80 + 26 * 13.416408, 4);
    expect(taken.sealants[0]!.count).toBe(9);
    // Courses of 32 in: 161 / 32 = 5.03 -> 6 of 40 ft on two planes = 480; 480 / 71.5 = 6.7 -> 7.
    // Ice barrier: 2 courses of 80 ft = 160; 160 / 66.5 = 2.4 -> 3.
    expect(
      taken.underlayments.map(({ length_ft, count }) => [Math.round(length_ft * 1e6) / 1e6, count]),
    ).toEqual([
      [480, 7],
      [160, 3],
    ]);
  });

  test('bundles stay under weight and count and name their landing place', () => {
    // 14 pieces of 161 in, 3 ft wide at 1 psf: 13.416667 ft x 3 = 40.25 lb each; 200 lb hold 4.
    const bundles = {
      most_lb: 200,
      most_pieces: 10,
      landings: [
        { plane: 'front', place: 'drive' },
        { plane: 'back', place: 'yard' },
      ],
    };
    const taken = got(takeOff(ask(roof({}), { bundles })));
    expect(taken.bundles.map(({ plane, place, count }) => [plane, place, count])).toEqual([
      ...[4, 4, 4, 2].map((count) => ['front', 'drive', count]),
      ...[4, 4, 4, 2].map((count) => ['back', 'yard', count]),
    ]);
    expect(taken.bundles[0]!.weight_lb).toBeCloseTo(161, 9);
    expect(taken.totals.panels_lb).toBeCloseTo(28 * 40.25, 9);
  });

  test('entered lengths stand instead of those taken off, and say so where they cover too little', () => {
    const [front, back] = roof({});
    const planes = [
      { ...front!, entered: [{ length_in: 162, count: 14 }] },
      { ...back!, entered: [{ length_in: 160, count: 10 }] },
    ];
    const outcome = takeOff(ask(planes));
    expect(got(outcome).planes.map(({ lengths, pieces }) => [lengths, pieces])).toEqual([
      ['entered', [{ length_in: 162, count: 14 }]],
      ['entered', [{ length_in: 160, count: 10 }]],
    ]);
    expect(outcome.ok && outcome.notes).toContain(
      'The lengths entered cover less than the plane: back.',
    );
  });
});

describe('any plane', () => {
  const RUNS = { seed: 20261125, numRuns: 1000 };
  const start = fc.constantFrom(...STARTS);
  const lengths = (taken: TakeOff) => taken.planes.map(({ pieces }) => pieces);

  test('what is bought is what is covered and the waste, and never less than the plane', () => {
    fc.assert(
      fc.property(
        randomPlane,
        start,
        fc.constantFrom(12, 16, 24, 36),
        (random, from, coverage_in) => {
          const panel = {
            ...PANEL,
            coverage_in,
            longest_ft: 30,
            end_lap_in: 6,
            ends_in: { none: 0.5 },
          };
          const taken = got(takeOff(ask([requestOf(random, { start: from })], { panel })));
          const { area_ft2, bought_ft2, waste_ft2, pieces, cut_list } = taken.planes[0]!;
          const runs = cut_list.strips.flatMap((strip) => strip.runs);
          const cut = runs.reduce((sum, each) => sum + each.area_ft2, 0);
          const laid = runs.flatMap((run) => run.pieces);
          return (
            near(bought_ft2, area_ft2 + waste_ft2, 1e-6) &&
            near(cut, area_ft2, 1e-5 * area_ft2) &&
            waste_ft2 > 0 &&
            pieces.every(({ length_in }) => length_in <= 360) &&
            pieces.reduce((n, { count }) => n + count, 0) === laid.length &&
            laid.every((p) => p.length_in / 12 >= p.to_ft - p.from_ft - 1e-6) &&
            runs.every((run) =>
              run.pieces.every(
                (p, i) => i === 0 || near(run.pieces[i - 1]!.to_ft - p.from_ft, 0.5, 1e-9),
              ),
            )
          );
        },
      ),
      RUNS,
    );
  });

  test('a mirrored plane begun at the other edge takes the same pieces', () => {
    fc.assert(
      fc.property(randomPlane, start, ({ outline, openings }, from) => {
        const other = { left: 'right', right: 'left', centered: 'centered' } as const;
        const mirror = {
          outline: outline.map(([x, y]) => [-x, y] as const),
          openings: openings.map((o) => o.map(([x, y]) => [-x, y] as const)),
        };
        const coarse = { panel: { ...PANEL, round_up_in: 0.001 } };
        const one = lengths(
          got(takeOff(ask([requestOf({ outline, openings }, { start: from })], coarse))),
        );
        const two = lengths(got(takeOff(ask([requestOf(mirror, { start: other[from] })], coarse))));
        const flat = (all: typeof one): number[] =>
          all.flat().flatMap(({ length_in, count }) => Array<number>(count).fill(length_in));
        const [p, q] = [flat(one), flat(two)];
        return p.length === q.length && p.every((length, i) => near(length, q[i]!, 0.0021));
      }),
      RUNS,
    );
  });

  test('drawn in plan or on the slope, a plane is the same; steeper takes more', () => {
    fc.assert(
      fc.property(randomPlane, fc.double({ min: 0.5, max: 24, noNaN: true }), (random, rise) => {
        const long = { panel: { ...PANEL, longest_ft: 500 } };
        const F = Math.sqrt(1 + (rise / 12) ** 2);
        const stretched = {
          outline: random.outline.map(([x, y]) => [x, y * F] as const),
          openings: random.openings.map((o) => o.map(([x, y]) => [x, y * F] as const)),
        };
        const plan = got(
          takeOff(ask([requestOf(random, { measured: 'in-plan', rise_per_12: rise })], long)),
        );
        const slope = got(takeOff(ask([requestOf(stretched, { rise_per_12: rise })], long)));
        const steeper = got(
          takeOff(ask([requestOf(random, { measured: 'in-plan', rise_per_12: rise + 1 })], long)),
        );
        return (
          near(plan.totals.area_ft2, slope.totals.area_ft2, 1e-6 * plan.totals.area_ft2) &&
          near(plan.totals.bought_ft2, slope.totals.bought_ft2, 0.1) &&
          steeper.totals.area_ft2 > plan.totals.area_ft2 &&
          steeper.totals.bought_ft2 >= plan.totals.bought_ft2
        );
      }),
      RUNS,
    );
  });

  test('hips from dimensions: plan area times the slope factor, whatever the start', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('shed', 'gable', 'hip') as fc.Arbitrary<BuiltRoof['shape']>,
        fc.double({ min: 8, max: 120, noNaN: true }),
        fc.oneof(fc.constant(0), fc.double({ min: 0.02, max: 80, noNaN: true })),
        fc.constantFrom(0, 1, 2.5),
        fc.double({ min: 0.25, max: 18, noNaN: true }),
        start,
        (shape, across_ft, more, overhang_ft, rise_per_12, from) => {
          const planes = roof({
            shape,
            along_ft: across_ft + more,
            across_ft,
            overhang_ft,
            rise_per_12,
            start: from,
          });
          const taken = got(takeOff(ask(planes, { panel: { ...PANEL, longest_ft: 500 } })));
          const plan = (across_ft + more + 2 * overhang_ft) * (across_ft + 2 * overhang_ft);
          return near(taken.totals.area_ft2, plan * Math.hypot(1, rise_per_12 / 12), 1e-6 * plan);
        },
      ),
      RUNS,
    );
  });
});
