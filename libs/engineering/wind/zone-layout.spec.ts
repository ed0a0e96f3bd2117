// Zone layout: the pieces cover roof, overhang and walls exactly once, and the zones have the sizes
// that the figures give them.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { ASCE_EDITIONS, type AsceEdition } from '../sources.js';
import { degrees, feet } from '../units.js';
import { areaOf, common, type Polygon } from './plane-geometry.js';
import { coefficientsFor, ROOF_SHAPES, zonesOf, type RoofShape } from './roof-figure.js';
import { zoneLayout, zoneLayoutNotes, zonesUnder, type LayoutInput } from './zone-layout.js';
import type { ZonePiece } from './zone-piece.js';

const RUNS = { seed: 20261125, numRuns: 1500 };

const layout = (
  edition: AsceEdition,
  shape: RoofShape,
  theta: number,
  more: { h?: number; width?: number; length?: number; overhang?: number; along?: boolean } = {},
): LayoutInput => ({
  edition,
  h: feet(more.h ?? 15),
  roof: {
    shape,
    theta: degrees(theta),
    width: feet(more.width ?? 40),
    length: feet(more.length ?? 60),
    falls: more.along === false ? 'along-length' : 'along-width',
    overhang: feet(more.overhang ?? 0),
  },
  eaveHeight: feet(12),
});

const sum = (pieces: readonly ZonePiece[], zone?: string): number =>
  pieces
    .filter((each) => zone === undefined || each.zone === zone)
    .reduce((total, each) => total + areaOf(each.polygon), 0);

const part = (pieces: readonly ZonePiece[], name: string): ZonePiece[] =>
  pieces.filter((each) => each.part === name);

function counterClockwise(polygon: Polygon): boolean {
  return polygon.every((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!;
    const r = polygon[(i + 2) % polygon.length]!;
    return (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]) >= -1e-6;
  });
}

const anyLayout = fc
  .record({
    edition: fc.constantFrom(...ASCE_EDITIONS),
    shape: fc.constantFrom(...ROOF_SHAPES),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    h: fc.double({ min: 9, max: 60, noNaN: true }),
    width: fc.double({ min: 20, max: 200, noNaN: true }),
    more: fc.double({ min: 0, max: 150, noNaN: true }),
    overhang: fc.constantFrom(0, 1, 2.5),
    along: fc.boolean(),
  })
  .map(({ edition, shape, share, h, width, more, overhang, along }) => {
    const most = { flat: 7, gable: 45, hip: 45, monoslope: 30 }[shape];
    return layout(edition, shape, share * most, {
      h,
      width,
      length: width + more,
      overhang,
      along,
    });
  });

/** The zone at a point of the plan. */
const at =
  (pieces: readonly ZonePiece[]) =>
  ([x, y]: readonly [number, number]): string => {
    const strip: Polygon = [
      [x, y],
      [x + 0.1, y],
      [x + 0.1, y + 0.1],
      [x, y + 0.1],
    ];
    return zonesUnder(pieces, strip)[0]!.zone;
  };

describe('zone layout', () => {
  test('covers roof and overhang once, with convex pieces and zones of the figure', () => {
    fc.assert(
      fc.property(anyLayout, (input) => {
        const { width, length, overhang, shape, theta } = input.roof;
        const pieces = zoneLayout(input);
        const c = coefficientsFor(input.edition, shape, theta, input.h / width);
        const names = new Set(zonesOf(c.low, 'negative').map((z) => z.zone));
        const plan = pieces.filter((each) => each.part !== 'wall');
        const roof = width * length;
        const all = (width + 2 * overhang) * (length + 2 * overhang);
        return (
          Math.abs(sum(part(pieces, 'roof')) - roof) < 1e-3 &&
          Math.abs(sum(part(pieces, 'overhang')) - (all - roof)) < 1e-3 &&
          plan.every((each) => names.has(each.zone) && counterClockwise(each.polygon)) &&
          part(pieces, 'wall').every((each) => counterClockwise(each.polygon))
        );
      }),
      RUNS,
    );
  });

  test('no two pieces of the plan overlap', () => {
    for (const input of [
      layout('7-16', 'hip', 15, { overhang: 2 }),
      layout('7-22', 'monoslope', 8),
      layout('7-10', 'gable', 20),
      layout('7-22', 'flat', 1, { h: 30 }),
    ]) {
      const plan = zoneLayout(input).filter((each) => each.part !== 'wall');
      for (const [i, one] of plan.entries()) {
        for (const other of plan.slice(i + 1)) {
          expect(areaOf(common(one.polygon, other.polygon))).toBeLessThan(1e-6);
        }
      }
    }
  });

  test('flat roof 40 by 60 ft, h 15 ft: areas of the 0.6 h layout', () => {
    const roof = part(zoneLayout(layout('7-16', 'flat', 0)), 'roof');
    const areas = ["1'", '1', '2', '3'].map((zone) => Math.round(sum(roof, zone) * 1e6) / 1e6);
    expect(areas).toEqual([96, 828, 1296, 180]);
  });

  test('hip roof 40 by 60 ft, a 4 ft: areas of the two planes', () => {
    const roof = part(zoneLayout(layout('7-16', 'hip', 15, { h: 17.68 })), 'roof');
    const areas = ['3', '2e', '2r', '1'].map((zone) => Math.round(sum(roof, zone)));
    expect(areas).toEqual([64, 672, 762, 902]);
  });

  test('small low roofs have no zone 1 prime, and smaller ones no zone 1', () => {
    const zones = (width: number): Set<string> =>
      new Set(
        part(zoneLayout(layout('7-22', 'flat', 0, { width, length: 90 })), 'roof').map(
          (p) => p.zone,
        ),
      );
    expect([...zones(36.1)].sort()).toEqual(['1', "1'", '2', '3']);
    expect([...zones(36)].sort()).toEqual(['1', '2', '3']);
    expect([...zones(18)].sort()).toEqual(['2', '3']);
  });

  test('7-22 gable: the eave strip is the field, zone 3 lies at the ridge ends', () => {
    const roof = part(zoneLayout(layout('7-22', 'gable', 15)), 'roof');
    const zones = (
      [
        [30, 0.5],
        [0.5, 0.5],
        [0.5, 19],
        [30, 19],
      ] as const
    ).map(at(roof));
    expect(zones).toEqual(['1', '2', '3', '2']);
  });

  test('monoslope over 3 degrees: primed zones lie at the high eave', () => {
    const roof = part(zoneLayout(layout('7-22', 'monoslope', 5)), 'roof');
    const places = [
      [1, 39],
      [15, 33],
      [30, 39],
      [1, 1],
      [7, 7],
      [30, 1],
      [1, 20],
      [30, 20],
    ] as const;
    expect(places.map(at(roof))).toEqual(["3'", "3'", "2'", '3', '3', '2', '2', '1']);
  });

  test('walls: zone 5 of width a at each corner; a monoslope has two heights', () => {
    const walls = part(zoneLayout(layout('7-22', 'monoslope', 5)), 'wall');
    expect(new Set(walls.map((each) => each.face))).toEqual(new Set(['eave', 'high-eave', 'end']));
    const eave = walls.filter((each) => each.face === 'eave');
    expect(sum(eave, '5')).toBeCloseTo(2 * 4 * 12, 9);
    expect(sum(eave)).toBeCloseTo(60 * 12, 9);
    const end = walls.filter((each) => each.face === 'end');
    expect(sum(end)).toBeCloseTo(40 * (12 + 20 * Math.tan((5 * Math.PI) / 180)), 9);
  });

  test('a panel strip from eave to ridge crosses its zones by area', () => {
    const roof = part(zoneLayout(layout('7-16', 'gable', 15, { h: 17.68 })), 'roof');
    const strip: Polygon = [
      [10, 0],
      [13, 0],
      [13, 20],
      [10, 20],
    ];
    const under = zonesUnder(roof, strip).map((z) => [z.zone, Math.round(z.area_ft2 * 1e6) / 1e6]);
    expect(under).toEqual([
      ['1', 36],
      ['2e', 12],
      ['2r', 12],
    ]);
  });

  test('turning the slope turns the plan', () => {
    const turned = part(zoneLayout(layout('7-16', 'gable', 15, { along: false })), 'roof');
    const rakes = turned
      .filter((each) => each.zone === '2n')
      .map((each) => each.polygon.map(([, y]) => y));
    expect(
      rakes.every((ys) => ys.every((y) => y <= 4 + 1e-9) || ys.every((y) => y >= 36 - 1e-9)),
    ).toBe(true);
  });

  test('plans from memory or one reader say so', () => {
    expect(zoneLayoutNotes(layout('7-22', 'hip', 15))[0]).toContain('edition text to be confirmed');
    expect(zoneLayoutNotes(layout('7-16', 'gable', 15))).toEqual([]);
  });
});
