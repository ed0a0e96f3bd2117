// What a take-off refuses: every fault by its place, and no number beside them.

import { describe, expect, test } from '@jest/globals';
import type { Fault, Outcome } from '../check.js';
import { builtRoof } from './built-roof.js';
import type { PlaneRequest, TakeOffRequest } from './request.js';
import { ask, corners, freePlane, PANEL } from '../../../tests/standards/random-planes.js';
import { takeOff } from './take-off.js';

const faults = (outcome: Outcome<unknown>): readonly string[] => {
  if (outcome.ok) throw new Error('was not refused');
  return outcome.faults.map(({ pointer, message }: Fault) => `${pointer} ${message}`);
};
const square = corners([
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]);
const box = (x: number, y: number, w: number, h: number) =>
  corners([
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ]);
const of = (plane: Partial<PlaneRequest>, rest: Partial<TakeOffRequest> = {}) =>
  faults(takeOff(ask([freePlane(square, plane)], rest)));

describe('outlines', () => {
  test.each<[string, PlaneRequest['outline'], string]>([
    [
      'a bow tie',
      corners([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
      '/planes/0/outline/0 sides 1 and 3 of A cross or touch',
    ],
    [
      'a corner on another side',
      corners([
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ]),
      '/planes/0/outline/0 sides 1 and 3 of A cross or touch',
    ],
    [
      'the same corner twice',
      corners([
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
      ]),
      '/planes/0/outline/1 corners 2 and 3 of A are the same',
    ],
    [
      'a spike',
      corners([
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 4],
        [0, 10],
      ]),
      '/planes/0/outline/1 A turns back on itself after corner 3',
    ],
  ])('%s', (_, outline, fault) => {
    expect(of({ outline })).toContain(fault);
  });

  test('openings outside, across, at the edge, or over one another', () => {
    const opening = (name: string, outline: PlaneRequest['outline']) => ({ name, outline });
    const openings = [
      opening('outside', box(20, 2, 2, 2)),
      opening('across', box(8, 2, 4, 1)),
      opening('at the edge', box(0, 8, 1, 1)),
      opening('round it', box(-5, -5, 20, 20)),
      opening('one', box(2, 2, 2, 2)),
      opening('two', box(3, 3, 2, 2)),
      opening('inside one', box(2.5, 2.5, 0.2, 0.2)),
    ];
    const said = of({ openings });
    for (const [i, name] of ['outside', 'across', 'at the edge', 'round it'].entries()) {
      expect(said).toContain(
        `/planes/0/openings/${i}/outline ${name} must lie inside A; at its edge, draw it as part of the outline`,
      );
    }
    expect(said).toContain('/planes/0/openings/5/outline two overlaps or touches one');
    expect(said).toContain('/planes/0/openings/6/outline inside one overlaps or touches one');
  });
});

describe('planes', () => {
  test('every fault of the reading at once', () => {
    const wrong = {
      ...ask([
        freePlane(square, { rise_per_12: 0 }),
        freePlane(square, { rise_per_12: -4, name: '' }),
      ]),
      color: 'red',
    };
    expect(faults(takeOff(wrong))).toEqual([
      expect.stringMatching(/^\/color is not known here/),
      '/planes/0/rise_per_12 must be over 0 in',
      '/planes/1/name must be a text that is not empty',
      '/planes/1/rise_per_12 must be over 0 in',
    ]);
  });

  test('a roof without pitch, a wall with one, a name twice, a crossing outline: together', () => {
    const { rise_per_12: _, ...flat } = freePlane(square, { name: 'roof' });
    const planes = [
      flat,
      freePlane(square, { name: 'wall', lies: 'wall', measured: 'in-plan' }),
      {
        ...flat,
        outline: corners([
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ]),
      },
    ];
    expect(faults(takeOff(ask(planes)))).toEqual([
      '/planes/2/name roof is the name of another plane too',
      '/planes/0/rise_per_12 is missing: roof is a roof',
      '/planes/1/rise_per_12 does not belong here: wall is a wall',
      '/planes/1/measured must be on-slope: wall is a wall',
      '/planes/2/rise_per_12 is missing: roof is a roof',
      '/planes/2/outline/0 sides 1 and 3 of roof cross or touch',
    ]);
  });

  test('joints that do not fit', () => {
    const gable = (name: string, length: number, joints: readonly (string | undefined)[]) =>
      freePlane(
        corners([
          [0, 0, 'eave', joints[0]],
          [length, 0, 'rake', joints[1]],
          [length, 5, 'ridge', joints[2]],
          [0, 5],
        ]),
        { name },
      );
    const planes = [
      gable('A', 40, ['alone', 'mixed', 'ridge']),
      gable('B', 38, [undefined, undefined, 'ridge']),
      freePlane(
        corners([
          [0, 0, 'valley', 'mixed'],
          [5, 0],
          [5, 5],
        ]),
        { name: 'C' },
      ),
    ];
    expect(faults(takeOff(ask(planes)))).toEqual([
      '/planes joint alone must be a side of two planes; it is one of A',
      '/planes joint mixed is rake on A and valley on C',
      '/planes joint ridge is 40.000 ft long on A and 38.000 ft on B',
    ]);
  });
});

describe('the rest', () => {
  test('trims, underlayment, bundles and entered lengths', () => {
    const said = of(
      { entered: [{ length_in: 3000, count: 1 }] },
      {
        trims: [{ name: 'drip', edges: ['eave'], stock_in: 10, lap_in: 6, weight_plf: 1 }],
        underlayments: [
          { name: 'felt', roll_width_in: 12, roll_length_ft: 60, side_lap_in: 12, end_lap_in: 6 },
        ],
        bundles: { most_lb: 100, most_pieces: 10, landings: [{ plane: 'B', place: 'yard' }] },
      },
    );
    expect(said).toEqual([
      '/bundles/landings/0/plane there is no plane B',
      '/trims/0/lap_in of drip must be at most half its stock length',
      '/underlayments/0/side_lap_in must be under the width of felt',
      '/planes/0/entered/0/length_in is over the longest piece of 2400 in',
      '/bundles/landings no landing place is given for A',
    ]);
  });

  test('a piece heavier than a bundle, a lap as long as the piece', () => {
    const bundles = { most_lb: 20, most_pieces: 10, landings: [{ plane: 'A', place: 'yard' }] };
    expect(of({}, { bundles })).toEqual([
      "/bundles/most_lb a piece of A weighs 30.0 lb, over a bundle's limit",
    ]);
    const panel = { ...PANEL, longest_ft: 2, end_lap_in: 24 };
    expect(of({}, { panel })).toEqual(['/panel/end_lap_in must be under the longest piece']);
  });

  test('roofs from dimensions', () => {
    const dimensions = {
      shape: 'hip',
      along_ft: 20,
      across_ft: 30,
      overhang_ft: 1,
      rise_per_12: 6,
      start: 'left',
    } as const;
    expect(faults(builtRoof(dimensions))).toEqual([
      '/across_ft of a hip must be at most along_ft: its ridge runs along the longer side',
    ]);
    expect(faults(builtRoof({ ...dimensions, along_ft: 30.005 }))).toEqual([
      '/along_ft of a hip must equal across_ft or be at least an eighth of an inch over it',
    ]);
    expect(faults(builtRoof({ ...dimensions, rise_per_12: 0, overhang_ft: -1 }))).toEqual([
      '/overhang_ft must be at least 0 ft',
      '/rise_per_12 must be over 0 in',
    ]);
  });
});
