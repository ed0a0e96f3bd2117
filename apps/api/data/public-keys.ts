// Signing keys in public form, the one in use first.

import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { NoteVerifier } from '#ledger';

export const KeySchema = z
  .object({
    name: z.string(),
    id: z.string().describe('the 8 hexadecimal digits that signed notes carry'),
    text: z.string().describe('C2SP signed-note verifier key, to give to whoever checks'),
    fingerprint: z.string().describe('SHA-256 of the raw public key, hexadecimal'),
    in_use: z.boolean(),
  })
  .meta({ id: 'SigningKey' });

export const publicKeys = (verifiers: readonly NoteVerifier[]): z.output<typeof KeySchema>[] =>
  verifiers.map((verifier, i) => ({
    name: verifier.name,
    id: verifier.id,
    text: verifier.text,
    fingerprint: fingerprintOf(verifier),
    in_use: i === 0,
  }));

export const fingerprintOf = (verifier: NoteVerifier): string =>
  createHash('sha256').update(rawKey(verifier)).digest('hex');

/** What follows name and id, without the byte that says Ed25519. */
const rawKey = ({ name, id, text }: NoteVerifier): Buffer =>
  Buffer.from(text.slice(name.length + id.length + 2), 'base64').subarray(1);
