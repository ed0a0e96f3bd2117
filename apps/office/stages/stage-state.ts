// Where a surface stands, in words: each of the six stages as done, current, blocked or not started.

import { label, STAGES } from '#jobs/contract';
import type { Stage, StageStatus, SurfaceView } from '#jobs/contract';
import type { Tone } from '../parts/table.js';
import { capital, STATUS_WORDS } from '../parts/words.js';

export interface StageState {
  readonly stage: Stage;
  readonly name: string;
  readonly status: StageStatus;
  readonly state: 'done' | 'current' | 'blocked' | 'not-started';
  /** "done", "current, needs re-check", "not started". */
  readonly words: string;
}

const DONE: readonly StageStatus[] = ['confirmed', 'not-needed'];

export const statusOf = (surface: SurfaceView, stage: Stage): StageStatus =>
  stage === 'sign-off' ? surface.sign_off.status : surface.stages[stage].status;

export function stageStates(surface: SurfaceView): readonly StageState[] {
  return STAGES.map((stage) => {
    const status = statusOf(surface, stage);
    const current = surface.stage === stage;
    const state = stateOf(status, current, surface.on_hold);
    return { stage, name: capital(label(stage)), status, state, words: wordsOf(status, state) };
  });
}

function stateOf(status: StageStatus, current: boolean, onHold: boolean): StageState['state'] {
  if (status === 'declined' || (current && onHold)) return 'blocked';
  if (current) return 'current';
  return DONE.includes(status) && !current ? 'done' : 'not-started';
}

function wordsOf(status: StageStatus, state: StageState['state']): string {
  const words = STATUS_WORDS[status];
  if (state === 'done') return status === 'not-needed' ? 'done: not needed' : 'done';
  if (state === 'not-started') return words;
  const also = status === 'not-started' || DONE.includes(status) ? '' : `, ${words}`;
  return `${state}${also}`;
}

export const stagesDone = (surface: SurfaceView): number =>
  stageStates(surface).filter(({ state }) => state === 'done').length;

/** Ready, Waiting or Blocked as the job list says it; Done where its six stages are. */
export function surfaceState(surface: SurfaceView): { words: string; tone: Tone } {
  if (surface.withdrawn !== null) return { words: 'Withdrawn', tone: 'plain' };
  if (surface.on_hold || surface.sign_off.status === 'declined')
    return { words: 'Blocked', tone: 'blocked' };
  if (surface.stage === 'done') return { words: 'Done', tone: 'plain' };
  if (surface.sign_off.status === 'waiting') return { words: 'Waiting', tone: 'waiting' };
  const recheck = STAGES.some((stage) => statusOf(surface, stage) === 'needs-recheck');
  return recheck ? { words: 'Needs re-check', tone: 'waiting' } : { words: 'Ready', tone: 'ready' };
}

/** The stage a link to this surface opens. */
export const openStage = (surface: SurfaceView): Stage =>
  surface.stage === 'done' ? 'gauge' : surface.stage;
