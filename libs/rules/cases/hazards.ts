// Cases of the hazard rules.

import type { HAZARD_RULES } from '../hazards.js';
import type { RuleCases } from './rule-cases.js';
import { gap, zone } from './samples.js';

const unread = { unconfirmed_figures: ['slope factor'] } as const;

export const HAZARD_CASES = {
  'HAZ-01': {
    passes: [
      { outside_method: [] },
      { outside_method: ['mean roof height 75 ft over 60 ft'], pressures_by_engineer: true },
    ],
    refuses: [
      { outside_method: ['mean roof height 75 ft over 60 ft', 'unknown roof shape'] },
      { outside_method: ['open structure without method'], pressures_by_engineer: false },
    ],
    unknown: [{}, { pressures_by_engineer: true }],
  },
  'HAZ-02': {
    passes: [
      { unconfirmed_figures: [] },
      { unconfirmed_figures: [], zones: [zone('1', 0.99, 0.5)] },
    ],
    refuses: [
      { ...unread },
      { ...unread, zones: [gap('1', 'no chart row')] },
      { ...unread, zones: [zone('1', 0.8, 0.3)] },
      { ...unread, zones: [zone('1', 0.5, 0.4), zone('2', 0.3, 0.8001)] },
    ],
    unknown: [{}, { zones: [zone('1', 0.9, 0.9)] }],
    withSettings: [
      {
        settings: { utilization_limit: 0.8 },
        facts: { ...unread, zones: [zone('1', 0.8, 0.3)] },
        outcome: 'fail',
        severity: 'caution',
      },
      {
        settings: { utilization_limit: 0.8 },
        facts: { ...unread, zones: [zone('1', 0.80001, 0.3)] },
        outcome: 'fail',
        severity: 'require',
      },
      {
        settings: { utilization_limit: 0.5 },
        facts: { ...unread, zones: [zone('1', 0.1, 0.6)] },
        outcome: 'fail',
        severity: 'require',
      },
      { settings: { utilization_limit: 0.8 }, facts: unread, outcome: 'fail', severity: 'caution' },
    ],
  },
  'HAZ-03': {
    passes: [{ hazards_without_source: [] }],
    refuses: [{ hazards_without_source: ['wind', 'hail'] }],
    unknown: [{}],
  },
  'HAZ-04': {
    passes: [
      { enclosure: 'enclosed', any_side_open: false, doors_open_in_storms: false },
      { enclosure: 'partially-enclosed', any_side_open: true, doors_open_in_storms: true },
    ],
    refuses: [
      { enclosure: 'enclosed', any_side_open: true, doors_open_in_storms: false },
      { enclosure: 'enclosed', any_side_open: false, doors_open_in_storms: true },
    ],
    unknown: [
      { any_side_open: false, doors_open_in_storms: false },
      { enclosure: 'enclosed', doors_open_in_storms: false },
      { enclosure: 'enclosed', any_side_open: false },
    ],
  },
} satisfies Record<(typeof HAZARD_RULES)[number]['id'], RuleCases>;
