// The shapes of what the routes of a job give, for the OpenAPI document. The types of the contract
// lead: a schema that parts from them does not compile.

import { z } from 'zod';
import { PRIORITIES, STAGES, SURFACE_KINDS, type JobView, type Rehearsal } from '#jobs/contract';
import { RefusalSchema } from '../http/problem-schema.js';

const Status = z.enum([
  'not-started',
  'confirmed',
  'needs-recheck',
  'not-needed',
  'waiting',
  'declined',
]);
const EditionRef = z.object({ number: z.int(), digest: z.string() });
const text = z.string();
const maybe = text.nullable();
/** Kept as it was recorded; its own shape stands in the contract. */
const recorded = z.record(z.string(), z.unknown());

const FindingSchema = z
  .looseObject({
    rule: text,
    version: z.int(),
    title: text,
    class: text,
    severity: text,
    outcome: text,
    words: text,
  })
  .meta({ id: 'Finding' });

const CauseSchema = z
  .object({
    path: text,
    from: z.unknown(),
    to: z.unknown(),
    at: text,
    by: text,
    reason: maybe,
  })
  .meta({ id: 'Cause' });

const StageSchema = z
  .object({
    stage: z.enum(STAGES),
    status: Status,
    content: recorded.nullable(),
    findings: z.array(FindingSchema),
    overrides: z.array(z.object({ rule: text, reason: text, says: text })),
    acknowledged: z.array(text),
    causes: z.array(CauseSchema),
    confirmed: z.object({ by: text, role: text, at: text }).nullable(),
    rules_edition: EditionRef.nullable(),
    catalogue_edition: EditionRef.nullable(),
    evaluation: recorded.optional(),
  })
  .meta({ id: 'Stage' });

const LicenseSchema = z.object({ name: text, number: text, jurisdiction: text, expires: text });
const SignOffSchema = z
  .object({
    stage: z.literal('sign-off'),
    status: Status,
    required: z.array(text),
    request: maybe,
    standing: maybe,
    license: LicenseSchema.nullable(),
    conditions: maybe,
    differences: z.array(
      z.object({ surface: text, path: text, from: z.unknown(), to: z.unknown() }),
    ),
  })
  .meta({ id: 'SignOff' });

const SurfaceSchema = z
  .object({
    id: text,
    building: text,
    name: text,
    kind: z.enum(SURFACE_KINDS),
    withdrawn: maybe,
    stage: z.enum([...STAGES, 'done']),
    tear_off: z.enum(['not-needed', 'due', 'confirmed']),
    on_hold: z.boolean(),
    stages: z.object({
      style: StageSchema,
      coating: StageSchema,
      hazards: StageSchema,
      substrate: StageSchema,
      gauge: StageSchema,
    }),
    sign_off: SignOffSchema,
  })
  .meta({ id: 'Surface' });

const EarlierSchema = z.object({ value: z.unknown(), how: text, by: text, at: text });
const FactSchema = z
  .object({
    path: text,
    name: text,
    definition: recorded,
    value: z.unknown(),
    how: text,
    source: maybe,
    by: text,
    at: text,
    effectiveAt: text,
    earlier: z.array(EarlierSchema),
  })
  .meta({ id: 'Fact' });

const RequestSchema = z
  .object({
    request: text,
    surfaces: z.array(text),
    engineer: text,
    scope: text,
    exclusions: text,
    asked: z.object({ by: text, at: text }),
    expires: text,
    standing: text,
    license: LicenseSchema.nullable(),
    words: maybe,
  })
  .meta({ id: 'SignOffRequest' });

export const TakeOffSummary = z.object({
  surface: text,
  number: z.int(),
  recorded: z.object({ by: text, at: text }),
  measured_from: text,
  stands: z.enum(['current', 'stale']),
  stale_because: z.array(text),
  pieces: z.int(),
  area_ft2: text,
  longest_in: text,
});

export const JobViewSchema = z
  .object({
    id: text,
    version: z.int(),
    number: text,
    name: text,
    site: text,
    parties: z.record(z.string(), text),
    priorities: z.array(z.enum(PRIORITIES)),
    due: maybe,
    jurisdiction: maybe,
    assigned: maybe,
    stage: z.enum([...STAGES, 'done', 'no-surfaces']),
    surfaces_done: z.int(),
    buildings: z.array(z.object({ id: text, name: text })),
    surfaces: z.array(SurfaceSchema),
    facts: z.array(FactSchema),
    requests: z.array(RequestSchema),
    take_offs: z.array(TakeOffSummary),
    after: recorded,
    notes: z.array(z.object({ about: maybe, words: text, by: text, at: text })),
  })
  .meta({ id: 'Job' });

export const RehearsalSchema = z
  .object({
    surface: text,
    stage: z.enum(STAGES),
    findings: z.array(FindingSchema),
    refusals: z.array(RefusalSchema),
    reopens: z.array(z.object({ surface: text, stage: z.enum(STAGES), because: z.array(text) })),
    evaluation: recorded.optional(),
    take_off: recorded.optional(),
  })
  .meta({ id: 'Rehearsal' });

/** Every key of the contract's views stands in the schema, and no other. */
type SameKeys<A, B> = [keyof A] extends [keyof B]
  ? [keyof B] extends [keyof A]
    ? true
    : never
  : never;
export const COMPLETE: readonly [
  SameKeys<JobView, z.output<typeof JobViewSchema>>,
  SameKeys<JobView['surfaces'][number], z.output<typeof SurfaceSchema>>,
  SameKeys<JobView['surfaces'][number]['stages']['style'], z.output<typeof StageSchema>>,
  SameKeys<Rehearsal, z.output<typeof RehearsalSchema>>,
] = [true, true, true, true];

export const JobRowSchema = z
  .object({
    id: text,
    number: text,
    name: text,
    customer: text,
    site: text,
    stage: text,
    stage_words: text,
    state: z.enum(['Ready', 'Blocked', 'Waiting', 'Done']),
    surfaces_done: z.int(),
    surfaces: z.int(),
    next_action: text,
    on: text,
    due: maybe,
    assigned: maybe,
    updated_at: text,
  })
  .meta({ id: 'JobRow' });

export const JobPageSchema = z
  .object({
    rows: z.array(JobRowSchema),
    total: z.int(),
    page: z.int(),
    size: z.int(),
    listsAt: z.int(),
  })
  .meta({ id: 'JobPage' });

export const HistorySchema = z
  .object({
    entries: z.array(
      z.object({
        version: z.int(),
        pos: z.int(),
        id: text,
        type: text,
        words: text,
        by: z.object({ name: text, role: text }),
        recordedAt: text,
        effectiveAt: text,
        surface: z.array(text).optional(),
        data: recorded,
      }),
    ),
  })
  .meta({ id: 'History' });
