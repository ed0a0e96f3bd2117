// Passwords by argon2id (RFC 9106) and the tokens of cookies and links; only digests are stored.

import { createHash, randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { z } from 'zod';

export const NewPassword = z.string().min(12, 'must have at least 12 characters').max(200);
export const Password = z.string().min(1, 'must not be empty').max(200);

/** OWASP's first parameters for argon2id, from memory: 19 MiB, two passes, one lane. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const hashPassword = (password: string): Promise<string> => hash(password, COST);

/** Takes as long for somebody unknown as for a wrong password. */
export async function passwordFits(
  stored: string | null | undefined,
  given: string,
): Promise<boolean> {
  const fits = await verify(stored ?? (await nobody()), given);
  return fits && typeof stored === 'string';
}

let nobodysHash: Promise<string> | undefined;
const nobody = (): Promise<string> =>
  (nobodysHash ??= hashPassword(randomBytes(16).toString('hex')));

export const Token = z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'is not the token of a link');

/** 256 random bits as 43 characters for an address or a cookie. */
export const newToken = (): string => randomBytes(32).toString('base64url');
export const tokenDigest = (token: string): Buffer => createHash('sha256').update(token).digest();
