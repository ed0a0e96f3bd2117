// Verifies a whole log: every entry, every chain, every root that a checkpoint gives, and the head.

import type { Checkpoint } from './checkpoint.js';
import type { Fault, LogReport } from './ledger.js';
import { Frontier, HASH_BYTES } from './merkle.js';
import type { EventRow, HeadRow, Store } from './store.js';
import { verifyLinks } from './verify-links.js';
import { earliest, verifyRange } from './verify-range.js';
import type { RangeReport } from './verify-range.js';

/** Where a verification stands, small enough to be kept: another process goes on from it. */
export interface VerifyProgress {
  /** Entries found good. */
  readonly size: number;
  readonly frontier: Buffer;
  /** Of the last of them, in microseconds since 1970. */
  readonly lastAt: number;
  /** Checkpoints met so far, and the size of the largest. */
  readonly met: number;
  readonly lastMet: number;
}

export interface VerifyCourse {
  readonly from?: VerifyProgress;
  /** Called after each range; the next one waits for it. */
  readonly onProgress?: (progress: VerifyProgress) => void | Promise<void>;
}

const RANGE = 5000;
type Reading = Pick<Store, 'readHead' | 'readRows' | 'readLinks'>;

/** In this process, with one range read while the one before is verified. */
export async function verifyLog(
  store: Reading,
  log: string,
  checkpoints: readonly Checkpoint[],
  course: VerifyCourse = {},
): Promise<LogReport> {
  const state = await store.readHead(log);
  const first = course.from?.size ?? 0;
  const read = (after: number) =>
    store.readRows(log, after, Math.min(RANGE, Math.max(1, state.pos - after)));
  async function* ranges(): AsyncGenerator<RangeReport> {
    let next: Promise<EventRow[]> = read(first);
    for (let start = first; start < state.pos; start += RANGE) {
      const rows = await next;
      if (start + RANGE < state.pos) next = read(start + RANGE);
      next.catch(() => undefined);
      const report = verifyRange(log, start, rows, Math.min(RANGE, state.pos - start));
      yield await verifyLinks(store, log, report);
    }
  }
  const report = await joinRanges(state, ranges(), checkpoints, course);
  if (report.fault !== undefined) return report;
  return { ...report, fault: await beyondHead(store, log, state) };
}

/**
 * Takes the ranges in order. A checkpoint from outside the database finds what whoever owns the
 * database recomputed; such an entry lies after the last checkpoint that was still met.
 */
export async function joinRanges(
  state: HeadRow,
  ranges: AsyncIterable<RangeReport>,
  checkpoints: readonly Checkpoint[],
  { from = NOTHING_YET, onProgress }: VerifyCourse = {},
): Promise<LogReport> {
  const frontier = Frontier.decode(from.size, from.frontier);
  let { lastAt, met, lastMet } = from;
  const open = checkpoints.filter(({ size }) => size >= from.size).sort((a, b) => a.size - b.size);
  const report = (fault?: Fault): LogReport => {
    return { events: frontier.size, root: frontier.root(), checkpoints: met, lastMet, fault };
  };
  const meet = (): Fault | undefined => {
    for (let next = open[0]; next?.size === frontier.size; next = open[0]) {
      if (!next.root.equals(frontier.root())) return altered(lastMet, next.size);
      met++;
      lastMet = next.size;
      open.shift();
    }
    return undefined;
  };
  let fault = meet();
  if (fault !== undefined) return report(fault);
  for await (const range of ranges) {
    const found = earliest([range.fault, timeFault(lastAt, range)]);
    const good = Math.min(
      range.leaves.length / HASH_BYTES,
      (found?.pos ?? Infinity) - 1 - range.start,
    );
    for (let i = 0; i < good && fault === undefined; i++) {
      frontier.append(Buffer.from(range.leaves.subarray(i * HASH_BYTES, (i + 1) * HASH_BYTES)));
      fault = meet();
    }
    fault ??= found;
    if (fault !== undefined) return report(fault);
    lastAt = range.lastAt;
    const { size } = frontier;
    await onProgress?.({ size, frontier: frontier.encode(), lastAt, met, lastMet });
  }
  return report(endFault(state, frontier, lastAt, open[0]));
}

const NOTHING_YET: VerifyProgress = {
  size: 0,
  frontier: Buffer.alloc(0),
  lastAt: 0,
  met: 0,
  lastMet: 0,
};

/** A row behind the head belongs to nothing; a head that moved meanwhile explains it. */
export async function beyondHead(
  store: Reading,
  log: string,
  state: HeadRow,
): Promise<Fault | undefined> {
  const extra = await store.readRows(log, state.pos, 1);
  if (extra.length === 0) return undefined;
  const now = (await store.readHead(log)).pos;
  if (now > state.pos) return undefined;
  return { pos: state.pos + 1, says: `the head says that the log ends at ${state.pos}` };
}

function altered(from: number, to: number): Fault {
  const says =
    `an entry from ${from + 1} to ${to} was altered and the hashes computed anew: ` +
    `the root of the first ${to} entries is not the one that was signed`;
  return { pos: from + 1, says };
}

function timeFault(lastAt: number, range: RangeReport): Fault | undefined {
  if (range.leaves.length === 0 || range.firstAt > lastAt) return undefined;
  return { pos: range.start + 1, says: 'it was recorded before the entry in front of it' };
}

function endFault(
  state: HeadRow,
  frontier: Frontier,
  lastAt: number,
  missed: Checkpoint | undefined,
): Fault | undefined {
  const { size } = frontier;
  if (missed !== undefined) {
    const says = `entries ${size + 1} to ${missed.size} are missing: a checkpoint was signed over them`;
    return { pos: size + 1, says };
  }
  if (!state.root.equals(frontier.root()) || !state.frontier.equals(frontier.encode())) {
    return { pos: size, says: "the head's root is not the root of the entries" };
  }
  if (state.lastAt !== lastAt)
    return { pos: size, says: "the head's time is not the last entry's" };
  return undefined;
}
