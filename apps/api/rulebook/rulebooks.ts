// The one way a rulebook changes: fold its stream, decide, append at the version decided on; where
// somebody else was first, look and decide again.

import { Injectable } from '@nestjs/common';
import {
  decideRulebook,
  EMPTY_RULEBOOK,
  evolveRulebook,
  type Rulebook,
  type RulebookCommand,
  type RulebookEvent,
  type StandingDraft,
} from '#jobs';
import type { Recorded } from '#ledger';
import { RULE_BOOK } from '#rules';
import { digestOf, Ledgers, oneStream } from '../data/ledgers.js';
import type { Acting } from '../http/signed-in.js';
import { Problem, refused } from '../problems.js';
import { RULEBOOK } from './shelf.js';

export interface SavedDraft extends StandingDraft {
  readonly by: string;
  readonly at: string;
}
/** What an entry of the stream did. */
export interface Done {
  readonly by: string;
  readonly at: string;
  readonly draft: string | undefined;
  /** Of the edition drafted or published. */
  readonly number: number | undefined;
}
interface Known {
  readonly rulebook: Rulebook;
  /** By the version of the stream. */
  readonly done: ReadonlyMap<number, Done>;
}
const UNKNOWN: Known = { rulebook: EMPTY_RULEBOOK, done: new Map() };
const TRIES = 5;

@Injectable()
export class Rulebooks {
  private readonly known = new Map<string, Known>();

  constructor(private readonly ledgers: Ledgers) {}

  async drafts(company: string): Promise<readonly SavedDraft[]> {
    const { rulebook, done } = await this.load(company);
    return Object.values(rulebook.drafts).map((draft) => {
      const { by = '', at = '' } = done.get(draft.version) ?? {};
      return { ...draft, by, at };
    });
  }

  /** @throws Problem not-found */
  async draft(company: string, id: string): Promise<SavedDraft> {
    const found = (await this.drafts(company)).find((each) => each.id === id);
    if (!found) throw new Problem('not-found', 'There is no such draft; it may be published.');
    return found;
  }

  /** Also where the same was asked before; @throws Problem with every refusal */
  async execute(
    asking: Acting,
    command: RulebookCommand,
    key: string,
    asked: unknown = command,
  ): Promise<Done> {
    const { company, person, roles } = asking;
    const written = {
      company: company.id,
      by: { person: person.id, role: 'standards-manager' },
      commandId: `${person.id}/${key}`,
      asked,
    };
    for (let attempt = 1; attempt <= TRIES; attempt++) {
      const { rulebook } = await this.load(company.id);
      const day = new Date().toISOString().slice(0, 10);
      const decision = decideRulebook(rulebook, command, { roles, book: RULE_BOOK, day });
      if (!decision.ok) {
        const before = await this.ledgers.accepted(company.id, written.commandId);
        if (!before) throw refused(decision.refusals);
        if (before.digest !== digestOf(asked)) throw keyUsed();
        return this.doneAt(company.id, before.versions[RULEBOOK]);
      }
      const request = oneStream(written, RULEBOOK, rulebook.version, decision.events);
      const result = await this.ledgers.append(request);
      if (result.kind === 'command-reused') throw keyUsed();
      if (result.kind !== 'wrong-version')
        return this.doneAt(company.id, result.versions[RULEBOOK]);
    }
    throw new Problem('busy', { detail: 'Others are at the rulebook; try again.', retryAfter: 1 });
  }

  private async doneAt(company: string, version: number | undefined): Promise<Done> {
    const done = (await this.load(company)).done.get(version ?? 0);
    if (!done) throw new Error(`the rulebook of ${company} has no entry ${version}`);
    return done;
  }

  private async load(company: string): Promise<Known> {
    const known = this.known.get(company) ?? UNKNOWN;
    const events = await this.ledgers.ledger.readStream(company, RULEBOOK, {
      from: known.rulebook.version + 1,
    });
    if (events.length === 0) return known;
    const next: Known = {
      rulebook: events.reduce(
        (state, event) => evolveRulebook(state, asEvent(event)),
        known.rulebook,
      ),
      done: new Map([
        ...known.done,
        ...events.map((event) => [event.version, doneBy(event)] as const),
      ]),
    };
    const kept = this.known.get(company);
    if (!kept || kept.rulebook.version < next.rulebook.version) this.known.set(company, next);
    return next;
  }
}

function doneBy({ by, recordedAt, data }: Recorded): Done {
  const { draft, edition } = data as { draft?: string; edition?: { number: number } };
  return { by: by.person, at: recordedAt, draft, number: edition?.number };
}

const keyUsed = () => new Problem('conflict', 'This Idempotency-Key was used for something else.');
const asEvent = (event: Recorded): RulebookEvent => event as unknown as RulebookEvent;
