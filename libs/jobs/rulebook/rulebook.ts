// The rulebook of a company: its published editions and the drafts that stand, decided as a job's
// stages are. A draft changes the newest edition; publishing takes exactly what was drafted and seen.

import { editionFaults, type Edition, type Role, type RuleBook } from '#rules';
import type { Edit, RuleChange, RulebookCommand, RulebookEvent } from '../contract/rulebook.js';
import type { RefusalView } from '../contract/views.js';
import { draftOf } from './draft.js';
import { editionDifference } from './difference.js';
import { refuseBook } from './refusals.js';

export interface StandingDraft {
  readonly id: string;
  /** Version of the rulebook at which it was saved last. */
  readonly version: number;
  /** Number of the edition it changes. */
  readonly base: number;
  readonly edition: Edition;
  readonly edits: readonly Edit[];
  readonly changes: readonly RuleChange[];
}
export interface Rulebook {
  readonly version: number;
  readonly editions: readonly Edition[];
  readonly drafts: Readonly<Record<string, StandingDraft>>;
}
export const EMPTY_RULEBOOK: Rulebook = { version: 0, editions: [], drafts: {} };

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
      return rulebook.drafts[command.draft]
        ? accept({
            type: 'rules-draft-withdrawn/1',
            data: { draft: command.draft, reason: command.reason },
          })
        : decline([noDraft(command.draft)]);
    case 'publish-rules-edition':
      return publish(rulebook, command, context);
  }
}

export function evolveRulebook(rulebook: Rulebook, event: RulebookEvent): Rulebook {
  const version = rulebook.version + 1;
  switch (event.type) {
    case 'rules-edition-drafted/1': {
      const { draft: id, ...data } = event.data;
      return {
        ...rulebook,
        version,
        drafts: { ...rulebook.drafts, [id]: { id, version, ...data } },
      };
    }
    case 'rules-draft-withdrawn/1':
      return { ...rulebook, version, drafts: without(rulebook.drafts, event.data.draft) };
    case 'rules-edition-published/1': {
      const { edition, draft: id } = event.data;
      const drafts = id === undefined ? rulebook.drafts : without(rulebook.drafts, id);
      return { version, editions: [...rulebook.editions, edition], drafts };
    }
    default:
      throw new Error(`${(event as { type: string }).type} is no event of a rulebook`);
  }
}

type Given<T extends RulebookCommand['type']> = Extract<RulebookCommand, { readonly type: T }>;

/** The newest edition with the edits in it; a draft of an older edition is brought up to date by it. */
function draft(
  { editions, drafts }: Rulebook,
  command: Given<'draft-rules-edition'>,
  { book, day }: RulebookContext,
): RulebookDecision {
  const before = editions.at(-1);
  if (!before) return decline([refuseBook('BOOK-03', 'No edition is published.')]);
  const stale = overtaken(command.seen, drafts[command.draft], command.draft);
  const { edition, changes, refusals } = draftOf(before, command, book, day);
  if (stale.length + refusals.length > 0) return decline([...stale, ...refusals]);
  const { draft: id, edits } = command;
  return accept({
    type: 'rules-edition-drafted/1',
    data: { draft: id, base: before.number, edition, changes, edits },
  });
}

function publish(
  { drafts, editions }: Rulebook,
  command: Given<'publish-rules-edition'>,
  { book, day }: RulebookContext,
): RulebookDecision {
  const { draft: id, seen, running_jobs, reason, impact } = command;
  const drafted = drafts[id];
  if (!drafted) return decline([noDraft(id)]);
  const { edition, changes } = drafted;
  const newest = editions.at(-1);
  const from = edition.in_force_from;
  const refusals = [
    ...overtaken(seen, drafted, id),
    ...outdated(drafted, editions, book),
    ...(drafted.base === newest?.number ? editionFaults(edition, book, newest) : []).map(
      ({ rule, message }) => refuseBook('BOOK-04', `${rule} ${message}.`),
    ),
    ...(from < day ? [refuseBook('BOOK-08', `${from} has passed: draft it again.`)] : []),
  ];
  if (refusals.length > 0) return decline(refusals);
  const data = { edition, changes, reason, draft: id, running_jobs };
  return accept({
    type: 'rules-edition-published/1',
    data: { ...data, ...(impact === undefined ? {} : { impact }) },
  });
}

/** A draft of an edition that is no longer the newest: says what was changed meanwhile. */
function outdated(
  { base }: StandingDraft,
  editions: readonly Edition[],
  book: RuleBook,
): readonly RefusalView[] {
  const newest = editions.at(-1);
  const before = editions.find(({ number }) => number === base);
  if (!newest || !before || newest.number === base) return [];
  const changed = editionDifference(before, newest, book)
    .slice(0, MOST_TOLD)
    .map(
      ({ rule, what, was, becomes }) => `${rule} ${what} ${was ?? 'none'} → ${becomes ?? 'none'}`,
    );
  const meanwhile =
    `It changes edition ${base}, and edition ${newest.number} was published since ` +
    `("${newest.summary}"): ${changed.join('; ') || 'no rule differs'}. ` +
    'Save the draft again: its changes are then laid over the newest edition.';
  return [refuseBook('BOOK-09', meanwhile)];
}
const MOST_TOLD = 20;

function overtaken(
  seen: number,
  standing: StandingDraft | undefined,
  id: string,
): readonly RefusalView[] {
  if (seen === (standing?.version ?? 0)) return [];
  const here = standing
    ? `You saw version ${seen}; it was saved again as version ${standing.version}.`
    : `Draft ${id} was published or withdrawn in the meantime.`;
  return [refuseBook('BOOK-10', here)];
}

const noDraft = (id: string): RefusalView =>
  refuseBook('BOOK-02', `Draft ${id} is not there, or was published or withdrawn.`);
const without = (drafts: Rulebook['drafts'], id: string): Rulebook['drafts'] =>
  Object.fromEntries(Object.entries(drafts).filter(([key]) => key !== id));
const accept = (event: RulebookEvent): RulebookDecision => ({ ok: true, events: [event] });
const decline = (refusals: readonly RefusalView[]): RulebookDecision => ({ ok: false, refusals });
