// The rulebook of a company: its published editions and the one draft, decided as a job's stages
// are. A draft is checked against the newest edition; publishing takes exactly what was drafted.

import { editionFaults, type Edition, type Role, type RuleBook } from '#rules';
import type { RuleChange, RulebookCommand, RulebookEvent } from '../contract/rulebook.js';
import type { RefusalView } from '../contract/views.js';
import { draftOf } from './draft.js';
import { refuseBook } from './refusals.js';

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
      refuseBook('BOOK-01', `You are ${context.roles.join(', ') || 'without a role'}.`),
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
        : decline([refuseBook('BOOK-02', 'There is no draft.')]);
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
  if (!before) return decline([refuseBook('BOOK-03', 'No edition is published.')]);
  const { edition, changes, refusals } = draftOf(before, command, book, day);
  return refusals.length > 0
    ? decline(refusals)
    : accept({
        type: 'rules-edition-drafted/1',
        data: { edition, changes, source: command.source },
      });
}

function publish(
  { draft: drafted, editions }: Rulebook,
  { number, reason }: Given<'publish-rules-edition'>,
  { book, day }: RulebookContext,
): RulebookDecision {
  if (!drafted || drafted.edition.number !== number) {
    const stands = drafted ? `Edition ${drafted.edition.number} is drafted` : 'There is no draft';
    return decline([refuseBook('BOOK-02', `${stands}, not edition ${number}.`, '/number')]);
  }
  const { edition, changes } = drafted;
  const from = edition.in_force_from;
  const refusals = [
    ...editionFaults(edition, book, editions.at(-1)).map(({ rule, message }) =>
      refuseBook('BOOK-04', `${rule} ${message}.`),
    ),
    ...(from < day ? [refuseBook('BOOK-08', `${from} has passed: draft it again.`)] : []),
  ];
  return refusals.length > 0
    ? decline(refusals)
    : accept({ type: 'rules-edition-published/1', data: { edition, changes, reason } });
}

const accept = (event: RulebookEvent): RulebookDecision => ({ ok: true, events: [event] });
const decline = (refusals: readonly RefusalView[]): RulebookDecision => ({ ok: false, refusals });
