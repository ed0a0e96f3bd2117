// Why something that was decided must be looked at again.

/** A change that put a stage up for re-check. */
export interface Cause {
  readonly path: string;
  readonly from: unknown;
  readonly to: unknown;
  readonly at: string;
  readonly by: string;
  readonly reason: string | null;
}
