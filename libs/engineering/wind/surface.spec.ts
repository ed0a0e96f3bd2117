// Wind on a surface: what must hold for any input, and what is refused.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { TO_BE_CONFIRMED } from '../check.js';
import { ASCE_EDITIONS, type AsceEdition } from '../sources.js';
import { degrees, feet, mph, squareFeet } from '../units.js';
import { ENCLOSURES, EXPOSURES } from './exposure.table.js';
import { coefficientsFor, zonesOf, type RoofShape } from './roof-figure.js';
import type { WindSurfaceInput } from './surface-input.js';
import { windOnSurface, type WindSurface } from './surface.js';
import { exposureCoefficient } from './velocity-pressure.js';

const RUNS = { seed: 20261125, numRuns: 2000 };

const anyRoof = fc
  .constantFrom<[RoofShape, number]>(['flat', 7], ['gable', 45], ['hip', 45], ['monoslope', 30])
  .chain(([shape, most]) =>
    fc.record({
      shape: fc.constant(shape),
      theta: fc.oneof(
        fc.double({ min: 0, max: most, noNaN: true }),
        fc.constantFrom(...[0, 3, 7, 10, 20, 25, 27, 30, 45].filter((t) => t <= most)),
      ),
      width: fc.double({ min: 10, max: 400, noNaN: true }),
      more: fc.double({ min: 0, max: 300, noNaN: true }),
      overhang: fc.boolean(),
    }),
  );

const anySurface: fc.Arbitrary<WindSurfaceInput> = fc
  .record({
    edition: fc.constantFrom(...ASCE_EDITIONS),
    V: fc.double({ min: 85, max: 220, noNaN: true }),
    exposure: fc.constantFrom(...EXPOSURES),
    h: fc.double({ min: 8, max: 60, noNaN: true }),
    Kzt: fc.double({ min: 1, max: 3, noNaN: true }),
    elevation: fc.double({ min: 0, max: 8000, noNaN: true }),
    enclosure: fc.constantFrom(...ENCLOSURES),
    roof: anyRoof,
    area: fc.double({ min: 0.5, max: 1500, noNaN: true }),
  })
  .filter((i) => i.edition !== '7-10' || i.enclosure !== 'partially-open')
  .map((i) => ({
    ...i,
    V: mph(i.V),
    h: feet(i.h),
    elevation: feet(i.elevation),
    roof: {
      shape: i.roof.shape,
      theta: degrees(i.roof.theta),
      width: feet(i.roof.width),
      length: feet(i.roof.width + i.roof.more),
      overhang: i.roof.overhang,
    },
    areas: [squareFeet(i.area)],
  }));

function solved(input: WindSurfaceInput): WindSurface {
  const outcome = windOnSurface(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
}

/** Zone by zone, the pressures of `more` are at least those of `less` in magnitude. */
function noLess(more: WindSurface, less: WindSurface): boolean {
  return more.zones.every((m, i) => {
    const l = less.zones[i]!;
    const same = m.zone === l.zone && m.part === l.part;
    return same && m.inward >= l.inward - 1e-9 && m.outward <= l.outward + 1e-9;
  });
}

describe('wind on a surface', () => {
  test('every input in range gives finite pressures, 16 psf or more each way, and steps', () => {
    fc.assert(
      fc.property(anySurface, (input) => {
        const outcome = windOnSurface(input);
        return (
          outcome.ok &&
          outcome.steps.length === 7 + 4 * outcome.value.zones.length &&
          outcome.value.zones.every(
            (z) => Number.isFinite(z.inward) && z.inward >= 16 && z.outward <= -16,
          ) &&
          ['roof', 'wall'].every((part) => outcome.value.zones.some((z) => z.part === part)) &&
          outcome.value.zones.some((z) => z.part === 'overhang') === input.roof.overhang
        );
      }),
      RUNS,
    );
  });

  test('more wind never asks less', () => {
    fc.assert(
      fc.property(anySurface, fc.double({ min: 1, max: 2, noNaN: true }), (input, k) =>
        noLess(solved({ ...input, V: mph(input.V * k) }), solved(input)),
      ),
      RUNS,
    );
  });

  test('a larger effective wind area never has a larger pressure', () => {
    fc.assert(
      fc.property(anySurface, fc.double({ min: 1, max: 50, noNaN: true }), (input, k) => {
        const larger = squareFeet(input.areas[0]! * k);
        return noLess(solved(input), solved({ ...input, areas: [larger] }));
      }),
      RUNS,
    );
  });

  test('a partially enclosed building never has less than an enclosed one', () => {
    fc.assert(
      fc.property(anySurface, (input) =>
        noLess(
          solved({ ...input, enclosure: 'partially-enclosed' }),
          solved({ ...input, enclosure: 'enclosed' }),
        ),
      ),
      RUNS,
    );
  });

  test('a higher or more exposed building never has less velocity pressure', () => {
    const kz = fc.record({
      edition: fc.constantFrom(...ASCE_EDITIONS),
      z: fc.double({ min: 1, max: 60, noNaN: true }),
      less: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(kz, ({ edition, z, less }) => {
        const at = EXPOSURES.map((e) => exposureCoefficient(edition, e, feet(z)));
        const lower = EXPOSURES.map((e) => exposureCoefficient(edition, e, feet(z * less)));
        return at[0]! < at[1]! && at[1]! < at[2]! && at.every((k, i) => k >= lower[i]!);
      }),
      RUNS,
    );
  });

  test('zone names of two figures that are mixed are the same, in the same order', () => {
    for (const [edition, theta, hOverB] of [
      ['7-16', 15, 0.65],
      ['7-22', 36, 0.2],
    ] as const) {
      const c = coefficientsFor(edition, 'hip', degrees(theta), hOverB);
      expect(c.t).toBeCloseTo(0.5, 12);
      for (const part of ['negative', 'overhang'] as const) {
        const names = (f: typeof c.low): string[] => zonesOf(f, part).map((z) => z.zone);
        expect(names(c.high)).toEqual(names(c.low));
      }
    }
  });
});

describe('edition traps', () => {
  const flat = (edition: AsceEdition, exposure: 'B' | 'C', h: number): WindSurfaceInput => ({
    edition,
    V: mph(150),
    exposure,
    h: feet(h),
    Kzt: 1,
    elevation: feet(0),
    enclosure: 'enclosed',
    roof: {
      shape: 'flat',
      theta: degrees(0),
      width: feet(40),
      length: feet(60),
      overhang: false,
    },
    areas: [squareFeet(10)],
  });

  test('K_d moves from q_h to the pressure in 7-22; the pressure of a flat roof stays', () => {
    const old = solved({ ...flat('7-16', 'C', 30), Kz: 0.98 });
    const now = solved({ ...flat('7-22', 'C', 30), Kz: 0.98 });
    expect(old.qh / now.qh).toBeCloseTo(0.85, 12);
    now.zones.forEach((z, i) => expect(z.outward).toBeCloseTo(old.zones[i]!.outward, 9));
  });

  test('the floor of exposure B under 30 ft holds in 7-10 only', () => {
    const kz = (e: AsceEdition): number => exposureCoefficient(e, 'B', feet(15));
    expect(ASCE_EDITIONS.map(kz).map((k) => k.toFixed(3))).toEqual(['0.700', '0.575', '0.570']);
  });

  test('slope classes take their upper edge in', () => {
    const name = (e: AsceEdition, shape: RoofShape, t: number): string =>
      coefficientsFor(e, shape, degrees(t), 0.4).name;
    expect(name('7-22', 'gable', 7)).toBe('Fig. 30.3-2A');
    expect(name('7-22', 'gable', 7.1)).toBe('Fig. 30.3-2B');
    expect(name('7-16', 'gable', 20)).toBe('Fig. 30.3-2B');
    expect(name('7-16', 'gable', 26.57)).toBe('Fig. 30.3-2C');
    expect(name('7-22', 'gable', (Math.atan(1) * 180) / Math.PI)).toBe('Fig. 30.3-2D');
    expect(name('7-10', 'monoslope', 3)).toBe('Fig. 30.4-2A');
    expect(name('7-16', 'monoslope', 10)).toBe('Fig. 30.3-5A');
    expect(name('7-16', 'monoslope', 10.1)).toBe('Fig. 30.3-5B');
  });

  test('weak figures say so', () => {
    const hip = windOnSurface({
      ...flat('7-16', 'C', 20),
      roof: { ...flat('7-16', 'C', 20).roof, shape: 'hip', theta: degrees(30), overhang: true },
    });
    expect(hip.ok && hip.notes.some((note) => note.includes(TO_BE_CONFIRMED))).toBe(true);
  });

  test('a 3 ft parapet gives zones 2 and 3 of a low roof the positive of the wall', () => {
    const bare = solved(flat('7-22', 'C', 30));
    const behind = solved({ ...flat('7-22', 'C', 30), parapet: feet(3) });
    const positive = (s: WindSurface, zone: string): number =>
      s.zones.find((z) => z.part === 'roof' && z.zone === zone)!.GCpPositive;
    expect(positive(bare, '3')).toBe(0.3);
    expect(['1', '2', '3'].map((zone) => positive(behind, zone))).toEqual([0.3, 1, 1]);
  });
});
