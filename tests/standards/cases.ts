// Runs published and other outside values against the calculations: each case carries its source,
// its label and the source's own rounding as tolerance. Only "published" and "second-hand" count
// as outside checks; "derived" proves consistency, "from memory" says so.

import { readFileSync } from 'node:fs';
import { expect, test } from '@jest/globals';

export interface StandardCase {
  readonly id: string;
  readonly topic: string;
  readonly source: { readonly title: string; readonly edition: string; readonly where: string };
  readonly provenance: 'published' | 'second-hand' | 'derived' | 'from memory';
  readonly inputs: Record<string, unknown>;
  readonly expected: Record<string, unknown>;
  readonly tol: Record<string, Tolerance>;
  readonly notes?: string;
}

/** abs: plus or minus. magnitude: ours minus theirs, of absolute values, stays in the band. */
type Tolerance = { abs: number } | { magnitude_from: number; magnitude_to: number };

/** Where `topic` names `tests/standards/cases/<topic>.json`. */
export function readCases(topic: string): readonly StandardCase[] {
  const file = new URL(`./cases/${topic}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as StandardCase[];
}

/** Cases of a topic that are known not to be met, each with its reason; the coverage page lists them. */
export function knownNotMet(topic: string): Readonly<Record<string, string>> {
  const file = new URL('./not-met.json', import.meta.url);
  const all = JSON.parse(readFileSync(file, 'utf8')) as Record<string, Record<string, string>>;
  return all[topic] ?? {};
}

/**
 * One test a case. `evaluate` gives the values named in the case's `expected`; every expected key
 * must be there. A case that is known not to be met stands in `known` with its reason, and its test
 * fails as soon as it is met.
 */
export function runCases(
  cases: readonly StandardCase[],
  evaluate: (standardCase: StandardCase) => Record<string, unknown>,
  known: Readonly<Record<string, string>> = {},
): void {
  for (const each of cases) {
    const reason = known[each.id];
    const title = `${each.id} [${each.provenance}] ${each.source.edition}, ${each.source.where}`;
    if (reason === undefined) {
      test(title, () => {
        expect(differences(each, evaluate(each))).toEqual([]);
      });
    } else {
      test(`${title} — known not to be met: ${reason}`, () => {
        expect(differences(each, evaluate(each))).not.toEqual([]);
      });
    }
  }
}

/** What of a case's expected values is not met; empty when all are. */
export function differences(each: StandardCase, actual: Record<string, unknown>): string[] {
  return Object.entries(each.expected).flatMap(([key, want]) =>
    compare(key, want, actual[key], each.tol, each.tol[key]),
  );
}

/** A value inside a group takes the tolerance named by its path (`outward_psf.3`) or the group's. */
function compare(
  at: string,
  want: unknown,
  got: unknown,
  tols: StandardCase['tol'],
  tol: Tolerance | undefined,
): string[] {
  if (typeof want === 'number' && typeof got === 'number') {
    return within(want, got, tol) ? [] : [`${at}: expected ${want}, got ${got}`];
  }
  if (typeof want === 'object' && want !== null && typeof got === 'object' && got !== null) {
    return Object.entries(want).flatMap(([key, value]) =>
      compare(
        `${at}.${key}`,
        value,
        (got as Record<string, unknown>)[key],
        tols,
        tols[`${at}.${key}`] ?? tol,
      ),
    );
  }
  return Object.is(want, got) ? [] : [`${at}: expected ${String(want)}, got ${String(got)}`];
}

const ROUNDOFF = 1e-9;

function within(want: number, got: number, tol: Tolerance | undefined): boolean {
  if (tol === undefined) return Math.abs(got - want) <= ROUNDOFF * Math.max(1, Math.abs(want));
  if ('abs' in tol) return Math.abs(got - want) <= tol.abs + ROUNDOFF;
  const over = Math.abs(got) - Math.abs(want);
  return over >= tol.magnitude_from - ROUNDOFF && over <= tol.magnitude_to + ROUNDOFF;
}
