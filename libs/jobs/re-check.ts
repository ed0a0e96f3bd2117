// What a change puts up for re-check: every later stage that read a changed path, and every sign-off
// whose scope holds it. Setting a value back revives neither.

import type { ConfirmedStage, PastEvent } from './contract/events.js';
import { CONFIRMED_STAGES, stagesAfter, type Job, type Surface } from './job.js';
import { same, type PathChange } from './lookup.js';
import { markTakeOffs } from './take-off/state.js';

export function withSurface(job: Job, surface: Surface): Job {
  return { ...job, surfaces: { ...job.surfaces, [surface.id]: surface } };
}

/** The job with one surface changed; a surface that does not exist is a fault. */
export function change(job: Job, id: string, how: (surface: Surface) => Surface): Job {
  const surface = job.surfaces[id];
  if (!surface) throw new Error(`${job.id} has no surface ${id}`);
  return withSurface(job, how(surface));
}

/** Marks what read a changed path: stages for re-check, sign-offs as differing. */
export function markChanges(
  job: Job,
  changes: readonly PathChange[],
  event: PastEvent,
  reason: string | null,
): Job {
  if (changes.length === 0) return job;
  const own = event.type in STAGE_OF ? STAGE_OF[event.type as keyof typeof STAGE_OF] : null;
  let next = job;
  for (const surface of Object.values(job.surfaces)) {
    const later =
      own && (event.data as { surface: string }).surface === surface.id
        ? stagesAfter(own)
        : CONFIRMED_STAGES;
    for (const stage of later) {
      const state = surface.stages[stage];
      const hit = state.record
        ? changes.filter(({ path }) => Object.hasOwn(state.record!.reads, path))
        : [];
      if (hit.length === 0) continue;
      const causes = hit.map((each) => ({
        ...each,
        at: event.recordedAt,
        by: event.by.person,
        reason,
      }));
      next = change(next, surface.id, (s) => ({
        ...s,
        stages: {
          ...s.stages,
          [stage]: {
            ...s.stages[stage],
            status: 'needs-recheck',
            causes: [...s.stages[stage].causes, ...causes],
          },
        },
      }));
    }
  }
  return markTakeOffs(markSignOffs(next, changes), changes, event, reason);
}

const STAGE_OF = {
  'style-chosen/1': 'style',
  'coating-chosen/1': 'coating',
  'hazards-assessed/1': 'hazards',
  'substrate-confirmed/1': 'substrate',
  'gauge-selected/1': 'gauge',
} as const satisfies Partial<Record<PastEvent['type'], ConfirmedStage>>;

function markSignOffs(job: Job, changes: readonly PathChange[]): Job {
  const signOffs = Object.values(job.signOffs).flatMap((signOff) => {
    const found = Object.entries(signOff.scope).flatMap(([surface, reads]) =>
      changes
        .filter(({ path, to }) => Object.hasOwn(reads, path) && !same(reads[path], to))
        .map(({ path, to }) => ({ surface, path, from: reads[path], to })),
    );
    if (found.length === 0) return [];
    const kept = signOff.differences.filter(
      (old) => !found.some((f) => f.surface === old.surface && f.path === old.path),
    );
    return [{ ...signOff, differences: [...kept, ...found] }];
  });
  if (signOffs.length === 0) return job;
  return {
    ...job,
    signOffs: { ...job.signOffs, ...Object.fromEntries(signOffs.map((s) => [s.id, s])) },
  };
}
