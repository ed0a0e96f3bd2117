// How many jobs a filter gives. Counting tens of thousands of rows for every page would be most of a
// list's work: a total stands while the list stands still, and a large one for a few seconds more.

import { Injectable } from '@nestjs/common';

/** What fits on a screen's pages is counted anew each time. */
const LARGE = 5000;
const STANDS_MS = 5000;
const MOST = 200;

interface Total {
  readonly total: number;
  /** The position of the record that the list had reached. */
  readonly pos: number;
  readonly at: number;
}

@Injectable()
export class JobTotals {
  private readonly known = new Map<string, Total>();

  /** Exact at `pos`; of more than 5,000 at most five seconds old. */
  async of(filter: string, pos: number, count: () => Promise<number>): Promise<number> {
    const known = this.known.get(filter);
    if (known && this.stands(known, pos)) return known.total;
    const total = await count();
    this.known.delete(filter);
    this.known.set(filter, { total, pos, at: Date.now() });
    for (const oldest of this.known.keys()) {
      if (this.known.size <= MOST) break;
      this.known.delete(oldest);
    }
    return total;
  }

  private stands({ total, pos: then, at }: Total, pos: number): boolean {
    const age = Date.now() - at;
    return age >= 0 && age < STANDS_MS && (then === pos || total > LARGE);
  }
}
