// When a licensed engineer must sign: whatever spans open framing, and every reason that stands
// beside it. The small-job path is off unless a company's edition switches it on.

import { COMMON_PRACTICE } from '#engineering';
import type { Facts } from './facts.js';
import { against, listed, measured, recorded, text } from './figures.js';
import { fail, pass, rule, unknownOf, type Figure, type Measured } from './rule.js';
import { worstUtilization } from './zones.js';

interface Reason {
  readonly words: string;
  readonly figures: readonly Figure[];
}

interface Limits {
  readonly utilization_limit: number;
  readonly unconfirmed_utilization_limit: number;
  readonly small_job_path: boolean;
  readonly small_job_utilization_limit: number;
  readonly small_job_area_squares: number;
}

export const signOffIsRequired = rule({
  id: 'SIGN-01',
  version: 1,
  title: 'Engineer sign-off is required',
  stage: 'sign-off',
  class: 'house-policy',
  severity: 'require',
  says:
    'A licensed engineer signs for open framing (unless the small-job path applies), a capacity ' +
    'that is only calculated, loads outside the method or on figures to be confirmed, bracing ' +
    'sheets stripped, framing added, utilization over the limit, and where office, owner or ' +
    'authority asks.',
  cites: [COMMON_PRACTICE],
  reads: [
    'open_framing',
    'zones',
    'outside_method',
    'unconfirmed_figures',
    'removes_bracing_sheets',
    'framing_added',
    'sign_off_asked',
    'risk_category',
    'area_squares',
    'permit_question_answered',
    'small_job_acknowledged',
  ],
  settings: {
    utilization_limit: 0.95,
    unconfirmed_utilization_limit: 0.8,
    small_job_path: false,
    small_job_utilization_limit: 0.8,
    small_job_area_squares: 20,
  },
  check: (facts, limits) => {
    const reasons = [...spanning(facts, limits), ...fromZones(facts, limits), ...fromWork(facts)];
    if (reasons.length > 0) {
      return fail(
        `a licensed engineer signs: ${reasons.map((each) => each.words).join('; ')}`,
        reasons.flatMap((each) => each.figures),
        reasons.some((each) => each.figures.length > 0) ? utilizationLeft(facts, limits) : {},
      );
    }
    const { open_framing, zones, outside_method, unconfirmed_figures } = facts;
    const needed = { open_framing, zones, outside_method, unconfirmed_figures };
    return Object.values(needed).includes(undefined)
      ? unknownOf(needed)
      : pass('nothing asks for a sign-off', undefined, utilizationLeft(facts, limits));
  },
});

export const SIGN_OFF_RULES = [signOffIsRequired] as const;

type SignOffFacts = Pick<
  Facts,
  | 'open_framing'
  | 'zones'
  | 'outside_method'
  | 'unconfirmed_figures'
  | 'removes_bracing_sheets'
  | 'framing_added'
  | 'sign_off_asked'
  | 'risk_category'
  | 'area_squares'
  | 'permit_question_answered'
  | 'small_job_acknowledged'
>;

const because = (words: string, ...figures: readonly Figure[]): readonly Reason[] => [
  { words, figures },
];

function spanning(facts: SignOffFacts, limits: Limits): readonly Reason[] {
  if (!facts.open_framing) return [];
  if (!limits.small_job_path) return because('the panel spans open framing');
  const worst = worstUtilization(facts.zones ?? []);
  const area = facts.area_squares;
  const short = [
    ...(facts.risk_category === 'I' ? [] : ['risk category I']),
    ...(worst !== undefined && worst <= limits.small_job_utilization_limit
      ? []
      : [`utilization within ${limits.small_job_utilization_limit}`]),
    ...(area !== undefined && area <= limits.small_job_area_squares
      ? []
      : [`at most ${limits.small_job_area_squares} squares`]),
    ...(facts.permit_question_answered ? [] : ['the permit question answered']),
    ...(facts.small_job_acknowledged ? [] : ["the customer's written acknowledgment"]),
  ];
  if (short.length === 0) return [];
  return because(`the panel spans open framing, and the small-job path lacks ${listed(short)}`);
}

function fromZones(facts: SignOffFacts, limits: Limits): readonly Reason[] {
  const zones = facts.zones ?? [];
  const calculated = zones
    .filter((each) => each.calculated_only)
    .map((each) => `zone ${each.zone}`);
  const worst = worstUtilization(zones);
  const over = (limit: number, why: string): readonly Reason[] => {
    if (worst === undefined || worst <= limit) return [];
    const shown = against('worst utilization', worst, limit, '', 3);
    const most = recorded('limit', limit, '');
    return because(`utilization ${text(shown)} is over ${text(most)}${why}`, shown, most);
  };
  return [
    ...(calculated.length > 0
      ? because(`capacity is only calculated in ${listed(calculated)}`)
      : []),
    ...over(limits.utilization_limit, ''),
    ...((facts.unconfirmed_figures ?? []).length > 0
      ? over(limits.unconfirmed_utilization_limit, ' on figures to be confirmed')
      : []),
  ];
}

/** What is left to the limit of utilization that counts here; nothing where none is known. */
function utilizationLeft({ zones, unconfirmed_figures }: SignOffFacts, limits: Limits): Measured {
  const worst = worstUtilization(zones ?? []);
  if (worst === undefined) return {};
  const limit =
    (unconfirmed_figures ?? []).length > 0
      ? Math.min(limits.utilization_limit, limits.unconfirmed_utilization_limit)
      : limits.utilization_limit;
  return measured(recorded('limit', limit, ''), limit - worst, '', 3);
}

function fromWork(facts: SignOffFacts): readonly Reason[] {
  const outside = facts.outside_method ?? [];
  return [
    ...(outside.length > 0 ? because(`loads outside the method: ${listed(outside)}`) : []),
    ...(facts.removes_bracing_sheets
      ? because('sheets that may brace the frame are stripped')
      : []),
    ...(facts.framing_added ? because('framing is added') : []),
    ...(facts.sign_off_asked === undefined ? [] : because(`asked for by ${facts.sign_off_asked}`)),
  ];
}
