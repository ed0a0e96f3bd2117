// What every stage's page is given.

import type { JobView, SurfaceView } from '#jobs/contract';

export interface StageProps {
  readonly job: JobView;
  readonly version: number;
  readonly surface: SurfaceView;
  readonly nameOf: (id: string) => string;
  /** Whether this person may confirm stages. */
  readonly may: boolean;
}
