// Notices when the clock of the machine was set: then the time since the last look, by the clock and
// by a counter that nobody sets, is not the same.

const MOST_APART_MS = 5 * 60_000;

export class SteadyClock {
  private last: { readonly clock: number; readonly counter: number } | undefined;

  /** Whether the clock ran evenly since the last look; the first look has nothing to compare. */
  look(clock: number, counter: number): boolean {
    const { last } = this;
    this.last = { clock, counter };
    return !last || Math.abs(clock - last.clock - (counter - last.counter)) <= MOST_APART_MS;
  }
}
