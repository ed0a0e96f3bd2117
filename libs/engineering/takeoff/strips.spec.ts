// Strips over random planes: areas add up, and every strip is what brute-force sampling finds.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { areaOf, type Point, type Polygon } from '../wind/plane-geometry.js';
import { isInside } from './outline.js';
import { readPlane, type Plane, type Side } from './plane.js';
import { STARTS } from './request.js';
import {
  randomPlane,
  requestOf,
  type RandomPlane,
} from '../../../tests/standards/random-planes.js';
import { polygonsOf, sideLaps, stripsOf, type Run } from './strips.js';

const RUNS = { seed: 20261125, numRuns: 2000 };
const coverage = fc.double({ min: 1, max: 6, noNaN: true });
const start = fc.constantFrom(...STARTS);

function planeOf(random: RandomPlane): Plane {
  const faults: never[] = [];
  const plane = readPlane(requestOf(random), '', faults);
  if (plane === null) throw new Error(JSON.stringify(faults));
  return plane;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, n) => total + n, 0);
const near = (p: number, q: number, by: number): boolean => Math.abs(p - q) <= by;

const covered = ({ outline, openings }: RandomPlane, point: Point): boolean =>
  isInside(point, outline) && !openings.some((each) => isInside(point, each));

const holds = ({ parts }: Run, [x, y]: Point): boolean =>
  parts.some((t) => {
    const share = (x - t.x0) / (t.x1 - t.x0);
    if (share < 0 || share > 1) return false;
    const low = t.below0 + share * (t.below1 - t.below0);
    const high = t.above0 + share * (t.above1 - t.above0);
    return y >= low && y <= high;
  });

/** Every height at which an upright line crosses a side of the plane: found without trapezoids. */
function crossings({ outline, openings }: RandomPlane, x: number): number[] {
  return [outline, ...openings].flatMap((points: Polygon) =>
    points.flatMap(([px, py], i) => {
      const [qx, qy] = points[(i + 1) % points.length]!;
      if (px > x === qx > x) return [];
      return [py + ((x - px) / (qx - px)) * (qy - py)];
    }),
  );
}

describe('strips', () => {
  test('areas of all runs add up to the plane without its openings, wherever the strips start', () => {
    fc.assert(
      fc.property(randomPlane, coverage, start, (random, cover, from) => {
        const { area_ft2, sides } = planeOf(random);
        const { runs } = stripsOf(sides, cover, from);
        const openings = sum(random.openings.map(areaOf));
        return (
          near(area_ft2, areaOf(random.outline) - openings, 1e-9 * area_ft2) &&
          near(sum(runs.map((run) => run.area_ft2)), area_ft2, 1e-5 * area_ft2)
        );
      }),
      RUNS,
    );
  });

  test('the drawn polygons of a run have its area', () => {
    fc.assert(
      fc.property(randomPlane, coverage, start, (random, cover, from) =>
        stripsOf(planeOf(random).sides, cover, from).runs.every((run) =>
          near(sum(polygonsOf(run).map(areaOf)), run.area_ft2, 1e-6 * Math.max(1, run.area_ft2)),
        ),
      ),
      RUNS,
    );
  });

  test('a point lies in exactly one run, of its own strip, where it lies in the plane', () => {
    const share = fc.double({ min: 0.0001, max: 0.9999, noNaN: true });
    fc.assert(
      fc.property(
        randomPlane,
        coverage,
        start,
        fc.array(fc.tuple(share, share), { minLength: 20, maxLength: 20 }),
        (random, cover, from, points) => {
          const { lines, runs } = stripsOf(planeOf(random).sides, cover, from);
          return points.every(([u, v]) => {
            const point: Point = [-60 + 120 * u, -60 + 120 * v];
            const heights = crossings(random, point[0]);
            if (heights.some((y) => near(y, point[1], 1e-4))) return true;
            if (lines.some((x) => near(x, point[0], 1e-4))) return true;
            const found = runs.filter((run) => holds(run, point));
            if (!covered(random, point)) return found.length === 0;
            return (
              found.length === 1 &&
              lines[found[0]!.strip]! <= point[0] &&
              point[0] <= lines[found[0]!.strip + 1]!
            );
          });
        },
      ),
      RUNS,
    );
  });

  test('the ends of a strip are the extremes that sampling its width finds', () => {
    fc.assert(
      fc.property(randomPlane, coverage, start, (random, cover, from) => {
        const { lines, runs } = stripsOf(planeOf(random).sides, cover, from);
        return lines.slice(1).every((right, strip) => {
          const left = lines[strip]!;
          const corners = [random.outline, ...random.openings]
            .flat()
            .map(([x]) => x)
            .filter((x) => x >= left && x <= right);
          const xs = [left, right, ...corners]
            .flatMap((x) => [x - 1e-7, x + 1e-7])
            .concat(Array.from({ length: 4 }, (_, i) => left + ((i + 0.5) / 4) * cover))
            .filter((x) => x > left && x < right);
          const heights = xs.flatMap((x) => crossings(random, x));
          const mine = runs.filter((run) => run.strip === strip);
          if (heights.length === 0 || mine.length === 0)
            return sum(mine.map((r) => r.area_ft2)) < 1e-3;
          const low = Math.min(
            ...mine.flatMap(({ parts }) => parts.flatMap((t) => [t.below0, t.below1])),
          );
          const high = Math.max(
            ...mine.flatMap(({ parts }) => parts.flatMap((t) => [t.above0, t.above1])),
          );
          return near(low, Math.min(...heights), 1e-3) && near(high, Math.max(...heights), 1e-3);
        });
      }),
      { ...RUNS, numRuns: 1000 },
    );
  });

  test('side laps lie on the lines between strips, as long as the plane is there', () => {
    fc.assert(
      fc.property(randomPlane, coverage, start, (random, cover, from) => {
        const { lines, runs } = stripsOf(planeOf(random).sides, cover, from);
        const wanted = lines.slice(1, -1).map((x) => {
          const heights = crossings(random, x + 2e-6).sort((p, q) => p - q);
          return sum(heights.map((y, i) => (i % 2 === 0 ? -y : y)));
        });
        return near(sum(sideLaps(runs)), sum(wanted), 1e-2);
      }),
      { ...RUNS, numRuns: 1000 },
    );
  });

  test('centered strips leave equal parts at both ends', () => {
    const side = (from: Point, to: Point): Side => ({
      from,
      to,
      edge: 'none',
      joint: null,
      length_ft: 0,
    });
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 5],
      [0, 5],
    ];
    const sides = square.map((p, i) => side(p, square[(i + 1) % 4]!));
    // 10 ft in 3 ft strips: 4 strips are 12 ft, 1 ft over at each end.
    expect(stripsOf(sides, 3, 'centered').lines).toEqual([-1, 2, 5, 8, 11]);
    expect(stripsOf(sides, 3, 'left').lines).toEqual([0, 3, 6, 9, 12]);
    expect(stripsOf(sides, 3, 'right').lines).toEqual([-2, 1, 4, 7, 10]);
    expect(stripsOf(sides, 2.5, 'left').lines).toEqual([0, 2.5, 5, 7.5, 10]);
  });

  test('a notch parts a strip in two runs; a hole across it does, a hole within it does not', () => {
    const sidesOf = (...polygons: Point[][]): Side[] =>
      polygons.flatMap((points) =>
        points.map((from, i) => ({
          from,
          to: points[(i + 1) % points.length]!,
          edge: 'none' as const,
          joint: null,
          length_ft: 0,
        })),
      );
    const outline: Point[] = [
      [0, 0],
      [6, 0],
      [6, 20],
      [0, 20],
    ];
    const across: Point[] = [
      [1, 8],
      [5, 8],
      [5, 10],
      [1, 10],
    ];
    const spans = (sides: Side[], cover: number): number[] =>
      stripsOf(sides, cover, 'left').runs.map((run) => run.strip);
    expect(spans(sidesOf(outline, across), 6)).toEqual([0]);
    // Strips 0 to 2, 2 to 4 and 4 to 6 ft: the middle one is wholly cut by the hole from 1 to 5 ft.
    expect(spans(sidesOf(outline, across), 2)).toEqual([0, 1, 1, 2]);
  });
});
