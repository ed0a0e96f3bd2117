// The small values of the contract: ids, dates, decimal amounts with their unit, files by digest.

import { z } from 'zod';

export const Id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, 'must be lower-case letters, digits and dashes');
const EARLIEST = '1900-01-01';
export const Day = z.iso
  .date('must be a date like 2026-02-14')
  .refine((day) => day >= EARLIEST, 'must be a date since 1900');
/** UTC, to the microsecond at most: what the record can keep. */
export const Moment = z.iso
  .datetime('must be a UTC time like 2026-02-14T09:30:00Z')
  .regex(/:\d\d:\d\d(\.\d{1,6})?Z$/, 'must have seconds, with six decimals at most')
  .refine((moment) => moment >= EARLIEST, 'must be a time since 1900');
export const Digest = z
  .string()
  .regex(/^[0-9a-f]{64}$/, 'must be a SHA-256 digest of 64 hexadecimal digits');
export const Words = z.string().trim().min(1, 'must not be empty').max(4000);
export const Name = z.string().trim().min(1, 'must not be empty').max(200);

/** Decimal text, so that nothing is rounded between a person, the record and a paper. */
export const Decimal = z
  .string()
  .regex(/^-?(0|[1-9]\d{0,8})(\.\d{1,6})?$/, 'must be a decimal number like 24.8');

/** A decimal with exactly this unit; another unit is refused, never converted. */
export const amountIn = <U extends string>(unit: U) =>
  z.strictObject({ v: Decimal, u: z.literal(unit) });
export const Amount = z.strictObject({ v: Decimal, u: z.string().min(1).max(20) });
export type Amount = z.infer<typeof Amount>;
export const numberOf = (amount: { readonly v: string }): number => Number(amount.v);

/** A stored file or a document's page, by digest. */
export const FileRef = z.strictObject({ digest: Digest, name: Name });
export type FileRef = z.infer<typeof FileRef>;

/** Where a value comes from, and of which date. */
export const Source = z.strictObject({
  document: Words.describe('the letter, report, map or person the value comes from'),
  date: Day,
  files: z.array(FileRef).max(20).optional(),
});
export type Source = z.infer<typeof Source>;

/** A person or a site: its id, and a salted commitment to the details kept apart from the record. */
export const PartyRef = z.strictObject({ id: z.uuid(), commitment: Digest.optional() });
export type PartyRef = z.infer<typeof PartyRef>;
