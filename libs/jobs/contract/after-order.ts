// After the gauge: order and change orders, delivery and installation, warranty documents, claims. The
// shapes of their commands, checked at the edge.

import { z } from 'zod';
import { WARRANTY_TITLES } from '#rules';
import { amountIn, Day, Decimal, FileRef, Id, Name, Words } from './amounts.js';
import { ZoneAttachment } from './commands-parts.js';

export const WARRANTY_KINDS = ['paint', 'substrate', 'weathertightness', 'workmanship'] as const;
export type WarrantyKind = (typeof WARRANTY_KINDS)[number];
export const CLAIM_KINDS = [
  'fade',
  'chalk',
  'paint-peel',
  'paint-crack',
  'perforation',
  'hail',
  'wind',
  'leak',
] as const;
export type ClaimKind = (typeof CLAIM_KINDS)[number];
export const LENGTHS_BY = ['entered', 'take-off'] as const;

const Override = z.strictObject({ rule: z.string().max(20), reason: Words });
const gate = {
  overrides: z.array(Override).max(50).default([]),
  acknowledges: z.array(z.string().max(20)).max(100).default([]),
};

export const LINE_KINDS = [
  'panel',
  'trim',
  'fastener',
  'closure',
  'sealant',
  'underlayment',
  'touch-up',
  'spare',
] as const;

/** One line: panels by piece length, trims, fasteners, closures, sealant, underlayment, spares. */
export const OrderLine = z.strictObject({
  id: Id,
  surface: Id.nullable(),
  what: z.enum(LINE_KINDS),
  words: Name,
  length: amountIn('in').optional(),
  count: z.number().int().min(1).max(100000),
  weight: amountIn('lb').optional(),
  price: amountIn('usd').optional(),
});
export type OrderLine = z.infer<typeof OrderLine>;

const Lengths = z.strictObject({
  surface: Id,
  by: z.enum(LENGTHS_BY),
  standing: z.enum(['signed', 'hold', 'field-verify']),
  signed_by: Name.optional().describe('who measured; needed where signed'),
});

export const AFTER_ORDER_COMMANDS = {
  'issue-order': {
    ...gate,
    order: Id,
    supplier: Name,
    date: Day,
    lines: z.array(OrderLine).min(1).max(5000),
    lengths: z.array(Lengths).max(200),
    landing_place: Name.optional(),
    delivery: Day.optional(),
  },
  'open-change-order': { order: Id, reason: Words },
  'withdraw-change-order': { order: Id, reason: Words },
  'record-acknowledgment': {
    order: Id,
    lines: z.array(OrderLine).max(5000),
    dated: Day,
    files: z.array(FileRef).max(20).default([]),
  },
  'record-receipt': {
    order: Id,
    on: Day,
    lines: z
      .array(
        z.strictObject({
          line: Id,
          count: z.number().int().min(0).max(100000),
          damaged: z.number().int().min(0).max(100000).default(0),
        }),
      )
      .min(1)
      .max(5000),
    lots: z
      .array(z.strictObject({ surface: Id, lot: Name }))
      .max(500)
      .default([]),
    stored_dry: z.boolean(),
    files: z.array(FileRef).max(50).default([]),
  },
  'accept-mixed-lots': { surface: Id, words: Words, files: z.array(FileRef).min(1).max(10) },
  'settle-receipt': { order: Id, line: Id, words: Words },
  'record-as-built': {
    surface: Id,
    fastener: Id,
    zones: z.array(ZoneAttachment).min(1).max(20),
    files: z.array(FileRef).max(50).default([]),
  },
  'record-inspection': {
    on: Day,
    passed: z.boolean(),
    punch: z
      .array(z.strictObject({ id: Id, words: Words }))
      .max(200)
      .default([]),
    files: z.array(FileRef).max(50).default([]),
  },
  'close-punch-item': { item: Id, words: Words },
  'record-completion': { on: Day },
  'file-registration': {
    kind: z.enum(WARRANTY_KINDS),
    on: Day,
    window_days: z.number().int().min(1).max(730),
  },
  'issue-warranty': {
    ...gate,
    document: Id,
    kind: z.enum(WARRANTY_KINDS),
    title: z.enum(WARRANTY_TITLES),
    warrantor: Name,
    warrantor_address: Name.optional().describe('where the catalogue has none'),
    surfaces: z.array(Id).min(1).max(200),
    start: Day,
    years: z.number().int().min(1).max(60),
    terms: FileRef.describe("the supplier's text, unchanged"),
    fade: z
      .strictObject({
        limit: Decimal,
        scale: z.enum(['Hunter', 'CIELAB', 'CIEDE2000', 'not named']),
        years: z.number().int().min(1).max(60),
      })
      .optional(),
    chalk: z.strictObject({ least: Decimal, years: z.number().int().min(1).max(60) }).optional(),
    full_tests_not_met: z.array(Name).max(20).default([]),
    disclosures: z
      .array(z.strictObject({ item: z.string().max(10), words: Words }))
      .max(20)
      .default([]),
    exclusions_named: z.array(Words).max(50).default([]),
    transfer: z.enum(['none', 'once', 'with-notice']).default('none'),
    full_years: z
      .number()
      .int()
      .min(0)
      .max(60)
      .optional()
      .describe('after them cover falls in a straight line; where the catalogue does not say'),
  },
  'transfer-warranty': { document: Id, to: Name, on: Day, notice_given: z.boolean() },
  'open-claim': {
    claim: Id,
    surface: Id,
    kind: z.enum(CLAIM_KINDS),
    lot: Name.optional(),
    document: Id.optional(),
    notice: Day,
    words: Words,
    files: z.array(FileRef).max(50).default([]),
  },
  'record-reading': {
    claim: Id,
    on: Day,
    what: z.enum(['color', 'chalk', 'hail', 'coating-thickness']),
    scale: z.enum(['Hunter', 'CIELAB', 'CIEDE2000']).optional(),
    illuminant: z.enum(['A', 'C', 'D50', 'D65']).optional(),
    observer: z.enum(['2', '10']).optional(),
    retained: z.strictObject({ L: Decimal, a: Decimal, b: Decimal }).optional(),
    weathered: z.strictObject({ L: Decimal, a: Decimal, b: Decimal }).optional(),
    rating: Decimal.optional(),
    instrument: Name.optional(),
    calibrated: Day.optional(),
    washed: z.boolean(),
  },
  'decide-claim': {
    claim: Id,
    decision: z.enum(['accepted', 'accepted-in-part', 'declined']),
    reason: Words,
    clause: Words,
  },
} as const;

export { DISCLOSURES } from '../after-order/disclosures.js';
