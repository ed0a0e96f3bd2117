// The rulebook as a record: commands that draft, withdraw and publish a rules edition, and the
// events they make. An edition is published whole, once, with a reason; nothing of it is changed
// later.

import { z } from 'zod';
import { SEVERITIES, type Edition } from '#rules';
import { Day, Id, Words } from './amounts.js';

const Setting = z.union([z.number(), z.boolean(), z.string().max(200)]);

export const EditionEntry = z.strictObject({
  rule: z.string().max(20),
  version: z.number().int().min(1),
  severity: z.enum(SEVERITIES),
  settings: z.record(z.string().max(60), Setting),
});
export const RulesEdition = z.strictObject({
  number: z.number().int().min(1),
  in_force_from: Day,
  summary: Words,
  entries: z.array(EditionEntry).max(1000),
});

/** One difference of one rule between two editions. */
export const RuleChange = z.strictObject({
  rule: z.string(),
  title: z.string(),
  what: z.string().describe('"rule", "version", "severity" or "setting NAME"'),
  was: z.string().nullable(),
  becomes: z.string().nullable(),
  source: z.string().describe('of the rule itself'),
  because: z.string().optional().describe('what the change rests on, as the drafter says'),
});
export type RuleChange = z.infer<typeof RuleChange>;

/** What is changed of the newest edition; what is not named stays as it is. */
export const Edit = z.strictObject({
  rule: z.string().min(1, 'must name a rule').max(20),
  leave_out: z.boolean().default(false),
  version: z.number().int().min(1).optional(),
  severity: z.enum(SEVERITIES).optional(),
  settings: z.record(z.string().max(60), Setting).optional(),
  source: Words.describe('what the change rests on: a document, a decision of the office'),
});
export type Edit = z.infer<typeof Edit>;

export const DraftedEdits = z.strictObject({
  in_force_from: Day,
  summary: Words,
  edits: z.array(Edit).min(1, 'must change something').max(500),
});
export type DraftedEdits = z.infer<typeof DraftedEdits>;

/** What becomes of jobs under way; in any case decisions stand under the edition they name. */
export const RUNNING_JOBS = ['stand', 'look-again'] as const;
export type RunningJobs = (typeof RUNNING_JOBS)[number];
export const RUNNING_JOBS_WORDS: Readonly<Record<RunningJobs, string>> = {
  stand:
    'Decisions already confirmed stand under the edition they name; ' +
    'what is confirmed from that day on follows the new edition.',
  'look-again':
    'Decisions already confirmed stand, and the office looks again at the surfaces that differ ' +
    'before they are ordered; what is confirmed from that day on follows the new edition.',
};

/** What a preview had found when the edition was published. */
export const PublishedImpact = z.strictObject({
  scope: z.enum(['open', 'all']),
  /** Of the record, up to which it looked. */
  position: z.number().int().min(0),
  checked: z.number().int().min(0),
  words: z.string(),
});
export type PublishedImpact = z.infer<typeof PublishedImpact>;

/** The version of the draft that the person saw; 0 for a new one. */
const Seen = z.number().int().min(0);
const commands = {
  'draft-rules-edition': { draft: Id, seen: Seen, ...DraftedEdits.shape },
  'withdraw-rules-draft': { draft: Id, reason: Words },
  'publish-rules-edition': {
    draft: Id,
    seen: Seen,
    running_jobs: z.enum(RUNNING_JOBS),
    reason: Words,
    impact: PublishedImpact.optional(),
  },
} as const;

const schema = <T extends keyof typeof commands>(type: T) =>
  z.strictObject({ type: z.literal(type), ...commands[type] }).meta({ id: type });
export const RulebookCommand = z.discriminatedUnion('type', [
  schema('draft-rules-edition'),
  schema('withdraw-rules-draft'),
  schema('publish-rules-edition'),
]);
export type RulebookCommand = z.infer<typeof RulebookCommand>;
export type RulebookCommandInput = z.input<typeof RulebookCommand>;

export const RULEBOOK_EVENTS = {
  'rules-edition-drafted/1': z.strictObject({
    draft: Id,
    base: z.number().int(),
    edition: RulesEdition,
    changes: z.array(RuleChange),
    edits: z.array(Edit),
  }),
  'rules-draft-withdrawn/1': z.strictObject({ draft: Id, reason: Words }),
  'rules-edition-published/1': z.strictObject({
    edition: RulesEdition,
    reason: Words,
    draft: Id.optional(),
    changes: z.array(RuleChange).optional(),
    running_jobs: z.enum(RUNNING_JOBS).optional(),
    impact: PublishedImpact.optional(),
  }),
} as const satisfies Record<keyof RulebookEventData, z.ZodType>;
export interface RulebookEventData {
  'rules-edition-drafted/1': {
    readonly draft: string;
    /** Number of the edition it changes. */
    readonly base: number;
    readonly edition: Edition;
    readonly changes: readonly RuleChange[];
    readonly edits: readonly Edit[];
  };
  'rules-draft-withdrawn/1': { readonly draft: string; readonly reason: string };
  'rules-edition-published/1': {
    readonly edition: Edition;
    readonly reason: string;
    /** Absent where the edition came with the product. */
    readonly draft?: string;
    readonly changes?: readonly RuleChange[];
    readonly running_jobs?: RunningJobs;
    readonly impact?: PublishedImpact;
  };
}
export type RulebookEvent = {
  [T in keyof RulebookEventData]: { readonly type: T; readonly data: RulebookEventData[T] };
}[keyof RulebookEventData];
