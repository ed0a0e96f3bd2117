// One line of the job list: where the job stands, what is next, and whose it is.

import { AFTER_WORDS, afterStage, nextAfter } from './after-order/view.js';
import type { JobRow } from './contract/views.js';
import { activeSurfaces, CONFIRMED_STAGES, surfaceStage, type Job, type Surface } from './job.js';
import { jobStage, stageWords } from './view.js';

/** Names stand as ids; whoever keeps the list fills them in. */
export function jobRow(job: Job): JobRow {
  const after = afterStage(job);
  const stage = after ?? jobStage(job);
  const surfaces = activeSurfaces(job);
  const next = nextAction(job, surfaces);
  return {
    id: job.id,
    number: job.number,
    name: job.name,
    customer: job.parties['customer']?.id ?? '',
    site: job.site?.id ?? '',
    stage,
    stage_words: after ? AFTER_WORDS[after] : stageWords(jobStage(job)),
    state: next.state,
    surfaces_done: surfaces.filter((surface) => surfaceStage(job, surface) === 'done').length,
    surfaces: surfaces.length,
    next_action: next.words,
    on: next.on,
    due: job.due,
    assigned: job.assigned,
    updated_at: job.updatedAt,
  };
}

interface Next {
  readonly state: JobRow['state'];
  readonly words: string;
  readonly on: string;
}

function nextAction(job: Job, surfaces: readonly Surface[]): Next {
  if (surfaces.length === 0) return { state: 'Ready', words: 'Add the surfaces', on: 'office' };
  const open = surfaces.filter((surface) => surfaceStage(job, surface) !== 'done');
  const first = open[0];
  const after = afterStage(job);
  if (!first)
    return after
      ? nextAfter(job, after)
      : { state: 'Ready', words: 'Issue the order', on: 'office' };
  const blocked = open
    .map((surface) => ({ surface, why: blockedWhy(job, surface) }))
    .find(({ why }) => why !== null);
  if (blocked?.why)
    return { state: 'Blocked', words: `${blocked.surface.name}: ${blocked.why}`, on: 'office' };
  const waiting = open.find((surface) => standingOf(job, surface) === 'waiting');
  if (waiting)
    return {
      state: 'Waiting',
      words: `${waiting.name}: engineer's answer`,
      on: job.signOffs[waiting.signOff ?? '']?.engineer ?? 'engineer',
    };
  const stage = surfaceStage(job, first);
  return stage === 'sign-off'
    ? { state: 'Ready', words: `${first.name}: ask an engineer to sign`, on: 'project manager' }
    : { state: 'Ready', words: `${first.name}: ${NEXT[stage as keyof typeof NEXT]}`, on: 'office' };
}

const NEXT = {
  style: 'choose the panel style',
  coating: 'choose the coating',
  hazards: 'assess the hazards',
  substrate: 'confirm the substrate',
  gauge: 'select the gauge',
} as const;

const standingOf = (job: Job, surface: Surface): string | undefined =>
  surface.signOff ? job.signOffs[surface.signOff]?.standing : undefined;

function blockedWhy(job: Job, surface: Surface): string | null {
  const recheck = CONFIRMED_STAGES.find(
    (stage) => surface.stages[stage].status === 'needs-recheck',
  );
  if (recheck) return `${recheck} needs a re-check`;
  const standing = standingOf(job, surface);
  if (standing === 'declined') return 'the engineer declined';
  if (standing === 'revoked') return 'the sign-off was revoked';
  const signOff = surface.signOff ? job.signOffs[surface.signOff] : undefined;
  if (
    signOff &&
    signOff.standing !== 'waiting' &&
    signOff.differences.some((each) => each.surface === surface.id)
  ) {
    return 'the sign-off needs a re-check';
  }
  return null;
}
