// The take-off that a surface has, and whether it still counts: a change of what it was made from makes
// it stale, and setting the value back revives nothing.

import type { EventData, PastEvent } from '../contract/events.js';
import type { Job, TakeOffState } from '../job.js';
import type { PathChange } from '../lookup.js';

export function takenOff(job: Job, data: EventData['take-off-recorded/1'], event: PastEvent): Job {
  const state: TakeOffState = { ...data, by: event.by.person, at: event.recordedAt, causes: [] };
  return { ...job, takeOffs: { ...job.takeOffs, [data.surface]: state } };
}

export function markTakeOffs(
  job: Job,
  changes: readonly PathChange[],
  event: PastEvent,
  reason: string | null,
): Job {
  const hit = Object.values(job.takeOffs).flatMap((each) => {
    const causes = changes
      .filter(({ path }) => Object.hasOwn(each.reads, path))
      .map((change) => ({ ...change, at: event.recordedAt, by: event.by.person, reason }));
    return causes.length > 0 ? [{ ...each, causes: [...each.causes, ...causes] }] : [];
  });
  if (hit.length === 0) return job;
  return {
    ...job,
    takeOffs: { ...job.takeOffs, ...Object.fromEntries(hit.map((each) => [each.surface, each])) },
  };
}
