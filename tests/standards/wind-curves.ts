// Table look-up of the printed curves of a figure, by the case's own keys.

import { expect } from '@jest/globals';
import type { Figure, ZoneCurve } from '../../libs/engineering/wind/curves.js';
import { fig_5A, fig_5B } from '../../libs/engineering/wind/figures-all-editions.table.js';
import * as f16 from '../../libs/engineering/wind/figures-7-16.table.js';
import * as f22 from '../../libs/engineering/wind/figures-7-22.table.js';
import type { StandardCase } from './cases.js';

const FIGURES: Record<string, Figure> = {
  '7-22 30.3-2A': f16.FIG_30_3_2A,
  '7-16 30.3-2A': f16.FIG_30_3_2A,
  '7-22 30.3-2B': f22.FIG_22_2B,
  '7-22 30.3-2C': f22.FIG_22_2C,
  '7-22 30.3-2D': f22.FIG_22_2D,
  '7-22 30.3-2E': f22.FIG_22_2E,
  '7-22 30.3-2F': f22.FIG_22_2F,
  '7-22 30.3-2G': f22.FIG_22_2G,
  '7-16 30.3-2B': f16.FIG_16_2B,
  '7-16 30.3-2C': f16.FIG_16_2C,
  '7-16 30.3-2D': f16.FIG_16_2D,
  '7-16 30.3-2E': f16.FIG_16_2E,
  '7-16 30.3-2F': f16.FIG_16_2F,
  '7-16 30.3-2G': f16.FIG_16_2G,
  '7-22 30.3-5A': fig_5A('7-22'),
  '7-22 30.3-5B': fig_5B('7-22'),
};

/** Table look-up: keys are zones with a sign, "all+" the positive, "OH" the overhang. */
export function figureCurves(c: StandardCase): Record<string, unknown> {
  const name = (c.inputs['figure'] as string).split(' ')[0];
  const figure = FIGURES[`${c.inputs['edition'] as string} ${name}`]!;
  const keys = Object.keys(c.expected['curves_area_ft2_GCp'] as object);
  const read = (key: string): unknown => {
    if (key === 'all+') return figure.positive;
    const overhang = key.startsWith('OH ');
    const list = (overhang ? figure.overhang : figure.negative) as readonly ZoneCurve[];
    const zones = key.replace('OH ', '').replace(/-$/, '').split(',');
    const found = zones.map((zone) => list.find((each) => each.zone === zone)?.readings[0]);
    expect(found.every((each) => JSON.stringify(each) === JSON.stringify(found[0]))).toBe(true);
    return found[0];
  };
  return { curves_area_ft2_GCp: Object.fromEntries(keys.map((key) => [key, read(key)])) };
}
