// Plays a story in process: each command is decided on the day it is given, under the editions then in
// force, and what it makes is appended. The days are simulated and stand in `effectiveAt`; when it
// was recorded is the ledger's own clock.

import {
  Command,
  decide,
  evaluate,
  evolve,
  initial,
  questionOf,
  roleFor,
  type Context,
  type Job,
  type JobEvent,
  type Refusal,
} from '#jobs';
import { dayPlus, LAST_DAY } from './dice.js';
import { RESTORED } from './restored.js';
import { REPLACED } from './past-editions.js';
import { isThere, onDuty, STAFF, type Colleague } from './staff.js';
import { SURFACE, type Look, type Plan, type Step } from './chapter.js';
import { story } from './story.js';

export interface Said {
  readonly job: Job;
  readonly number: string;
  /** How many commands came before it. */
  readonly turn: number;
  readonly command: Command;
  readonly by: Colleague;
  readonly role: string;
  readonly at: string;
  readonly events: readonly JobEvent[];
}
export interface World {
  readonly contextAt: (at: string, by: Colleague) => Context;
  readonly append: (said: Said) => Promise<void>;
  /** Digest of the packet an engineer sees; it exists once the request is appended. */
  readonly packet: (job: string, request: string) => Promise<string>;
}

/** The job as far as it has come by the last day. */
export async function tell(plan: Plan, world: World): Promise<Job> {
  const telling = story(plan);
  let noted = false;
  let job = initial(plan.id);
  let day = plan.opened;
  let next = telling.next();
  for (let turn = 0; !next.done; turn++) {
    const step = next.value;
    day = dayPlus(day, step.days);
    const by = speaker(step, day, plan.turn);
    if (day > LAST_DAY || !isThere(by, day)) break;
    const context = world.contextAt(momentOf(day, turn), by);
    const command = Command.parse(
      step.command.type === 'answer-sign-off'
        ? { ...step.command, packet: await world.packet(plan.id, step.command.request) }
        : step.command,
    );
    const decided = decideReading(job, command, context, plan);
    const said: Said = {
      job,
      turn,
      by,
      number: plan.number,
      command: decided.command,
      at: context.at,
      events: decided.events,
      role: roleFor(command.type, by.roles) ?? '',
    };
    await world.append(said);
    job = folded(said);
    if (reentered(day) && !noted) {
      noted = true;
      job = await note(plan, world, job, { day, turn: ++turn });
    }
    next = telling.next(lookAt(job, day, context));
  }
  return job;
}

/** A command by the office, said in between: this job's entries of these days came back from paper. */
async function note(
  plan: Plan,
  world: World,
  job: Job,
  { day, turn }: { readonly day: string; readonly turn: number },
): Promise<Job> {
  const by = onDuty('office', day, plan.turn);
  const { at, ...rest } = world.contextAt(momentOf(day, turn), by);
  const command = Command.parse({ type: 'add-note', about: null, words: RESTORED.words });
  const decided = decide(job, command, { at, ...rest });
  if (!decided.ok) throw new Error(`${plan.number}: ${words(decided.refusals)}`);
  const said: Said = {
    job,
    turn,
    by,
    number: plan.number,
    command,
    at,
    events: decided.events,
    role: roleFor(command.type, by.roles) ?? '',
  };
  await world.append(said);
  return folded(said);
}

const reentered = (day: string): boolean => RESTORED.from <= day && day <= RESTORED.to;

function speaker({ who, person }: Step, day: string, turn: number): Colleague {
  if (person === undefined) return onDuty(who, day, turn);
  const named = STAFF.find(({ id }) => id === person);
  if (!named) throw new Error(`there is no colleague ${person}`);
  return named;
}

/** Ten minutes apart within a day, so that their order shows. */
const momentOf = (day: string, turn: number): string =>
  new Date(Date.parse(`${day}T08:00:00Z`) + turn * 600_000).toISOString().replace('Z', '000Z');

/** Cautions that a command meets are read and acknowledged, as a person would; any other refusal is a fault of the story. */
function decideReading(
  job: Job,
  command: Command,
  context: Context,
  plan: Plan,
): { command: Command; events: readonly JobEvent[] } {
  const first = decide(job, command, context);
  if (first.ok) return { command, events: first.events };
  const cautions = first.refusals
    .filter(({ code }) => code === 'MOVE-05')
    .map(({ words }) => words.split(' ')[0] ?? '');
  const read = 'acknowledges' in command ? { ...command, acknowledges: cautions } : command;
  const second = cautions.length > 0 ? decide(job, read, context) : first;
  if (second.ok) return { command: read, events: second.events };
  throw new Error(
    `${plan.number} (${plan.kind.id}) stops at ${command.type} on ${context.at}: ${words(second.refusals)}`,
  );
}
const words = (refusals: readonly Refusal[]): string =>
  refusals.map((each) => `${each.code} ${each.words}`).join(' | ');

function folded({ job, turn, events, by, role, at }: Said): Job {
  return events.reduce(
    (state, event) =>
      evolve(state, {
        ...event,
        id: `${turn}`,
        version: state.version + 1,
        by: { person: by.id, role },
        recordedAt: at,
        effectiveAt: at,
      }),
    job,
  );
}

function lookAt(job: Job, day: string, context: Context): Look {
  return {
    job,
    day,
    chartReplaced: (profile, edition) =>
      profile === REPLACED.profile &&
      edition < REPLACED.in_edition &&
      context.catalogue.edition >= REPLACED.in_edition,
    recommend: (attachment) => {
      const surface = job.surfaces[SURFACE];
      const asked = surface && questionOf(job, surface, attachment, context);
      return asked && 'profile' in asked ? evaluate(asked, []).recommendation.option : null;
    },
  };
}
