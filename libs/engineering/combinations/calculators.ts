// The calculators of the topic: `combinations` and `roof-live-load`.

import { calculator, STRUCTURE_CAUTION, type Calculator } from '../calculator.js';
import { result } from '../check.js';
import { ASCE_EDITIONS } from '../sources.js';
import { per12, psf, squareFeet } from '../units.js';
import { clauseOf, panelDemand, type Combination } from './combinations.js';
import { SERVICE_LEVEL_WIND } from './factors.table.js';
import { roofLiveLoad } from './roof-live-load.js';

const OLD_WIND_CAUTION =
  `Wind of ${SERVICE_LEVEL_WIND.editions} is service level ` +
  `(uplift ${SERVICE_LEVEL_WIND.uplift}); it does not belong into these combinations.`;

const load = (says: string) =>
  ({ kind: 'number', unit: 'psf', least: 0, most: 1000, says }) as const;

const listed = (each: Combination) => ({
  combination: each.number,
  formula: each.formula,
  clause: clauseOf(each),
  total_psf: each.total,
});

const combinations = calculator({
  name: 'combinations',
  says: 'Allowable stress combinations of loads normal to a panel, inward and outward.',
  input: {
    edition: { kind: 'choice', of: ASCE_EDITIONS, says: 'edition of ASCE/SEI 7' },
    dead_psf: load('dead load surely present, normal to the panel; 0 on a wall'),
    roof_live_psf: load('roof live load, normal to the panel'),
    snow_psf: load('snow, normal to the panel; service level to 7-16, strength level in 7-22'),
    wind_inward_psf: load('wind toward the surface, strength level'),
    wind_outward_psf: {
      kind: 'number',
      unit: 'psf',
      least: -1000,
      most: 0,
      says: 'wind away from the surface, strength level; negative',
    },
  },
  output: {
    inward_psf: 'governing inward load, psf',
    inward_governs: 'its combination, formula, clause, total_psf',
    outward_psf: 'governing outward load, psf; negative, 0 where there is no net uplift',
    outward_governs: 'its combination, formula, clause, total_psf',
    combinations: 'list of all: combination, formula, clause, total_psf',
  },
  cautions: [STRUCTURE_CAUTION, OLD_WIND_CAUTION],
  run: (input) => {
    const outcome = panelDemand({
      edition: input.edition as (typeof ASCE_EDITIONS)[number],
      dead: psf(input.dead_psf),
      roofLive: psf(input.roof_live_psf),
      snow: psf(input.snow_psf),
      windInward: psf(input.wind_inward_psf),
      windOutward: psf(input.wind_outward_psf),
    });
    if (!outcome.ok) return outcome;
    const { inward, inwardBy, outward, outwardBy, all } = outcome.value;
    const value = {
      inward_psf: inward,
      inward_governs: listed(inwardBy),
      outward_psf: outward,
      outward_governs: listed(outwardBy),
      combinations: all.map(listed),
    };
    return result(value, outcome.steps, outcome.notes);
  },
});

const liveLoad = calculator({
  name: 'roof-live-load',
  says: 'Roof live load with the reductions for tributary area and slope.',
  input: {
    Lo_psf: {
      kind: 'number',
      unit: 'psf',
      least: 12,
      most: 20,
      says: 'unreduced roof live load; ordinarily 20',
    },
    At_ft2: { kind: 'number', unit: 'ft2', above: 0, says: 'tributary area of the member' },
    rise_per_12: { kind: 'number', unit: 'in per 12 in', least: 0, says: 'rise of the roof' },
  },
  output: {
    R1: 'reduction for tributary area',
    R2: 'reduction for slope',
    Lr_psf: 'roof live load on the horizontal projection, psf',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const outcome = roofLiveLoad(
      psf(input.Lo_psf),
      squareFeet(input.At_ft2),
      per12(input.rise_per_12),
    );
    if (!outcome.ok) return outcome;
    const { R1, R2, Lr } = outcome.value;
    return result({ R1, R2, Lr_psf: Lr }, outcome.steps, outcome.notes);
  },
});

export const combinationsCalculators: readonly Calculator[] = [combinations, liveLoad];
