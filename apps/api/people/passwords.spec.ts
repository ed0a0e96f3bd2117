// Passwords and tokens; and the wait after too many failures.

import { expect, test } from '@jest/globals';
import { Problem } from '../problems.js';
import { Attempts } from './attempts.js';
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

test('ten failures make an e-mail wait, a success forgets them', () => {
  const attempts = new Attempts();
  for (let i = 0; i < 10; i++) {
    expect(() => attempts.check('e')).not.toThrow();
    attempts.failed('e');
  }
  expect(() => attempts.check('other')).not.toThrow();
  expect(() => attempts.check('other', 'e')).toThrow(Problem);
  attempts.succeeded('e');
  expect(() => attempts.check('e')).not.toThrow();
});
