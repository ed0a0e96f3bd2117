// What a job of the large demonstration is told with: its plan, its steps, and what is known between two.

import type { Attachment, CommandInput, FactEntry, FileRef } from '#jobs/contract';
import type { Job } from '#jobs';
import { facts } from '../demonstration/steps.js';
import type { Dice } from './dice.js';
import type { Kind, Told } from './kinds.js';
import type { Post } from './staff.js';

export interface Plan {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  readonly kind: Kind;
  readonly opened: string;
  readonly customer: { readonly id: string; readonly commitment: string };
  readonly site: { readonly id: string; readonly commitment: string };
  readonly dice: Dice;
  /** Spreads the jobs over colleagues of the same post. */
  readonly turn: number;
  /** An invented note that stands for photos and letters. */
  readonly paper: FileRef;
}

/** A command; of an engineer's answer the packet's digest is added by who plays it. */
export type Spoken =
  CommandInput | Omit<Extract<CommandInput, { type: 'answer-sign-off' }>, 'packet'>;

export interface Step {
  readonly days: number;
  readonly who: Post;
  /** Where it must be this person and nobody else of the post. */
  readonly person?: string;
  readonly command: Spoken;
}

export interface Look {
  readonly job: Job;
  readonly day: string;
  /** The option that would be recommended with this attachment today, or none. */
  readonly recommend: (attachment: Attachment) => string | null;
  /** Whether a profile's load chart is another one today than in that edition of the catalogue. */
  readonly chartReplaced: (profile: string, edition: number) => boolean;
}
export type Story = Generator<Step, void, Look>;
export type Chapter<T = Look> = Generator<Step, T, Look>;

export const SURFACE = 'main';
export const BUILDING = 'b1';

/** Says one thing and gives what the job is then. */
export function* say(days: number, who: Post, command: Spoken, person?: string): Chapter {
  return yield { days, who, command, ...(person === undefined ? {} : { person }) };
}

export const recorded = (
  how: FactEntry['how'],
  source: string,
  ...of: readonly (readonly [on: string | null, ...told: readonly Told[]])[]
): CommandInput => ({
  type: 'record-facts',
  reason: source,
  facts: of.flatMap(([on, ...told]) => facts(on, how, source, ...told)),
});
