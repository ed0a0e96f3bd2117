// Cases of the sign-off rule.

import type { SIGN_OFF_RULES } from '../sign-off.js';
import type { RuleCases } from './rule-cases.js';
import { gap, zone } from './samples.js';

const plain = {
  open_framing: false,
  zones: [zone('1', 0.95, 0.5)],
  outside_method: [],
  unconfirmed_figures: [],
} as const;
const smallPath = {
  utilization_limit: 0.95,
  unconfirmed_utilization_limit: 0.8,
  small_job_path: true,
  small_job_utilization_limit: 0.8,
  small_job_area_squares: 20,
} as const;
const shed = {
  ...plain,
  open_framing: true,
  zones: [zone('1', 0.8, 0.5)],
  risk_category: 'I',
  area_squares: 20,
  permit_question_answered: true,
  small_job_acknowledged: true,
} as const;

export const SIGN_OFF_CASES = {
  'SIGN-01': {
    passes: [
      plain,
      { ...plain, removes_bracing_sheets: false, framing_added: false },
      { ...plain, zones: [zone('1', 0.8, 0.5)], unconfirmed_figures: ['slope factor'] },
    ],
    refuses: [
      { open_framing: true },
      shed,
      { ...plain, zones: [zone('1', 0.9500001, 0.5)] },
      { ...plain, zones: [zone('1', 0.5, 0.81)], unconfirmed_figures: ['slope factor'] },
      {
        ...plain,
        zones: [
          { ...zone('1', 0.5, 0.5), calculated_only: true },
          zone('2', 0.5, 0.5),
          { ...zone('3', 0.5, 0.5), calculated_only: true },
        ],
      },
      { ...plain, outside_method: ['mean roof height 75 ft over 60 ft'] },
      { ...plain, removes_bracing_sheets: true },
      { ...plain, framing_added: true },
      { ...plain, sign_off_asked: 'owner' },
      {
        open_framing: true,
        zones: [{ ...zone('1', 0.99, 0.5), calculated_only: true }],
        outside_method: ['unknown roof shape', 'open structure without method'],
        unconfirmed_figures: ['slope factor'],
        removes_bracing_sheets: true,
        framing_added: true,
        sign_off_asked: 'authority',
      },
    ],
    unknown: [
      {},
      { ...plain, open_framing: undefined },
      { ...plain, zones: undefined },
      { ...plain, outside_method: undefined },
      { ...plain, unconfirmed_figures: undefined },
    ],
    withSettings: [
      { settings: smallPath, facts: shed, outcome: 'pass' },
      { settings: smallPath, facts: { ...shed, sign_off_asked: 'authority' }, outcome: 'fail' },
      { settings: smallPath, facts: { ...shed, risk_category: 'II' }, outcome: 'fail' },
      { settings: smallPath, facts: { ...shed, area_squares: 20.1 }, outcome: 'fail' },
      { settings: smallPath, facts: { ...shed, area_squares: undefined }, outcome: 'fail' },
      { settings: smallPath, facts: { ...shed, zones: [zone('1', 0.801, 0.5)] }, outcome: 'fail' },
      {
        settings: smallPath,
        facts: { ...shed, zones: [gap('1', 'no chart row')] },
        outcome: 'fail',
      },
      { settings: smallPath, facts: { ...shed, zones: undefined }, outcome: 'fail' },
      { settings: smallPath, facts: { ...shed, permit_question_answered: false }, outcome: 'fail' },
      {
        settings: smallPath,
        facts: { ...shed, small_job_acknowledged: undefined },
        outcome: 'fail',
      },
    ],
  },
} satisfies Record<(typeof SIGN_OFF_RULES)[number]['id'], RuleCases>;
