// Whether one thickness may be chosen: strength of panel and attachment in every zone from a test
// or chart of its own, and whether the sheet is to be had.

import { cite, COMMON_PRACTICE } from '#engineering';
import { notToBeHad } from './coating.js';
import { optionText, thickness } from './gauges.js';
import { fail, pass, rule, unknown } from './rule.js';
import { eachZoneBears } from './zones.js';

export const panelBears = rule({
  id: 'GAUGE-01',
  version: 1,
  title: 'The panel bears every zone',
  stage: 'gauge',
  class: 'physics',
  severity: 'refuse',
  says:
    "Every zone's panel utilization is at most 1.00, from the profile's own chart or a tested " +
    'assembly. Nothing is rounded to pass.',
  cites: [cite('asce-7-16', '2.4, from memory'), COMMON_PRACTICE],
  reads: ['zones'],
  settings: {},
  check: ({ zones }) => (zones === undefined ? unknown('zones') : eachZoneBears('panel', zones)),
});

export const attachmentBears = rule({
  id: 'GAUGE-02',
  version: 1,
  title: 'The attachment bears every zone',
  stage: 'gauge',
  class: 'physics',
  severity: 'refuse',
  says:
    "Every zone's attachment utilization is at most 1.00: pull-out, pull-over, clip by test. " +
    'Closer spacing cures it, not only a heavier gauge.',
  cites: [cite('aisi-s100-16', 'J4.4, from memory'), COMMON_PRACTICE],
  reads: ['zones'],
  settings: {},
  check: ({ zones }) =>
    zones === undefined ? unknown('zones') : eachZoneBears('attachment', zones),
});

export const ownTestOrChart = rule({
  id: 'GAUGE-03',
  version: 1,
  title: 'No test and no chart row: no number',
  stage: 'gauge',
  class: 'physics',
  severity: 'refuse',
  says:
    'Without a test or chart row for this metal, thickness, spacing and attachment there is no ' +
    "number, and the option is not admissible. Another gauge's row is never borrowed.",
  cites: [COMMON_PRACTICE],
  reads: ['zones', 'option'],
  settings: {},
  check: ({ zones, option }) => {
    if (zones === undefined || zones.length === 0) return unknown('zones');
    const gaps = zones.filter((zone) => zone.missing.length > 0);
    if (gaps.length === 0) return pass();
    const which = gaps.map((zone) => `zone ${zone.zone}: ${zone.missing.join(', ')}`).join('; ');
    return option === undefined
      ? fail(`no number for ${which}`)
      : fail(`no number for ${optionText(option)} in ${which}`, [thickness(option)]);
  },
});

export const thicknessIsToBeHad = rule({
  id: 'GAUGE-14',
  version: 1,
  title: 'This thickness is to be had',
  stage: 'gauge',
  class: 'availability',
  severity: 'refuse',
  says:
    'The catalogue edition offers this thickness of the profile in the chosen system and color ' +
    'group, in stock or as a special run.',
  cites: [COMMON_PRACTICE],
  reads: ['option'],
  settings: {},
  check: ({ option }) => {
    if (option === undefined) return unknown('option');
    const why = notToBeHad(option.availability);
    if (why === undefined) return pass();
    return fail(`${optionText(option)} is ${why} in this combination`, [thickness(option)]);
  },
});

export const GAUGE_RULES = [
  panelBears,
  attachmentBears,
  ownTestOrChart,
  thicknessIsToBeHad,
] as const;
