// For tests: given(events).when(command).then(events) or .thenRefused('GAUGE-01'); and a story, which
// plays commands one after the other and keeps what they made.

import { EDITION_1, RULE_BOOK, type Role } from '#rules';
import { Command, type CommandInput } from './contract/commands.js';
import type { JobEvent, PastEvent } from './contract/events.js';
import { decide } from './decide.js';
import { DEFAULT_POLICY, type Context, type Decision } from './decision.js';
import { evolve } from './evolve.js';
import { initial, type Job } from './job.js';
import { SAMPLE_CATALOGUE } from './sample.table.js';

export const ENGINEER = '0190b5a0-0000-7000-8000-00000000e001';
export const CUSTOMER = '0190b5a0-0000-7000-8000-00000000c001';
export const SITE = '0190b5a0-0000-7000-8000-00000000d001';

export function contextOf(
  roles: readonly Role[] = ['project-manager'],
  rest: Partial<Context> = {},
): Context {
  return {
    by: { person: roles.includes('engineer') ? ENGINEER : `person-${roles[0] ?? 'nobody'}`, roles },
    at: '2026-03-02T09:00:00.000000Z',
    book: RULE_BOOK,
    edition: EDITION_1,
    editionDigest: 'e'.repeat(64),
    catalogue: SAMPLE_CATALOGUE,
    catalogueDigest: 'c'.repeat(64),
    policy: DEFAULT_POLICY,
    ...rest,
  };
}

export function past(event: JobEvent, version: number, context = contextOf()): PastEvent {
  const minute = String(version % 60).padStart(2, '0');
  const hour = String(9 + (Math.floor(version / 60) % 12)).padStart(2, '0');
  const at = `2026-03-02T${hour}:${minute}:00.000000Z`;
  return {
    ...event,
    id: `event-${version}`,
    version,
    by: { person: context.by.person, role: context.by.roles[0] ?? '' },
    recordedAt: at,
    effectiveAt: at,
  };
}

export interface Story {
  readonly job: Job;
  readonly events: readonly PastEvent[];
  /** Plays a command; throws with every refusal where it is refused. */
  play(command: CommandInput, roles?: readonly Role[], rest?: Partial<Context>): Story;
  /** Codes of the refusals; empty where it would be accepted. */
  refusals(
    command: CommandInput,
    roles?: readonly Role[],
    rest?: Partial<Context>,
  ): readonly string[];
  decision(command: CommandInput, roles?: readonly Role[], rest?: Partial<Context>): Decision;
}

export function story(events: readonly PastEvent[] = []): Story {
  const job = events.reduce(evolve, initial('job-1'));
  const decision: Story['decision'] = (command, roles, rest) =>
    decide(job, Command.parse(command), contextOf(roles, rest));
  return {
    job,
    events,
    decision,
    refusals: (command, roles, rest) => {
      const made = decision(command, roles, rest);
      return made.ok ? [] : made.refusals.map(({ code }) => code);
    },
    play: (command, roles, rest) => {
      const made = decision(command, roles, rest);
      if (!made.ok)
        throw new Error(
          `${command.type} refused: ${made.refusals.map(({ code, words }) => `${code} ${words}`).join(' | ')}`,
        );
      const next = made.events.map((event, i) =>
        past(event, job.version + i + 1, contextOf(roles, rest)),
      );
      return story([...events, ...next]);
    },
  };
}
