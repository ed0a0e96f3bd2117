// Fasteners by zone: rows worked by hand under a real zone layout, and what holds for any spacing.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { Outcome } from '../check.js';
import { degrees, feet } from '../units.js';
import { zoneLayout } from '../wind/zone-layout.js';
import { builtRoof } from './built-roof.js';
import type { AttachmentRequest } from './request.js';
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
const rise = 12 * Math.tan((15 * Math.PI) / 180);
const layout = zoneLayout({
  edition: '7-16',
  h: feet(17.68),
  roof: {
    shape: 'gable',
    theta: degrees(15),
    width: feet(40),
    length: feet(60),
    falls: 'along-width',
    overhang: feet(0),
  },
  eaveHeight: feet(15),
});
const clips = (...zones: [string, number, number?][]): AttachmentRequest => ({
  fastener: 'clip',
  zones: zones.map(([zone, spacing_in, per_row = 1]) => ({ zone, spacing_in, per_row })),
});
/** One strip of 3 ft from eave to ridge, 10 ft from the rake. */
const strip = freePlane(
  corners([
    [0, 0, 'eave'],
    [3, 0],
    [3, 20, 'ridge'],
    [0, 20],
  ]),
  {
    rise_per_12: rise,
    measured: 'in-plan',
    place: { x_ft: 10, y_ft: 0, turn_deg: 0 },
  },
);
const count = (taken: TakeOff): number => taken.attachment!.count;

describe('fasteners by zone', () => {
  test('a strip from eave to ridge crosses three zones', () => {
    // Dimension a = 4 ft: in plan 2e to 4 ft, 1 to 16, 2r to 20. On the slope, F = 1 / cos 15 deg =
    // 1.0352762: 49.693, 149.080 and 49.693 in. Rows 2e at 12: 5; 1 at 24: 7; 2r at 12: 5 and the
    // closing one: 6. Areas 12 F, 36 F, 12 F.
    const attachment = { ...clips(['1', 24], ['2e', 12], ['2r', 12]), screws_each: 2 };
    const taken = got(takeOff(ask([strip], { attachment }), { layout }));
    expect(taken.attachment).toEqual({
      fastener: 'clip',
      zones: [
        { zone: '2e', rows: 5, count: 5 },
        { zone: '1', rows: 7, count: 7 },
        { zone: '2r', rows: 6, count: 6 },
      ],
      count: 18,
      screws: 36,
      stitch_screws: null,
    });
    const F = 1 / Math.cos((15 * Math.PI) / 180);
    expect(
      taken.planes[0]!.zones.map(({ zone, area_ft2 }) => [
        zone,
        Math.round((area_ft2 / F) * 1e6) / 1e6,
      ]),
    ).toEqual([
      ['1', 36],
      ['2e', 12],
      ['2r', 12],
    ]);
  });

  test('the planes of a built roof lie under the layout of the same roof', () => {
    for (const overhang of [0, 2]) {
      for (const shape of ['gable', 'hip'] as const) {
        const planes = got(
          builtRoof({
            shape,
            along_ft: 60,
            across_ft: 40,
            overhang_ft: overhang,
            rise_per_12: rise,
            start: 'left',
          }),
        );
        const zones = zoneLayout({
          edition: '7-16',
          h: feet(17.68),
          eaveHeight: feet(15),
          roof: {
            shape,
            theta: degrees(15),
            width: feet(40),
            length: feet(60),
            falls: 'along-width',
            overhang: feet(overhang),
          },
        });
        const outcome = takeOff(ask(planes, { attachment: clips(['all', 24]) }), { layout: zones });
        const taken = got(outcome);
        for (const { area_ft2, zones: under } of taken.planes) {
          expect(under.reduce((sum, each) => sum + each.area_ft2, 0)).toBeCloseTo(area_ft2, 3);
        }
        expect(outcome.ok && outcome.notes.join()).not.toContain('closest spacing');
      }
    }
  });

  test('where no zone is known the closest spacing counts, and the notes say so', () => {
    // 20 F = 248.466 in at 12 in: 21 rows and one that closes.
    const attachment = clips(['1', 24], ['3', 12]);
    const outcome = takeOff(ask([strip], { attachment }));
    expect(got(outcome).attachment!.zones).toEqual([{ zone: '3', rows: 22, count: 22 }]);
    expect(outcome.ok && outcome.notes.join(' ')).toContain('the closest spacing counts: A');
  });

  test('side by side zones take the closest spacing of the strip', () => {
    // At the rake 3e, 2n and 3r stand beside the field within a 6 ft strip: theirs counts.
    const wide = freePlane(
      corners([
        [0, 0, 'eave'],
        [6, 0],
        [6, 20, 'ridge'],
        [0, 20],
      ]),
      { rise_per_12: rise, measured: 'in-plan', place: { x_ft: 0, y_ft: 0, turn_deg: 0 } },
    );
    const zones = clips(['1', 36], ['2e', 36], ['2r', 36], ['2n', 12], ['3e', 12], ['3r', 12]);
    const taken = got(
      takeOff(ask([wide], { attachment: zones, panel: { ...PANEL, coverage_in: 72 } }), { layout }),
    );
    expect(new Set(taken.attachment!.zones.map(({ zone }) => zone))).toEqual(
      new Set(['3e', '2n', '3r']),
    );
  });

  test('a zone over the plane without a spacing is refused by name', () => {
    expect(takeOff(ask([strip], { attachment: clips(['1', 24], ['2e', 12]) }), { layout })).toEqual(
      {
        ok: false,
        faults: [{ pointer: '/attachment/zones', message: 'no spacing is given for zone 2r' }],
      },
    );
  });

  test('screws in rows across, and stitch screws along side laps', () => {
    // 6 ft wide: 2 strips; 10 ft long; rows at 60 in: 2 + 1, of 5: 15 a strip. One side lap of
    // 120 in at 24: 5 + 1.
    const plane = freePlane(
      corners([
        [0, 0],
        [6, 0],
        [6, 10],
        [0, 10],
      ]),
    );
    const attachment = { ...clips(['all', 60, 5]), stitch_spacing_in: 24 };
    expect(got(takeOff(ask([plane], { attachment }))).attachment).toMatchObject({
      count: 30,
      screws: null,
      stitch_screws: 6,
    });
  });

  test('closer spacing never takes fewer, and never leaves a gap over the spacing', () => {
    const place = { x_ft: 30, y_ft: 20, turn_deg: 30 };
    fc.assert(
      fc.property(
        randomPlane,
        fc.double({ min: 6, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        (random, spacing, by) => {
          const planes = [requestOf(random, { place })];
          const asked = (s: number) =>
            got(takeOff(ask(planes, { attachment: clips(['all', s], ['1', 2 * s]) }), { layout }));
          const wide = asked(spacing * by);
          const close = asked(spacing);
          const runs = close.planes[0]!.cut_list.strips.flatMap((each) => each.runs);
          const least = runs.reduce(
            (sum, run) =>
              sum +
              Math.ceil(
                (12 * (run.pieces.at(-1)!.to_ft - run.pieces[0]!.from_ft)) / (2 * spacing) - 1e-6,
              ),
            0,
          );
          return count(close) >= count(wide) && count(close) >= least;
        },
      ),
      { seed: 20261125, numRuns: 200 },
    );
  });
});
