// Hail against outside values, each with its source and label beside it.

import { describe, expect, test } from '@jest/globals';
import type { Calculator } from '../../libs/engineering/calculator.js';
import { hailCalculators } from '../../libs/engineering/hail/calculators.js';
import { dents } from '../../libs/engineering/hail/hail.js';
import { HAIL_INTENSITY, IMPACT_CLASSES } from '../../libs/engineering/hail/hail.table.js';
import type { ImpactClass } from '../../libs/engineering/hail/hail.table.js';
import { knownNotMet, readCases, runCases, type StandardCase } from './cases.js';

type Values = Record<string, unknown>;
type Inputs = Record<string, number | string>;

const [hail] = hailCalculators as [Calculator];

function fall(i: Inputs): Values {
  const made = hail.calculate({ diameter_in: i['diameter_in'] });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  const velocity = made.value['velocity_mph'] as number;
  return { ...made.value, velocity_kmh: velocity * 1.609344, velocity_fps: (velocity * 22) / 15 };
}

function impactClass(i: Inputs): Values {
  const row = IMPACT_CLASSES[i['class'] as ImpactClass];
  return {
    steel_ball_diameter_in: row.ball_in,
    drop_height_ft: row.drop_ft,
    energy_ftlbf: row.energy_ftlbf,
    energy_J: row.energy_J,
  };
}

function intensity(i: Inputs): Values {
  const row = HAIL_INTENSITY[i['class'] as string];
  return {
    diameter_min_mm: row?.from_mm,
    diameter_max_mm: row?.to_mm,
    kinetic_energy_range_Jm2: `${row?.energy_Jm2?.above}-${row?.energy_Jm2?.to}`,
    kinetic_energy_above_Jm2: row?.energy_Jm2?.above,
  };
}

const BY_TOPIC: Record<string, (i: Inputs) => Values> = {
  'UL 2218 impact class': impactClass,
  'hailstone terminal velocity and kinetic energy, smooth hard sphere': fall,
  'hailstone kinetic energy, source has a decimal slip': fall,
  'hailstone terminal velocity (Laurie)': fall,
  'TORRO hail intensity': intensity,
  'visible dent on flat steel sheet from artificial hail': (i) => ({
    visible_dent: dents(Number(i['thickness_mm']), Number(i['ice_diameter_mm'])),
  }),
};

const KNOWN = knownNotMet('hail');

const cases = readCases('hail');
const evaluatorOf = (c: StandardCase) => BY_TOPIC[c.topic];

describe('hail against outside values', () => {
  test('every case of the file is run', () => {
    expect(cases).toHaveLength(25);
    expect(new Set(cases.map((c) => c.id)).size).toBe(25);
    expect(cases.filter((c) => evaluatorOf(c) === undefined).map((c) => c.id)).toEqual([]);
  });

  runCases(cases, (c) => evaluatorOf(c)?.(c.inputs as Inputs) ?? {}, KNOWN);
});

describe('the velocities of the cases known not to be met in energy', () => {
  const velocities = cases
    .filter((c) => c.id in KNOWN)
    .map(({ expected: { energy_ftlbf: _, ...expected }, ...c }) => ({ ...c, expected }));
  runCases(velocities, (c) => fall(c.inputs as Inputs));
});
