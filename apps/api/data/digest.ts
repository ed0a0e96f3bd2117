// The digest by which values are named: SHA-256 over their canonical JSON.

import { createHash } from 'node:crypto';
import { canonical } from '#ledger';

export const digestOf = (value: unknown): string =>
  createHash('sha256').update(canonical(value)).digest('hex');
