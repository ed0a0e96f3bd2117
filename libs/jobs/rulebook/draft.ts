// A drafted edition: the newest one with the edits in it, what that changes, and every fault of it.

import { bookKey, editionFaults, type Edition, type EditionEntry, type RuleBook } from '#rules';
import type { DraftedEdits, Edit, RuleChange } from '../contract/rulebook.js';
import type { RefusalView } from '../contract/views.js';
import { editionDifference } from './difference.js';
import { refuseBook } from './refusals.js';

export interface Drafted {
  readonly edition: Edition;
  readonly changes: readonly RuleChange[];
  readonly refusals: readonly RefusalView[];
}

export function draftOf(
  before: Edition,
  { in_force_from, summary, edits }: DraftedEdits,
  book: RuleBook,
  today: string,
): Drafted {
  const edition: Edition = {
    number: before.number + 1,
    in_force_from,
    summary,
    entries: edited(before.entries, edits, book),
  };
  const changes = editionDifference(before, edition, book).map((change): RuleChange => {
    const because = edits.find(({ rule }) => rule === change.rule)?.source;
    return because === undefined ? change : { ...change, because };
  });
  const same = `Nothing differs from edition ${before.number}.`;
  const refusals = [
    ...repeated(edits),
    ...leftOut(before, edits),
    ...dayRefusals(before, in_force_from, today),
    ...editionFaults(edition, book, before).map(({ rule, message }) =>
      refuseBook('BOOK-04', `${rule} ${message}.`, pointerOf(rule, edits)),
    ),
    ...(changes.length === 0 ? [refuseBook('BOOK-06', same, '/edits')] : []),
  ];
  return { edition, changes, refusals };
}

function edited(
  entries: readonly EditionEntry[],
  edits: readonly Edit[],
  book: RuleBook,
): readonly EditionEntry[] {
  const editOf = (rule: string): Edit | undefined => edits.find((each) => each.rule === rule);
  const stands = (rule: string): boolean => entries.some((each) => each.rule === rule);
  const kept = entries.filter(({ rule }) => !editOf(rule)?.leave_out);
  const added = edits.filter(({ rule, leave_out }) => !leave_out && !stands(rule));
  return [
    ...kept.map((entry) => changed(entry, editOf(entry.rule) ?? null, book)),
    ...added.map((edit) => changed(newest(edit, book), edit, book)),
  ];
}

/** Another version has settings of its own; those it does not know are not carried over. */
function changed(entry: EditionEntry, edit: Edit | null, book: RuleBook): EditionEntry {
  if (!edit) return entry;
  const { rule } = entry;
  const version = edit.version ?? entry.version;
  const known = version === entry.version ? undefined : book.get(bookKey(rule, version));
  const settings = { ...(known?.settings ?? entry.settings), ...edit.settings };
  return { rule, version, severity: edit.severity ?? entry.severity, settings };
}

/** A rule that joins, as the code has it. */
function newest({ rule, version = 1 }: Edit, book: RuleBook): EditionEntry {
  const known = book.get(bookKey(rule, version));
  return { rule, version, severity: known?.severity ?? 'note', settings: known?.settings ?? {} };
}

const repeated = (edits: readonly Edit[]): readonly RefusalView[] =>
  edits.flatMap(({ rule }, i) =>
    edits.findIndex((each) => each.rule === rule) < i
      ? [refuseBook('BOOK-07', `${rule} is edited twice.`, `/edits/${i}/rule`)]
      : [],
  );

const leftOut = ({ number, entries }: Edition, edits: readonly Edit[]): readonly RefusalView[] =>
  edits.flatMap(({ rule, leave_out }, i) =>
    leave_out && !entries.some((each) => each.rule === rule)
      ? [refuseBook('BOOK-05', `${rule} is not in edition ${number}.`, `/edits/${i}/rule`)]
      : [],
  );

function dayRefusals(before: Edition, from: string, today: string): readonly RefusalView[] {
  const why = [
    ...(from < today ? [`${from} has passed.`] : []),
    ...(from < before.in_force_from
      ? [`Edition ${before.number} is in force from ${before.in_force_from}.`]
      : []),
  ];
  return why.map((words) => refuseBook('BOOK-08', words, '/in_force_from'));
}

function pointerOf(rule: string, edits: readonly Edit[]): string | undefined {
  const at = edits.findIndex((each) => each.rule === rule);
  return at < 0 ? undefined : `/edits/${at}`;
}
