// A rule is plain data and one pure function. It never reads the clock, the database or another
// rule; it sees only the facts it declares. `says` is what the person reads, so it cannot rot.

import type { Citation } from '#engineering';
import type { FactKey, Facts } from './facts.js';
import { factLabel, type Gate } from './words.js';

export const SEVERITIES = ['refuse', 'require', 'caution', 'note'] as const;
export type Severity = (typeof SEVERITIES)[number];

export const RULE_CLASSES = [
  'availability',
  'code',
  'physics',
  'compatibility',
  'guidance',
  'house-policy',
] as const;
export type RuleClass = (typeof RULE_CLASSES)[number];

/** Only guidance and house policy may be overridden, by a role that the policy names. */
export const mayBeOverridden = (ruleClass: RuleClass): boolean =>
  ruleClass === 'guidance' || ruleClass === 'house-policy';

/** A number that a finding rests on: an operand, a limit, a margin. Decimal text with its unit. */
export interface Figure {
  readonly name: string;
  readonly v: string;
  readonly u: string;
}

/** What a rule measured against, where it compares numbers. */
export interface Measured {
  readonly limit?: Figure;
  /** How far from the limit; negative where it fails. */
  readonly margin?: Figure;
}

export type Verdict =
  | ({
      readonly outcome: 'pass';
      readonly words?: string;
      readonly figures?: readonly Figure[];
    } & Measured)
  | ({
      readonly outcome: 'fail';
      /** What is wrong here, in one sentence, with the numbers. */
      readonly words: string;
      readonly figures?: readonly Figure[];
      /** Set only by rules whose severity depends on the finding (HAZ-02). */
      readonly severity?: Severity;
    } & Measured)
  | { readonly outcome: 'not-applicable'; readonly words: string }
  | {
      readonly outcome: 'not-evaluated';
      readonly words: string;
      readonly missing: readonly string[];
    };

export type Settings = Readonly<Record<string, number | boolean | string>>;

export interface Rule {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  /** The stage or gate that asks this rule. */
  readonly stage: Gate;
  readonly class: RuleClass;
  readonly severity: Severity;
  readonly says: string;
  readonly cites: readonly [Citation, ...Citation[]];
  readonly reads: readonly FactKey[];
  /** Defaults; an edition may give others for guidance and house policy. */
  readonly settings: Settings;
  readonly check: (facts: Facts, settings: Settings) => Verdict;
}

/** Keeps the literal id and checks that `check` uses only what `reads` declares. */
export function rule<const Id extends string, const K extends FactKey, const S extends Settings>(
  definition: Omit<Rule, 'id' | 'reads' | 'settings' | 'check'> & {
    readonly id: Id;
    readonly reads: readonly K[];
    readonly settings: S;
    readonly check: (facts: Pick<Facts, K>, settings: Widened<S>) => Verdict;
  },
): Rule & { readonly id: Id } {
  return definition as unknown as Rule & { readonly id: Id };
}

type Widened<S extends Settings> = {
  readonly [P in keyof S]: S[P] extends number ? number : S[P] extends boolean ? boolean : string;
};

/** What one rule says about one thing, as it is kept in the record. */
export interface Finding extends Measured {
  readonly rule: string;
  readonly version: number;
  readonly title: string;
  readonly class: RuleClass;
  readonly severity: Severity;
  readonly outcome: Verdict['outcome'];
  readonly words: string;
  readonly figures: readonly Figure[];
  readonly missing?: readonly string[];
  readonly cites: readonly Citation[];
}

export const pass = (
  words?: string,
  figures?: readonly Figure[],
  measured: Measured = {},
): Verdict => ({
  outcome: 'pass',
  ...measured,
  ...(words === undefined ? {} : { words }),
  ...(figures === undefined ? {} : { figures }),
});
export const notApplicable = (words: string): Verdict => ({ outcome: 'not-applicable', words });
export const unknown = (...missing: readonly string[]): Verdict => ({
  outcome: 'not-evaluated',
  words: `not known yet: ${missing.map(factLabel).join(', ')}`,
  missing,
});
/** Names those of the given facts that are not known yet. */
export const unknownOf = (facts: Readonly<Record<string, unknown>>): Verdict =>
  unknown(...Object.keys(facts).filter((key) => facts[key] === undefined));
export const fail = (
  words: string,
  figures: readonly Figure[] = [],
  measured: Measured = {},
): Verdict => ({
  outcome: 'fail',
  words,
  figures,
  ...measured,
});
/** A failure whose severity depends on what was found, not on the rule alone. */
export const failAs = (
  severity: Severity,
  words: string,
  figures: readonly Figure[] = [],
  measured: Measured = {},
): Verdict => ({
  outcome: 'fail',
  words,
  figures,
  severity,
  ...measured,
});
export const figure = (name: string, v: string, u: string): Figure => ({ name, v, u });
