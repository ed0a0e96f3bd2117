// The two plain shapes that most gates have: a list on which nothing may be left, and a question
// that must be answered with yes. Each gives what a rule reads and how it checks.

import type { FactKey, Facts } from './facts.js';
import { fail, pass, unknown, type Verdict } from './rule.js';

type KeyOf<T> = { [K in FactKey]-?: Facts[K] extends T | undefined ? K : never }[FactKey];
export type ListKey = KeyOf<readonly string[]>;
export type FlagKey = KeyOf<boolean>;

interface Shape<K extends FactKey> {
  readonly reads: readonly [K];
  readonly settings: Record<never, never>;
  readonly check: (facts: Pick<Facts, K>) => Verdict;
}

/** Passes on the empty list; fails with "what: a; b"; not evaluated where the list is not known. */
export function nothingLeft<const K extends ListKey>(key: K, what: string): Shape<K> {
  return {
    reads: [key],
    settings: {},
    check: (facts) => {
      const left: readonly string[] | undefined = facts[key];
      if (left === undefined) return unknown(key);
      return left.length === 0 ? pass() : fail(`${what}: ${left.join('; ')}`);
    },
  };
}

/** Passes on yes, fails with these words on no, not evaluated where nobody answered. */
export function answeredYes<const K extends FlagKey>(key: K, otherwise: string): Shape<K> {
  return {
    reads: [key],
    settings: {},
    check: (facts) => {
      const answer: boolean | undefined = facts[key];
      if (answer === undefined) return unknown(key);
      return answer ? pass() : fail(otherwise);
    },
  };
}
