// Sees when the process clock was set back: it then shows less than the time of an entry already there.
// Entries keep their order and their rising times; a step is told once, until the clock has caught up
// or is set back again.

/** A second: clocks of several instances may differ by so much, and a fine correction is no step. */
export const CLOCK_TOLERANCE = 1_000_000;

/** All in microseconds; times since 1970. */
export interface ClockStep {
  readonly clock: number;
  /** The last entry's time. */
  readonly recordedAt: number;
  /** By how much the clock is behind it. */
  readonly behind: number;
}

/** Gives the step that a look at the clock finds, if it was not told of. */
export function watchClock(): (clock: number, recordedAt: number) => ClockStep | undefined {
  let toldAt: number | undefined;
  return (clock, recordedAt) => {
    const behind = recordedAt - clock;
    if (behind <= CLOCK_TOLERANCE) {
      toldAt = undefined;
      return undefined;
    }
    const again = toldAt !== undefined && clock >= toldAt - CLOCK_TOLERANCE;
    toldAt = Math.max(clock, again ? (toldAt ?? clock) : clock);
    return again ? undefined : { clock, recordedAt, behind };
  };
}
