// Where the zones of each figure lie in plan: strips along named edges of a roof plane, in order of
// precedence; the last zone is the rest. Widths are multiples of dimension a, or of h in Fig.
// 30.3-2A. ASCE/SEI 7-16 and 7-22 figures second-hand (7-22 gable and hip by one reader); the
// plans of 7-10 and of the monoslope over 10 degrees from memory.

/** The edges of one roof plane; `corner` is the eave of the neighboring plane of a hip roof. */
export type Edge = 'eave' | 'rake' | 'high' | 'ridge' | 'hip' | 'corner' | 'end' | 'side';

/** In every strip at once: within n widths of the edge. */
export interface ZoneRule {
  readonly zone: string;
  readonly near: readonly (readonly [edge: Edge, n: number])[];
}

export interface ZonePlan {
  readonly unit: 'a' | 'h';
  readonly rules: readonly ZoneRule[];
  /** The zone of what no strip takes. */
  readonly rest: string;
  readonly unconfirmed?: string;
}

const rules = (
  ...rows: readonly (readonly [zone: string, ...near: [Edge, number][]])[]
): ZoneRule[] => rows.map(([zone, ...near]) => ({ zone, near }));

const MEMORY = 'the zone plan of this figure is from memory';
const ONE_READER = 'one reading of the zone plan of this figure';

/** 7-16 and 7-22, theta <= 7 (monoslope <= 3): strips of 0.6 h, corners in the shape of an L. */
export const PLAN_2A: ZonePlan = {
  unit: 'h',
  rules: rules(
    ['3', ['end', 0.6], ['side', 0.2]],
    ['3', ['end', 0.2], ['side', 0.6]],
    ['2', ['end', 0.6]],
    ['2', ['side', 0.6]],
    ['1', ['end', 1.2]],
    ['1', ['side', 1.2]],
  ),
  rest: "1'",
};

export const PLAN_7_10_FLAT: ZonePlan = {
  unit: 'a',
  rules: rules(['3', ['end', 1], ['side', 1]], ['2', ['end', 1]], ['2', ['side', 1]]),
  rest: '1',
};

export const PLAN_7_10_GABLE: ZonePlan = {
  unit: 'a',
  rules: rules(
    ['3', ['eave', 1], ['rake', 1]],
    ['3', ['ridge', 1], ['rake', 1]],
    ['2', ['eave', 1]],
    ['2', ['rake', 1]],
    ['2', ['ridge', 1]],
  ),
  rest: '1',
  unconfirmed: MEMORY,
};

export const PLAN_7_10_HIP: ZonePlan = {
  unit: 'a',
  rules: rules(
    ['3', ['eave', 1], ['corner', 1]],
    ['2', ['eave', 1]],
    ['2', ['ridge', 1]],
    ['2', ['hip', 1]],
  ),
  rest: '1',
  unconfirmed: MEMORY,
};

export const PLAN_7_16_GABLE: ZonePlan = {
  unit: 'a',
  rules: rules(
    ['3e', ['eave', 1], ['rake', 1]],
    ['3r', ['ridge', 1], ['rake', 1]],
    ['2n', ['rake', 1]],
    ['2e', ['eave', 1]],
    ['2r', ['ridge', 1]],
  ),
  rest: '1',
};

export const PLAN_7_16_HIP: ZonePlan = {
  unit: 'a',
  rules: rules(
    ['3', ['eave', 1], ['corner', 1]],
    ['2e', ['eave', 1]],
    ['2r', ['ridge', 1]],
    ['2r', ['hip', 1]],
  ),
  rest: '1',
};

/** 2B and 2C: zone 3 at the ridge ends; the eave strip is zone 1. */
export const PLAN_7_22_GABLE: ZonePlan = {
  unit: 'a',
  rules: rules(['3', ['ridge', 1], ['rake', 1]], ['2', ['rake', 1]], ['2', ['ridge', 1]]),
  rest: '1',
  unconfirmed: ONE_READER,
};

export const PLAN_7_22_STEEP_GABLE: ZonePlan = {
  unit: 'a',
  rules: rules(['3', ['eave', 1], ['rake', 1]], ['2', ['rake', 1]]),
  rest: '1',
  unconfirmed: ONE_READER,
};

export const PLAN_7_22_HIP: ZonePlan = {
  unit: 'a',
  rules: rules(['3', ['eave', 1]], ['2', ['ridge', 1]], ['2', ['hip', 1]]),
  rest: '1',
  unconfirmed: ONE_READER,
};

/** 5A, over 3 to 10 degrees. */
export const PLAN_5A: ZonePlan = {
  unit: 'a',
  rules: rules(
    ["3'", ['high', 2], ['rake', 4]],
    ["2'", ['high', 2]],
    ['3', ['eave', 2], ['rake', 2]],
    ['2', ['eave', 1]],
    ['2', ['rake', 1]],
  ),
  rest: '1',
};

/** 5B, over 10 to 30 degrees: the extents of 5A, which are the largest, with its three names. */
export const PLAN_5B: ZonePlan = {
  unit: 'a',
  rules: rules(
    ['3', ['high', 2], ['rake', 4]],
    ['3', ['eave', 2], ['rake', 2]],
    ['2', ['high', 2]],
    ['2', ['eave', 1]],
    ['2', ['rake', 1]],
  ),
  rest: '1',
  unconfirmed: MEMORY,
};
