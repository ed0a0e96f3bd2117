// Whether the weather's demands are known well enough to stand on: sources, limits of the method,
// enclosure asked outright, and figures whose edition text has not been read.

import { cite, COMMON_PRACTICE } from '#engineering';
import { against, listed, measured, recorded, text } from './figures.js';
import { fail, failAs, pass, rule, unknown, unknownOf } from './rule.js';
import { label } from './words.js';
import { worstUtilization } from './zones.js';

export const withinTheMethod = rule({
  id: 'HAZ-01',
  version: 1,
  title: 'Outside the limits of the calculation',
  stage: 'hazards',
  class: 'code',
  severity: 'require',
  says:
    'A calculation outside its limits (over 60 ft, an unknown roof shape, an open structure ' +
    'without method) needs pressures from an engineer, and sign-off.',
  cites: [cite('asce-7-16', 'Chapter 30, from memory'), COMMON_PRACTICE],
  reads: ['outside_method', 'pressures_by_engineer'],
  settings: {},
  check: ({ outside_method, pressures_by_engineer }) => {
    if (outside_method === undefined) return unknown('outside_method');
    if (outside_method.length === 0) return pass();
    if (pressures_by_engineer) {
      return pass('pressures are from an engineer; sign-off stays required');
    }
    return fail(
      `outside the method: ${listed(outside_method)}; ` +
        'pressures from an engineer and sign-off are due',
    );
  },
});

export const unconfirmedFigures = rule({
  id: 'HAZ-02',
  version: 1,
  title: 'Figures whose edition text is to be confirmed',
  stage: 'gauge',
  class: 'physics',
  severity: 'caution',
  says:
    'A value from a table marked "edition text to be confirmed" uses the larger reading, and a ' +
    'caution stands on every document; over the limit of utilization, sign-off is required.',
  cites: [COMMON_PRACTICE],
  reads: ['unconfirmed_figures', 'zones'],
  settings: { utilization_limit: 0.8 },
  check: ({ unconfirmed_figures, zones }, { utilization_limit }) => {
    if (unconfirmed_figures === undefined) return unknown('unconfirmed_figures');
    if (unconfirmed_figures.length === 0) return pass();
    const which = listed(unconfirmed_figures);
    const what = `edition text to be confirmed: ${which}; the larger reading is used`;
    const worst = worstUtilization(zones ?? []);
    if (worst === undefined) return failAs('caution', what);
    const limit = recorded('limit', utilization_limit, '');
    const shown = against('worst utilization', worst, utilization_limit, '', 3);
    const figures = [shown, limit];
    const left = measured(limit, utilization_limit - worst, '', 3);
    return worst > utilization_limit
      ? failAs(
          'require',
          `${what}; at a utilization of ${text(shown)}, over ${text(limit)}, sign-off is required`,
          figures,
          left,
        )
      : failAs(
          'caution',
          `${what}; utilization ${text(shown)} stays within ${text(limit)}`,
          figures,
          left,
        );
  },
});

export const everyValueHasASource = rule({
  id: 'HAZ-03',
  version: 1,
  title: 'Every hazard value has a source and a date',
  stage: 'hazards',
  class: 'physics',
  severity: 'refuse',
  says: 'Wind, snow, hail and corrosion values are calculated or entered with source and date.',
  cites: [COMMON_PRACTICE],
  reads: ['hazards_without_source'],
  settings: {},
  check: ({ hazards_without_source }) => {
    if (hazards_without_source === undefined) return unknown('hazards_without_source');
    if (hazards_without_source.length === 0) return pass();
    return fail(`without source or date: ${listed(hazards_without_source)}`);
  },
});

export const enclosureAskedOutright = rule({
  id: 'HAZ-04',
  version: 1,
  title: 'Enclosure fits what was answered',
  stage: 'hazards',
  class: 'code',
  severity: 'refuse',
  says:
    'Whether any side is open and whether doors stay open in storms is asked outright; an ' +
    'enclosed building has neither.',
  cites: [cite('asce-7-16', '26.2 and 26.12, from memory')],
  reads: ['enclosure', 'any_side_open', 'doors_open_in_storms'],
  settings: {},
  check: ({ enclosure, any_side_open, doors_open_in_storms }) => {
    if (
      enclosure === undefined ||
      any_side_open === undefined ||
      doors_open_in_storms === undefined
    ) {
      return unknownOf({ enclosure, any_side_open, doors_open_in_storms });
    }
    if (enclosure !== 'enclosed') return pass(label(enclosure));
    if (any_side_open) return fail('a building with an open side is not enclosed');
    if (doors_open_in_storms)
      return fail('a building whose doors stay open in storms is not enclosed');
    return pass(label(enclosure));
  },
});

export const HAZARD_RULES = [
  withinTheMethod,
  unconfirmedFigures,
  everyValueHasASource,
  enclosureAskedOutright,
] as const;
