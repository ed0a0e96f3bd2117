// Passwords and tokens.

import { expect, test } from '@jest/globals';
import { hashPassword, newToken, passwordFits, tokenDigest } from './passwords.js';

test("a password fits its argon2id hash, and nobody else's", async () => {
  const hash = await hashPassword('correct horse battery');
  expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(await passwordFits(hash, 'correct horse battery')).toBe(true);
  expect(await passwordFits(hash, 'correct horse')).toBe(false);
  expect(await passwordFits(undefined, 'correct horse battery')).toBe(false);
  expect(await passwordFits(null, '')).toBe(false);
});

test('tokens differ, fit an address, and are kept by digest alone', () => {
  const [a, b] = [newToken(), newToken()];
  expect(a).not.toBe(b);
  expect(a).toMatch(/^[A-Za-z0-9_-]{43}$/);
  expect(tokenDigest(a)).toHaveLength(32);
});
