// Verifies a whole log: every entry, every chain, every root that a checkpoint gives, and the head.

import type { Checkpoint } from './checkpoint.js';
import { Frontier, HASH_BYTES } from './merkle.js';
import type { Hash } from './merkle.js';
import type { EventRow, HeadRow, Store } from './store.js';
import { brokenChain, verifyRange } from './verify-range.js';
import type { ChainLink, Fault, RangeReport } from './verify-range.js';

export interface LogReport {
  /** Entries found good before the first fault. */
  readonly events: number;
  /** Of those entries. */
  readonly root: Hash;
  /** Checkpoints whose root was met. */
  readonly checkpoints: number;
  readonly fault: Fault | undefined;
}

const RANGE = 5000;

/** In this process, with one range read while the one before is verified. */
export async function verifyLog(
  store: Pick<Store, 'readHead' | 'readRows'>,
  log: string,
  checkpoints: readonly Checkpoint[],
): Promise<LogReport> {
  const state = await store.readHead(log);
  const read = (after: number) =>
    store.readRows(log, after, Math.min(RANGE, Math.max(1, state.pos - after)));
  async function* ranges(): AsyncGenerator<RangeReport> {
    let next: Promise<EventRow[]> = read(0);
    for (let start = 0; start < state.pos; start += RANGE) {
      const rows = await next;
      if (start + RANGE < state.pos) next = read(start + RANGE);
      next.catch(() => undefined);
      yield verifyRange(log, start, rows, Math.min(RANGE, state.pos - start));
    }
  }
  const report = await joinRanges(state, ranges(), checkpoints);
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
): Promise<LogReport> {
  const frontier = new Frontier();
  const heads = new Map<string, ChainLink>();
  const open = [...checkpoints].sort((a, b) => a.size - b.size);
  const met: Checkpoint[] = [];
  let lastAt = 0;
  const report = (fault?: Fault): LogReport => {
    return { events: frontier.size, root: frontier.root(), checkpoints: met.length, fault };
  };
  const meet = (): Fault | undefined => {
    for (let next = open[0]; next?.size === frontier.size; next = open[0]) {
      if (!next.root.equals(frontier.root())) return altered(met.at(-1)?.size ?? 0, next.size);
      met.push(next);
      open.shift();
    }
    return undefined;
  };
  let fault = meet();
  if (fault !== undefined) return report(fault);
  for await (const range of ranges) {
    const found = earliest([range.fault, chainFault(heads, range), timeFault(lastAt, range)]);
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
    for (const link of range.lasts) heads.set(link.stream, link);
    lastAt = range.lastAt;
  }
  return report(endFault(state, frontier, lastAt, open[0]));
}

/** A row behind the head belongs to nothing; a head that moved meanwhile explains it. */
export async function beyondHead(
  store: Pick<Store, 'readHead' | 'readRows'>,
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

function earliest(faults: readonly (Fault | undefined)[]): Fault | undefined {
  return faults.filter((fault) => fault !== undefined).sort((a, b) => a.pos - b.pos)[0];
}

function chainFault(heads: ReadonlyMap<string, ChainLink>, range: RangeReport): Fault | undefined {
  for (const link of range.firsts) {
    const before = heads.get(link.stream) ?? { version: 0, leaf: null };
    const says = brokenChain(before, link);
    if (says !== undefined) return { pos: link.pos, says };
  }
  return undefined;
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
