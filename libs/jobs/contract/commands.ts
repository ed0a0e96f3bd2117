// Every command a job takes, checked at the edge. Person, role and time are added by the service and
// never come from outside.

import { z } from 'zod';
import {
  COLOR_GROUPS,
  HOWS,
  METALLIC_COATINGS,
  METALS,
  PAINT_SYSTEMS,
  PRIORITIES,
  STAGES,
  SURFACE_KINDS,
} from '#rules';
import {
  amountIn,
  Amount,
  Day,
  Decimal,
  Digest,
  FileRef,
  Id,
  Moment,
  Name,
  PartyRef,
  Source,
  Words,
} from './amounts.js';
import { AFTER_ORDER_COMMANDS } from './after-order.js';
import { TAKE_OFF_COMMANDS } from './take-off.js';
import { ZoneAttachment } from './commands-parts.js';
import { FACT_NAMES, type FactName } from './fact-dictionary.js';

const Spacing = z.strictObject({ zone: Name.optional(), v: Decimal });
const FactValue = z.union([
  Amount,
  z.boolean(),
  z.string().min(1).max(2000),
  z.array(Spacing).max(500),
  z.array(z.string().max(40)).max(20),
]);

export const FactEntry = z.strictObject({
  /** null for the site and the job; else the building or surface id. */
  on: Id.nullable(),
  fact: z.enum(FACT_NAMES as readonly [FactName, ...FactName[]]),
  value: FactValue,
  how: z.enum(HOWS),
  source: Words.optional(),
  files: z.array(FileRef).max(20).optional(),
});
export type FactEntry = z.infer<typeof FactEntry>;

/** A guidance or house-policy finding set aside, and why; kept for ever. */
const Override = z.strictObject({ rule: z.string().max(20), reason: Words });
const onStage = {
  surface: Id,
  overrides: z.array(Override).max(50).default([]),
  /** Cautions the person has read, by rule id. */
  acknowledges: z.array(z.string().max(20)).max(100).default([]),
  reason: Words.optional().describe('needed where the stage was confirmed before'),
};

const Parties = z.strictObject({
  customer: PartyRef,
  owner: PartyRef.optional(),
  general_contractor: PartyRef.optional(),
  engineer: PartyRef.optional(),
  installer: PartyRef.optional(),
});

const NewBuilding = z.strictObject({ id: Id, name: Name });
const NewSurface = z.strictObject({
  id: Id,
  building: Id,
  name: Name,
  kind: z.enum(SURFACE_KINDS),
});

export const ZonePressure = z.strictObject({
  zone: Name,
  part: z.enum(['roof', 'overhang', 'wall']),
  inward: amountIn('psf').describe('toward the surface, positive'),
  outward: amountIn('psf').describe('away from the surface (uplift), negative'),
});
const WindEntered = z.strictObject({
  method: z.literal('entered'),
  basis: z.enum(['strength', 'ASD']),
  zones: z.array(ZonePressure).min(1).max(20),
  by_engineer: z.boolean(),
  source: Source,
});
const WindCalculated = z.strictObject({
  method: z.literal('calculated'),
  edition: z.enum(['7-10', '7-16', '7-22']),
});
const SnowEntered = z.strictObject({
  method: z.literal('entered'),
  basis: z.enum(['strength', 'ASD']),
  roof: amountIn('psf').describe('design roof snow load, worst of balanced, unbalanced and drift'),
  by_engineer: z.boolean(),
  source: Source,
});
const THERMAL_CONDITIONS = [
  'heated',
  'just-above-freezing',
  'cold-ventilated',
  'unheated',
  'open-air',
  'freezer',
  'greenhouse',
] as const;
const SnowCalculated = z.strictObject({
  method: z.literal('calculated'),
  edition: z.enum(['7-10', '7-16', '7-22']),
  roof_exposure: z.enum(['fully', 'partially', 'sheltered']),
  thermal: z.enum(THERMAL_CONDITIONS),
  R_roof: Decimal.optional().describe('thermal resistance of the roof, h ft2 F/Btu'),
  ventilated: z.boolean().default(false),
  surface: z.enum(['slippery-unobstructed', 'other']),
});
const NotExposed = z.strictObject({ method: z.literal('not-applicable'), why: Words });

export const Hazards = z.strictObject({
  wind: z.discriminatedUnion('method', [WindEntered, WindCalculated, NotExposed]),
  snow: z.discriminatedUnion('method', [SnowEntered, SnowCalculated, NotExposed]),
  roof_live: amountIn('psf').optional(),
  temperature: z
    .strictObject({ low: amountIn('degF'), high: amountIn('degF'), source: Source })
    .optional(),
});
export type Hazards = z.infer<typeof Hazards>;

export const Attachment = z.strictObject({
  fastener: Id,
  zones: z.array(ZoneAttachment).min(1).max(20),
});
export type Attachment = z.infer<typeof Attachment>;

export const License = z.strictObject({
  name: Name,
  number: Name,
  jurisdiction: z.string().regex(/^[A-Z]{2}$/, 'must be a two-letter state or territory'),
  expires: Day,
});
export type License = z.infer<typeof License>;

/** What a design from an engineer settles; the gauge stage adopts it. */
const EngineerConditions = z.strictObject({
  thickness: amountIn('in').optional(),
  attachment: Attachment.optional(),
  support_spacing: amountIn('in').optional(),
  words: Words,
});
export type EngineerConditions = z.infer<typeof EngineerConditions>;

const commands = {
  'open-job': {
    number: z.string().regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'must be like 2026-0142'),
    name: Name,
    site: PartyRef,
    parties: Parties,
    priorities: z.array(z.enum(PRIORITIES)).max(6).default([]),
    due: Day.optional(),
    jurisdiction: z
      .string()
      .regex(/^[A-Z]{2}$/)
      .optional(),
    buildings: z.array(NewBuilding).max(50).default([]),
    surfaces: z.array(NewSurface).max(200).default([]),
  },
  'describe-job': {
    name: Name.optional(),
    priorities: z.array(z.enum(PRIORITIES)).max(6).optional(),
    parties: Parties.partial().optional(),
    due: Day.nullable().optional(),
    jurisdiction: z
      .string()
      .regex(/^[A-Z]{2}$/)
      .optional(),
    assigned: z.uuid().nullable().optional(),
    reason: Words.optional(),
  },
  'add-building': NewBuilding.shape,
  'add-surface': NewSurface.shape,
  'withdraw-surface': { surface: Id, reason: Words },
  'record-facts': {
    facts: z.array(FactEntry).min(1).max(200),
    reason: Words.optional(),
    /** When it was true, where that is not now: a correction. */
    effectiveAt: Moment.optional(),
    corrects: z.string().max(60).optional().describe('id of the entry that was wrong'),
  },
  'choose-style': {
    ...onStage,
    profile: Id,
    width: amountIn('in'),
    lap_sealant: z.boolean().default(false),
  },
  'choose-coating': {
    ...onStage,
    metal: z.enum(METALS),
    metallic_coating: z.enum(METALLIC_COATINGS),
    paint_system: z.enum(PAINT_SYSTEMS),
    color_group: z.enum(COLOR_GROUPS),
    color: Name.optional().describe('may stay open until the order'),
  },
  'assess-hazards': { ...onStage, hazards: Hazards },
  'confirm-substrate': { ...onStage, provisional: z.boolean().default(false) },
  'select-gauge': {
    ...onStage,
    option: z.string().max(60).describe('an option of the evaluation, by its id'),
    attachment: Attachment,
    why: Words.optional().describe('needed where it is not the recommended option'),
  },
  'reopen-stage': { surface: Id, stage: z.enum(STAGES).exclude(['sign-off']), reason: Words },
  'record-tear-off': {
    surface: Id,
    finding: z.enum(['as-assumed', 'different']),
    words: Words,
    files: z.array(FileRef).max(20).default([]),
  },
  'request-sign-off': {
    request: Id,
    surfaces: z.array(Id).min(1).max(50),
    engineer: PartyRef,
    scope: Words,
    exclusions: z.string().trim().max(4000).default(''),
    expires: Day,
  },
  'answer-sign-off': {
    request: Id,
    answer: z.enum(['approve', 'approve-with-conditions', 'decline']),
    license: License,
    statement: Words,
    conditions: EngineerConditions.optional(),
    reasons: Words.optional(),
    exclusions: z.string().trim().max(4000).default(''),
    packet: Digest.describe('digest of the packet the engineer saw'),
  },
  'record-engineer-design': {
    design: Id,
    surfaces: z.array(Id).min(1).max(50),
    license: License,
    documents: z.array(FileRef).min(1).max(20),
    dated: Day,
    scope: Words,
    exclusions: z.string().trim().max(4000).default(''),
    adopts: EngineerConditions,
  },
  'reaffirm-sign-off': {
    request: Id,
    license: License,
    statement: Words,
    /** The differences the engineer saw, old to new; they must be the ones that stand. */
    differences: z
      .array(z.strictObject({ surface: Id, path: z.string(), from: z.unknown(), to: z.unknown() }))
      .min(1),
  },
  'revoke-sign-off': { request: Id, reason: Words },
  'add-note': { about: Id.nullable(), words: Words, files: z.array(FileRef).max(20).default([]) },
  ...TAKE_OFF_COMMANDS,
  ...AFTER_ORDER_COMMANDS,
} as const;

type Shapes = typeof commands;
export type CommandType = keyof Shapes;

type SchemaOf<T extends CommandType> = z.ZodObject<
  { -readonly [K in keyof Shapes[T]]: Shapes[T][K] extends z.ZodType ? Shapes[T][K] : never } & {
    type: z.ZodLiteral<T>;
  },
  z.core.$strict
>;
const schemas = Object.fromEntries(
  Object.entries(commands).map(([type, shape]) => [
    type,
    z.strictObject({ type: z.literal(type), ...shape }).meta({ id: type }),
  ]),
) as unknown as { readonly [T in CommandType]: SchemaOf<T> };

export const commandSchema = <T extends CommandType>(type: T): SchemaOf<T> => schemas[type];

type AnySchema = SchemaOf<'open-job'>;
/** One command, by its `type`. */
export const Command = z
  .discriminatedUnion('type', Object.values(schemas) as unknown as [AnySchema, ...AnySchema[]])
  .meta({ id: 'Command' }) as unknown as z.ZodType<Command, CommandInput>;

export type CommandOf<T extends CommandType> = z.output<SchemaOf<T>>;
export type Command = { [T in CommandType]: CommandOf<T> }[CommandType];
/** What a caller sends: defaults may be left out. */
export type CommandInput = { [T in CommandType]: z.input<SchemaOf<T>> }[CommandType];
