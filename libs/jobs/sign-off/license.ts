// A license as stated by its holder: in force and of the job's jurisdiction on the day it signs. The
// software looks nothing up and says so.

import type { License } from '../contract/commands.js';
import type { Job } from '../job.js';
import { refuse, type Refusal } from '../refusal.js';

export function licenseRefusals(job: Job, license: License, day: string, at: string): Refusal[] {
  const refusals: Refusal[] = [];
  if (license.expires < day) {
    refusals.push(
      refuse(
        'MOVE-14',
        `License ${license.number} expired on ${license.expires}, before ${day}.`,
        `${at}/expires`,
      ),
    );
  }
  if (job.jurisdiction === null) {
    refusals.push(
      refuse(
        'MOVE-14',
        'The job names no jurisdiction yet: record it first.',
        `${at}/jurisdiction`,
      ),
    );
  } else if (license.jurisdiction !== job.jurisdiction) {
    refusals.push(
      refuse(
        'MOVE-14',
        `License ${license.number} is of ${license.jurisdiction}; the job is in ${job.jurisdiction}.`,
        `${at}/jurisdiction`,
      ),
    );
  }
  return refusals;
}
