// What each part of a claim's page is about.

import type { ClaimView, JobView } from '#jobs/contract';

export interface OfClaim {
  readonly job: JobView;
  readonly claim: ClaimView;
}
