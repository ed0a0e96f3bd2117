// The rulebook of a company: its published editions and the one draft, decided as a job's stages are.
// A draft is checked against the newest edition; publishing takes exactly what was drafted.

import {
  bookKey,
  editionFaults,
  type Edition,
  type EditionEntry,
  type Role,
  type RuleBook,
} from '#rules';
import type { Edit, RuleChange, RulebookCommand, RulebookEvent } from '../contract/rulebook.js';
import type { RefusalView } from '../contract/views.js';
import { editionDifference } from './difference.js';

export interface Rulebook {
  readonly version: number;
  readonly editions: readonly Edition[];
  readonly draft: {
    readonly edition: Edition;
    readonly changes: readonly RuleChange[];
    readonly source: string;
  } | null;
}
export const EMPTY_RULEBOOK: Rulebook = { version: 0, editions: [], draft: null };

export interface RulebookContext {
  readonly roles: readonly Role[];
  readonly book: RuleBook;
  /** Today, YYYY-MM-DD; it comes with the command. */
  readonly day: string;
}

export type RulebookDecision =
  | { readonly ok: true; readonly events: readonly [RulebookEvent] }
  | { readonly ok: false; readonly refusals: readonly RefusalView[] };

export function decideRulebook(
  rulebook: Rulebook,
  command: RulebookCommand,
  context: RulebookContext,
): RulebookDecision {
  if (!context.roles.includes('standards-manager')) {
    return decline([
      refuse(
        'forbidden',
        'BOOK-01',
        `The rulebook is for the standards manager; you are ${context.roles.join(', ') || 'without a role'}.`,
      ),
    ]);
  }
  switch (command.type) {
    case 'draft-rules-edition':
      return draft(rulebook, command, context);
    case 'withdraw-rules-draft':
      return rulebook.draft
        ? accept({
            type: 'rules-draft-withdrawn/1',
            data: { number: rulebook.draft.edition.number, reason: command.reason },
          })
        : decline([refuse('wrong-stage', 'BOOK-02', 'There is no draft to withdraw.')]);
    case 'publish-rules-edition':
      return publish(rulebook, command, context);
  }
}

export function evolveRulebook(rulebook: Rulebook, event: RulebookEvent): Rulebook {
  const version = rulebook.version + 1;
  switch (event.type) {
    case 'rules-edition-drafted/1':
      return { ...rulebook, version, draft: event.data };
    case 'rules-draft-withdrawn/1':
      return { ...rulebook, version, draft: null };
    case 'rules-edition-published/1':
      return { version, editions: [...rulebook.editions, event.data.edition], draft: null };
  }
}

type Given<T extends RulebookCommand['type']> = Extract<RulebookCommand, { readonly type: T }>;

/** A new draft takes the place of an older one. */
function draft(
  { editions }: Rulebook,
  command: Given<'draft-rules-edition'>,
  { book, day }: RulebookContext,
): RulebookDecision {
  const before = editions.at(-1);
  if (!before)
    return decline([
      refuse(
        'wrong-stage',
        'BOOK-03',
        'A first edition must be published before one can be drafted upon it.',
      ),
    ]);
  const { in_force_from, summary, edits, source } = command;
  const edition: Edition = {
    number: before.number + 1,
    in_force_from,
    summary,
    entries: edited(before.entries, edits, book),
  };
  const changes = editionDifference(before, edition, book);
  const refusals = [
    ...repeated(edits),
    ...dayRefusals(before, in_force_from, day),
    ...editionFaults(edition, book, before).map(({ rule, message }) =>
      refuse('invalid-request', 'BOOK-04', `${rule} ${message}.`, pointerOf(rule, edits)),
    ),
    ...edits.flatMap(({ rule, leave_out }, i) =>
      leave_out && !before.entries.some((each) => each.rule === rule)
        ? [
            refuse(
              'invalid-request',
              'BOOK-05',
              `${rule} does not stand in edition ${before.number}.`,
              `/edits/${i}/rule`,
            ),
          ]
        : [],
    ),
    ...(changes.length === 0
      ? [
          refuse(
            'invalid-request',
            'BOOK-06',
            `Nothing differs from edition ${before.number}.`,
            '/edits',
          ),
        ]
      : []),
  ];
  return refusals.length > 0
    ? decline(refusals)
    : accept({ type: 'rules-edition-drafted/1', data: { edition, changes, source } });
}

function edited(
  entries: readonly EditionEntry[],
  edits: readonly Edit[],
  book: RuleBook,
): readonly EditionEntry[] {
  const kept = entries.filter(
    ({ rule }) => !edits.some((each) => each.rule === rule && each.leave_out),
  );
  const added = edits.filter(
    ({ rule, leave_out }) => !leave_out && !entries.some((each) => each.rule === rule),
  );
  const changed = (entry: EditionEntry, edit: Edit): EditionEntry => {
    const version = edit.version ?? entry.version;
    // Another version has settings of its own; what it does not know any more is not carried over.
    const own =
      version === entry.version
        ? entry.settings
        : (book.get(bookKey(entry.rule, version))?.settings ?? entry.settings);
    return {
      rule: entry.rule,
      version,
      severity: edit.severity ?? entry.severity,
      settings: { ...own, ...edit.settings },
    };
  };
  return [
    ...kept.map((entry) => {
      const edit = edits.find(({ rule }) => rule === entry.rule);
      return edit ? changed(entry, edit) : entry;
    }),
    ...added.map((edit) => {
      const known = book.get(bookKey(edit.rule, edit.version ?? 1));
      const own: EditionEntry = {
        rule: edit.rule,
        version: edit.version ?? 1,
        severity: known?.severity ?? 'note',
        settings: known?.settings ?? {},
      };
      return changed(own, edit);
    }),
  ];
}

const repeated = (edits: readonly Edit[]): readonly RefusalView[] =>
  edits.flatMap(({ rule }, i) =>
    edits.findIndex((each) => each.rule === rule) < i
      ? [refuse('invalid-request', 'BOOK-07', `${rule} is edited twice.`, `/edits/${i}/rule`)]
      : [],
  );

function dayRefusals(before: Edition, from: string, today: string): readonly RefusalView[] {
  return [
    ...(from < today
      ? [
          refuse(
            'invalid-request',
            'BOOK-08',
            `An edition is in force from today or later, not from ${from}.`,
            '/in_force_from',
          ),
        ]
      : []),
    ...(from < before.in_force_from
      ? [
          refuse(
            'invalid-request',
            'BOOK-08',
            `Edition ${before.number} is in force from ${before.in_force_from}: a later one does not come before it.`,
            '/in_force_from',
          ),
        ]
      : []),
  ];
}

function publish(
  { draft: drafted, editions }: Rulebook,
  { number, reason }: Given<'publish-rules-edition'>,
  { book, day }: RulebookContext,
): RulebookDecision {
  if (!drafted || drafted.edition.number !== number) {
    return decline([
      refuse(
        'wrong-stage',
        'BOOK-02',
        drafted
          ? `Edition ${drafted.edition.number} is drafted, not ${number}.`
          : 'There is no draft to publish.',
        '/number',
      ),
    ]);
  }
  const { edition, changes } = drafted;
  const faults = editionFaults(edition, book, editions.at(-1)).map(({ rule, message }) =>
    refuse('invalid-request', 'BOOK-04', `${rule} ${message}.`),
  );
  const late =
    edition.in_force_from < day
      ? [
          refuse(
            'invalid-request',
            'BOOK-08',
            `The draft was to be in force from ${edition.in_force_from}, which has passed: draft it again.`,
          ),
        ]
      : [];
  if (faults.length + late.length > 0) return decline([...faults, ...late]);
  return accept({ type: 'rules-edition-published/1', data: { edition, changes, reason } });
}

const accept = (event: RulebookEvent): RulebookDecision => ({ ok: true, events: [event] });
const decline = (refusals: readonly RefusalView[]): RulebookDecision => ({ ok: false, refusals });
const pointerOf = (rule: string, edits: readonly Edit[]): string | undefined => {
  const at = edits.findIndex((each) => each.rule === rule);
  return at < 0 ? undefined : `/edits/${at}`;
};

function refuse(
  kind: RefusalView['kind'],
  code: string,
  words: string,
  pointer?: string,
): RefusalView {
  return {
    kind,
    code,
    words,
    cites: [],
    figures: [],
    ...(pointer === undefined ? {} : { pointer }),
  };
}
