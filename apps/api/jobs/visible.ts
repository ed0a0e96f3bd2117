// An engineer who is nothing else here sees the jobs they were asked about, and no other.

import type { Job } from '#jobs';
import type { Acting } from '../http/signed-in.js';
import { Problem } from '../problems.js';

/** @throws Problem forbidden */
export function refuseUnseen(job: Job, { roles, person }: Acting): void {
  const outside = roles.every((role) => role === 'engineer' || role === 'customer');
  const asked = Object.values(job.signOffs).some(({ engineer }) => engineer === person.id);
  if (outside && !asked) throw new Problem('forbidden', 'This job was not sent to you.');
}
