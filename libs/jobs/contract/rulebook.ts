// The rulebook as a record: commands that draft, withdraw and publish a rules edition, and the
// events they make. An edition is published whole, once, with a reason; nothing of it is changed
// later.

import { z } from 'zod';
import { SEVERITIES, type Edition } from '#rules';
import { Day, Words } from './amounts.js';

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
  source: z.string(),
});
export type RuleChange = z.infer<typeof RuleChange>;

/** What is changed of the newest edition; what is not named stays as it is. */
const Edit = z.strictObject({
  rule: z.string().max(20),
  leave_out: z.boolean().default(false),
  version: z.number().int().min(1).optional(),
  severity: z.enum(SEVERITIES).optional(),
  settings: z.record(z.string().max(60), Setting).optional(),
});
export type Edit = z.infer<typeof Edit>;

const commands = {
  'draft-rules-edition': {
    in_force_from: Day,
    summary: Words,
    edits: z.array(Edit).min(1).max(500),
    source: Words.describe('what the change rests on: a document, a decision of the office'),
  },
  'withdraw-rules-draft': { reason: Words },
  'publish-rules-edition': { number: z.number().int().min(1), reason: Words },
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
    edition: RulesEdition,
    changes: z.array(RuleChange),
    source: Words,
  }),
  'rules-draft-withdrawn/1': z.strictObject({ number: z.number().int(), reason: Words }),
  'rules-edition-published/1': z.strictObject({
    edition: RulesEdition,
    changes: z.array(RuleChange).default([]),
    reason: Words,
  }),
} as const satisfies Record<keyof RulebookEventData, z.ZodType>;
export interface RulebookEventData {
  'rules-edition-drafted/1': {
    readonly edition: Edition;
    readonly changes: readonly RuleChange[];
    readonly source: string;
  };
  'rules-draft-withdrawn/1': { readonly number: number; readonly reason: string };
  'rules-edition-published/1': {
    readonly edition: Edition;
    readonly changes?: readonly RuleChange[];
    readonly reason: string;
  };
}
export type RulebookEvent = {
  [T in keyof RulebookEventData]: { readonly type: T; readonly data: RulebookEventData[T] };
}[keyof RulebookEventData];
