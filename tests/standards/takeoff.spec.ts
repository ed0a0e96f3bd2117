// Slope and hip lengths of roofs taken off, against the rafter tables of the framing square.

import { describe, expect, test } from '@jest/globals';
import { builtRoof } from '../../libs/engineering/takeoff/built-roof.js';
import { takeOff, type TakeOff } from '../../libs/engineering/takeoff/take-off.js';
import { readCases, runCases, type StandardCase } from './cases.js';
import { ask } from './random-planes.js';

/** A square hip roof of 200 ft, so that the run is 100 ft: a foot of run is a hundredth of it. */
function hipRoof(rise_per_12: number): TakeOff {
  const planes = builtRoof({
    shape: 'hip',
    along_ft: 200,
    across_ft: 200,
    overhang_ft: 0,
    rise_per_12,
    start: 'left',
  });
  if (!planes.ok) throw new Error(JSON.stringify(planes.faults));
  const taken = takeOff(ask(planes.value));
  if (!taken.ok) throw new Error(JSON.stringify(taken.faults));
  return taken.value;
}

const BY_TOPIC: Record<string, (taken: TakeOff) => Record<string, unknown>> = {
  'slope length per foot of run': ({ planes }) => ({
    common_in_per_ft: (12 * Math.max(...planes[0]!.cut_list.outline.map(([, y]) => y))) / 100,
  }),
  'hip length per foot of run': ({ edges }) => ({
    hip_in_per_ft: (12 * (edges.find(({ edge }) => edge === 'hip')?.length_ft ?? 0)) / 4 / 100,
  }),
};

const cases = readCases('takeoff');
const evaluate = ({ topic, inputs }: StandardCase): Record<string, unknown> =>
  BY_TOPIC[topic]?.(hipRoof(inputs['rise_per_12'] as number)) ?? {};

describe('slope and hip lengths against the framing square', () => {
  test('every case of the file is run', () => {
    expect(cases).toHaveLength(14);
    expect(cases.filter(({ topic }) => BY_TOPIC[topic] === undefined)).toEqual([]);
  });

  runCases(cases, evaluate);
});
