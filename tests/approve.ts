// Approved text: a difference fails; APPROVE=1 rewrites the file for a person to review in the diff.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from '@jest/globals';

/** Where `name` is a file under tests/approved. */
export function expectApproved(name: string, text: string): void {
  const file = new URL(`./approved/${name}`, import.meta.url);
  if (process.env['APPROVE'] === '1') writeFileSync(file, text);
  expect(existsSync(file)).toBe(true);
  expect(text).toBe(readFileSync(file, 'utf8'));
}
