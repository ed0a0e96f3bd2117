// What differs between two rules editions, rule by rule: what was, what becomes, and the source.

import { citationText } from '#engineering';
import { bookKey, type Edition, type EditionEntry, type RuleBook } from '#rules';
import type { RuleChange } from '../contract/rulebook.js';

/** In the order of the later edition; rules left out come last. */
export function editionDifference(
  before: Edition,
  after: Edition,
  book: RuleBook,
): readonly RuleChange[] {
  const was = new Map(before.entries.map((entry) => [entry.rule, entry]));
  const stays = new Set(after.entries.map(({ rule }) => rule));
  return [
    ...after.entries.flatMap((entry) => entryDifference(was.get(entry.rule), entry, book)),
    ...before.entries
      .filter(({ rule }) => !stays.has(rule))
      .flatMap((entry) => entryDifference(entry, undefined, book)),
  ];
}

/**
 * Entries that are not in the other edition as they stand here: another version, severity or
 * setting.
 */
export function entriesChanged(before: Edition, after: Edition): readonly EditionEntry[] {
  const was = new Map(before.entries.map((entry) => [entry.rule, text(entry)]));
  return after.entries.filter((entry) => was.get(entry.rule) !== text(entry));
}

function text({ version, severity, settings }: EditionEntry): string {
  return JSON.stringify([
    version,
    severity,
    Object.entries(settings).sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);
}

function entryDifference(
  was: EditionEntry | undefined,
  becomes: EditionEntry | undefined,
  book: RuleBook,
): readonly RuleChange[] {
  const entry = becomes ?? was;
  if (!entry) return [];
  const known = book.get(bookKey(entry.rule, entry.version));
  const change = (what: string, from: string | null, to: string | null): readonly RuleChange[] =>
    from === to
      ? []
      : [
          {
            rule: entry.rule,
            title: known?.title ?? entry.rule,
            what,
            was: from,
            becomes: to,
            source: known?.cites.map(citationText).join('; ') ?? 'not in the code',
          },
        ];
  if (!was || !becomes)
    return change('rule', was ? inWords(was) : null, becomes ? inWords(becomes) : null);
  const names = [...new Set([...Object.keys(was.settings), ...Object.keys(becomes.settings)])];
  const setting = (each: EditionEntry, name: string): string | null =>
    name in each.settings ? String(each.settings[name]) : null;
  return [
    ...change('version', String(was.version), String(becomes.version)),
    ...change('severity', was.severity, becomes.severity),
    ...names.flatMap((name) =>
      change(`setting ${name}`, setting(was, name), setting(becomes, name)),
    ),
  ];
}

const inWords = ({ version, severity }: EditionEntry): string => `version ${version}, ${severity}`;
