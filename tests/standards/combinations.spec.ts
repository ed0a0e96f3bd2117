// ASD combinations, roof live load and slope components against read rules and worked arithmetic.

import { describe, expect, test } from '@jest/globals';
import { degreesOfRise, per12, psf, squareFeet } from '../../libs/engineering/units.js';
import type { AsceEdition } from '../../libs/engineering/sources.js';
import {
  asdSnow,
  deadAndWind,
  panelDemand,
} from '../../libs/engineering/combinations/combinations.js';
import { combinationsCalculators } from '../../libs/engineering/combinations/calculators.js';
import { SERVICE_LEVEL_WIND } from '../../libs/engineering/combinations/factors.table.js';
import { areaReduction, roofLiveLoad } from '../../libs/engineering/combinations/roof-live-load.js';
import { ofHorizontal, ofSlope } from '../../libs/engineering/combinations/slope-components.js';
import type { RiskCategory } from '../../libs/engineering/snow/factors.table.js';
import {
  flatRoofSnow,
  leastRoofSnow,
  snowImportance,
} from '../../libs/engineering/snow/flat-roof.js';
import { readCases, runCases, type StandardCase } from './cases.js';

const number = (c: StandardCase, key: string): number => c.inputs[key] as number;

function liveLoad(c: StandardCase): Record<string, unknown> {
  const outcome = roofLiveLoad(
    psf(number(c, 'Lo_psf')),
    squareFeet(number(c, 'At_sqft')),
    per12(number(c, 'F_rise_in12')),
  );
  if (!outcome.ok) throw new Error('refused');
  return { R1: outcome.value.R1, R2: outcome.value.R2, Lr_psf: outcome.value.Lr };
}

/** Of the two rows of 3 and 6 (live load, snow) the larger is the combination. */
function onPanel(c: StandardCase): Record<string, unknown> {
  const outcome = panelDemand({
    edition: c.inputs['edition'] as AsceEdition,
    dead: psf(number(c, 'D_psf')),
    roofLive: psf(number(c, 'Lr_psf')),
    snow: psf(number(c, 'S_psf')),
    windInward: psf(number(c, 'W_down_psf')),
    windOutward: psf(-number(c, 'W_up_psf')),
  });
  if (!outcome.ok) throw new Error('refused');
  const of = (n: string): number[] =>
    outcome.value.all.filter((each) => each.number.startsWith(n)).map((each) => each.total);
  return {
    c3_psf: Math.max(...of('3')),
    c5_down_psf: of('5')[0],
    c6_psf: Math.max(...of('6')),
    c7_net_psf: of('7')[0],
  };
}

const byTopic: Record<string, (c: StandardCase) => Record<string, unknown>> = {
  'roof live load': liveLoad,
  'roof live load, panel': (c) => {
    const At_sqft = number(c, 'panel_width_ft') * number(c, 'span_ft');
    return { At_sqft, R1: areaReduction(squareFeet(At_sqft)) };
  },
  'ASD combinations on a panel': onPanel,
  rule: (c) => ({
    asd_wind_up: deadAndWind('ASD', psf(number(c, 'D')), psf(number(c, 'W'))),
    lrfd_wind_up: deadAndWind('LRFD', psf(number(c, 'D')), psf(number(c, 'W'))),
  }),
  'rule (old edition, trap)': () => ({ uplift: SERVICE_LEVEL_WIND.uplift }),
  'ASD, 7-22, low slope minimum': (c) => {
    const pg = psf(number(c, 'pg_psf'));
    const category = c.inputs['risk_category'] as RiskCategory;
    const pf_psf = flatRoofSnow(
      pg,
      number(c, 'Ce'),
      number(c, 'Ct'),
      snowImportance('7-22', category),
    );
    const pm_psf = leastRoofSnow('7-22', pg, category);
    return { pf_psf, pm_psf, asd_snow_psf: asdSnow('7-22', psf(Math.max(pf_psf, pm_psf))) };
  },
  'normal and down-slope component': (c) => {
    const theta = degreesOfRise(per12(number(c, 'slope_rise_in12')));
    const snow = ofHorizontal(psf(number(c, 'ps_horizontal_psf')), theta);
    const dead = ofSlope(psf(number(c, 'D_on_slope_psf')), theta);
    return { normal_psf: snow.normal + dead.normal, downslope_psf: snow.along + dead.along };
  },
};

describe('combinations and roof live load', () => {
  const cases = readCases('combinations');
  test('every case has a way to run', () => {
    expect(cases).toHaveLength(14);
    expect(new Set(cases.map((each) => each.id)).size).toBe(14);
    expect(cases.filter((each) => byTopic[each.topic] === undefined)).toEqual([]);
  });
  runCases(cases, (c) => byTopic[c.topic]!(c));
  test('the wind of older editions is refused and named in the cautions', () => {
    const combinations = combinationsCalculators[0]!;
    expect(combinations.calculate({ edition: '7-05' }).ok).toBe(false);
    expect(combinations.cautions.join(' ')).toContain(SERVICE_LEVEL_WIND.uplift);
  });
});
