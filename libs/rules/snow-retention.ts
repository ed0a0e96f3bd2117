// Snow that slides: where retention is due, how it is fixed, what it bears, and what it does to
// the roof snow load.

import { cite, COMMON_PRACTICE } from '#engineering';
import { against, measured, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { isSloped } from './style.js';
import { aSurface, type SnowRetention } from './words.js';

const NO_RETENTION = 'no snow retention is planned';

/** Retention is a choice of design: where none is recorded, none is planned. */
const noneIsPlanned = (retention: SnowRetention | undefined): boolean =>
  retention === undefined || retention === 'none';

export const retentionIsDue = rule({
  id: 'HAZ-05',
  version: 1,
  title: 'Snow retention in a snow climate',
  stage: 'hazards',
  class: 'guidance',
  severity: 'caution',
  says:
    'In a snow climate metal sheds its snow at once: a steep roof, and any roof over doors or ' +
    'walks, has snow retention, or the customer is warned of sliding snow and ice.',
  cites: [cite('ufc-3-110-03', '3-4.5'), COMMON_PRACTICE],
  reads: ['kind', 'ground_snow_psf', 'slope_per_12', 'over_doors_or_walks', 'snow_retention'],
  settings: { snow_climate_psf: 20, steep_slope_per_12: 3 },
  check: (facts, { snow_climate_psf, steep_slope_per_12 }) => {
    const { kind, ground_snow_psf, slope_per_12, over_doors_or_walks, snow_retention } = facts;
    if (kind === undefined) return unknown('kind');
    if (!isSloped(kind)) return notApplicable(`no snow slides off ${aSurface(kind)}`);
    if (ground_snow_psf === undefined) return unknown('ground_snow_psf');
    if (ground_snow_psf < snow_climate_psf) return notApplicable('not a snow climate');
    if (slope_per_12 === undefined || over_doors_or_walks === undefined) {
      return unknownOf({ slope_per_12, over_doors_or_walks });
    }
    if (slope_per_12 < steep_slope_per_12 && !over_doors_or_walks) {
      return notApplicable('neither steep nor over doors or walks');
    }
    if (snow_retention === undefined) return unknown('snow_retention');
    if (snow_retention !== 'none') return pass();
    const snow = recorded('ground snow', ground_snow_psf, 'psf');
    const slope = recorded('slope', slope_per_12, 'in 12');
    return fail(
      `no snow retention at a ground snow of ${text(snow)} and a slope of ${text(slope)}` +
        (over_doors_or_walks ? ', over doors or walks' : ''),
      [snow, slope],
    );
  },
});

export const clampedNotPierced = rule({
  id: 'HAZ-06',
  version: 1,
  title: 'Retention is clamped to the seam',
  stage: 'hazards',
  class: 'compatibility',
  severity: 'refuse',
  says:
    'On a standing seam, snow retention is clamped to the seam: a piercing bracket leaks ' +
    'and pins a panel that must move.',
  cites: [COMMON_PRACTICE],
  reads: ['profile', 'snow_retention'],
  settings: {},
  check: ({ profile, snow_retention }) => {
    if (noneIsPlanned(snow_retention)) return notApplicable(NO_RETENTION);
    if (profile === undefined) return unknown('profile');
    if (profile.family !== 'standing-seam') return notApplicable('not a standing seam');
    return snow_retention === 'pierced'
      ? fail(`snow retention pierces the panels of ${profile.name}`)
      : pass();
  },
});

export const retentionObstructs = rule({
  id: 'HAZ-07',
  version: 1,
  title: 'Retained snow is not shed snow',
  stage: 'hazards',
  class: 'code',
  severity: 'refuse',
  says:
    'With snow retention the roof is obstructed: its snow load is not lessened as for an ' +
    'unobstructed slippery surface. Adding retention runs the load again.',
  cites: [cite('asce-7-16', '7.4, from memory'), cite('asce-7-22', '7.4, from memory')],
  reads: ['snow_retention', 'unobstructed_slope_factor_used'],
  settings: {},
  check: ({ snow_retention, unobstructed_slope_factor_used }) => {
    if (noneIsPlanned(snow_retention)) return notApplicable(NO_RETENTION);
    if (unobstructed_slope_factor_used === undefined) {
      return unknown('unobstructed_slope_factor_used');
    }
    return unobstructed_slope_factor_used
      ? fail('the snow load was lessened as for an unobstructed roof, but retention is planned')
      : pass();
  },
});

export const retentionBears = rule({
  id: 'HAZ-08',
  version: 1,
  title: 'The retention bears its snow',
  stage: 'hazards',
  class: 'physics',
  severity: 'refuse',
  says:
    'The down-slope snow on each clamp is within its tested capacity on this very seam and ' +
    'thickness. Without a test there is no number.',
  cites: [COMMON_PRACTICE],
  reads: ['snow_retention', 'snow_retention_utilization'],
  settings: {},
  check: ({ snow_retention, snow_retention_utilization }) => {
    if (noneIsPlanned(snow_retention)) return notApplicable(NO_RETENTION);
    if (snow_retention_utilization === undefined) return unknown('snow_retention_utilization');
    const shown = against('utilization', snow_retention_utilization, 1, '', 3);
    const left = measured(recorded('limit', 1, ''), 1 - snow_retention_utilization, '', 3);
    if (snow_retention_utilization <= 1) return pass(undefined, [shown], left);
    return fail(`snow retention utilization ${text(shown)} is over 1.00`, [shown], left);
  },
});

export const SNOW_RETENTION_RULES = [
  retentionIsDue,
  clampedNotPierced,
  retentionObstructs,
  retentionBears,
] as const;
