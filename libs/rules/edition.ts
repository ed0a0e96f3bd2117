// A rules edition: a numbered, dated list of rule versions with their settings and severities. Its
// digest is taken over its canonical JSON by whoever publishes it (the ledger's canonical form).

import type { Facts } from './facts.js';
import {
  mayBeOverridden,
  type Figure,
  type Finding,
  type Rule,
  type Settings,
  type Severity,
  type Verdict,
} from './rule.js';
import type { Gate } from './words.js';

export interface EditionEntry {
  readonly rule: string;
  readonly version: number;
  readonly severity: Severity;
  readonly settings: Settings;
}

export interface Edition {
  readonly number: number;
  /** The date from which it is in force, YYYY-MM-DD. */
  readonly in_force_from: string;
  readonly summary: string;
  readonly entries: readonly EditionEntry[];
}

/** Every version of every rule that any edition ever named. */
export type RuleBook = ReadonlyMap<string, Rule>;
export const bookKey = (id: string, version: number): string => `${id}/${version}`;
export const ruleBook = (rules: readonly Rule[]): RuleBook =>
  new Map(rules.map((each) => [bookKey(each.id, each.version), each]));

/** The first edition of these rules: their newest versions with their own settings. */
export function editionOf(
  number: number,
  inForceFrom: string,
  summary: string,
  rules: readonly Rule[],
): Edition {
  return {
    number,
    in_force_from: inForceFrom,
    summary,
    entries: rules.map(({ id, version, severity, settings }) => ({
      rule: id,
      version,
      severity,
      settings,
    })),
  };
}

export interface EditionFault {
  readonly rule: string;
  readonly message: string;
}

/**
 * All that is wrong with a drafted edition; an empty list means that it may be published. Only
 * guidance and house policy may be given other settings or another severity, or be left out of an
 * edition that follows one which names them.
 */
export function editionFaults(
  edition: Edition,
  book: RuleBook,
  before?: Edition,
): readonly EditionFault[] {
  const named = edition.entries.map((entry) => entry.rule);
  const dropped = (before?.entries ?? []).filter((entry) => !named.includes(entry.rule));
  return [
    ...edition.entries.flatMap((entry, i) => [
      ...(named.indexOf(entry.rule) < i ? [{ rule: entry.rule, message: 'stands twice' }] : []),
      ...entryFaults(entry, book),
    ]),
    ...dropped.flatMap(({ rule, version }) => {
      const known = book.get(bookKey(rule, version));
      return known && !mayBeOverridden(known.class)
        ? [{ rule, message: `is ${known.class}: it may not be left out` }]
        : [];
    }),
  ];
}

function entryFaults(entry: EditionEntry, book: RuleBook): readonly EditionFault[] {
  const known = book.get(bookKey(entry.rule, entry.version));
  if (!known) return [{ rule: entry.rule, message: `version ${entry.version} is not known` }];
  const fixed = !mayBeOverridden(known.class);
  const given = Object.entries(entry.settings).flatMap(([name, value]) => {
    const own = known.settings[name];
    if (own === undefined) return [`has no setting "${name}"`];
    if (typeof value !== typeof own) return [`setting "${name}" must be a ${typeof own}`];
    return fixed && value !== own
      ? [`is ${known.class}: its setting "${name}" is ${own} and may not be changed`]
      : [];
  });
  const missing = Object.keys(known.settings)
    .filter((name) => !Object.hasOwn(entry.settings, name))
    .map((name) => `setting "${name}" is missing`);
  const severity =
    fixed && entry.severity !== known.severity
      ? [`is ${known.class}: its severity is ${known.severity} and may not be changed`]
      : [];
  return [...given, ...missing, ...severity].map((message) => ({ rule: entry.rule, message }));
}

interface Asked {
  readonly known: Rule;
  readonly entry: EditionEntry;
}
const askedBefore = new WeakMap<RuleBook, WeakMap<Edition, Map<Gate, readonly Asked[]>>>();

/** The rules an edition asks at a stage, in its order; editions and books never change, so once each. */
function askedAt(edition: Edition, book: RuleBook, stage: Gate): readonly Asked[] {
  const editions = askedBefore.get(book) ?? new WeakMap<Edition, Map<Gate, readonly Asked[]>>();
  askedBefore.set(book, editions);
  const stages = editions.get(edition) ?? new Map<Gate, readonly Asked[]>();
  editions.set(edition, stages);
  const found =
    stages.get(stage) ??
    edition.entries.flatMap((entry) => {
      const known = book.get(bookKey(entry.rule, entry.version));
      if (!known) {
        const what = `${entry.rule}/${entry.version}`;
        throw new Error(`edition ${edition.number} names ${what}, which is not in the code`);
      }
      return known.stage === stage ? [{ known, entry }] : [];
    });
  stages.set(stage, found);
  return found;
}

/** What every rule of a stage says, in the edition's order; all findings at once. */
export function findings(
  edition: Edition,
  book: RuleBook,
  stage: Gate,
  facts: Facts,
): readonly Finding[] {
  return askedAt(edition, book, stage).map(({ known, entry }) => finding(known, entry, facts));
}

/** Ids of the rules that refuse: the short answer of `findings`, for asking very often. */
export function refusing(
  edition: Edition,
  book: RuleBook,
  stage: Gate,
  facts: Facts,
): readonly string[] {
  return askedAt(edition, book, stage)
    .filter(({ known, entry }) => {
      const verdict = known.check(facts, entry.settings);
      if (verdict.outcome === 'not-evaluated') return entry.severity === 'refuse';
      return verdict.outcome === 'fail' && (verdict.severity ?? entry.severity) === 'refuse';
    })
    .map(({ known }) => known.id);
}

function finding(known: Rule, entry: EditionEntry, facts: Facts): Finding {
  const verdict = known.check(facts, entry.settings);
  const severity =
    verdict.outcome === 'fail' ? (verdict.severity ?? entry.severity) : entry.severity;
  return {
    rule: known.id,
    version: known.version,
    title: known.title,
    class: known.class,
    severity,
    outcome: verdict.outcome,
    words: verdict.words ?? known.says,
    figures: 'figures' in verdict ? (verdict.figures ?? NO_FIGURES) : NO_FIGURES,
    ...furtherOf(verdict),
    cites: known.cites,
  };
}

const NO_FIGURES: readonly Figure[] = [];
const NOTHING = {};

/** What only some outcomes have: what is missing, or what was measured. */
function furtherOf(verdict: Verdict): Pick<Finding, 'missing' | 'limit' | 'margin'> {
  if (verdict.outcome === 'not-applicable') return NOTHING;
  if (verdict.outcome === 'not-evaluated') return { missing: verdict.missing };
  const { limit, margin } = verdict;
  if (limit && margin) return { limit, margin };
  return limit ? { limit } : margin ? { margin } : NOTHING;
}

/** The facts a stage's rules read under an edition: what a change of them puts up for re-check. */
export function factsReadBy(edition: Edition, book: RuleBook, stage: Gate): readonly string[] {
  const keys = edition.entries.flatMap((entry) => {
    const known = book.get(bookKey(entry.rule, entry.version));
    return known?.stage === stage ? known.reads : [];
  });
  return [...new Set(keys)];
}
