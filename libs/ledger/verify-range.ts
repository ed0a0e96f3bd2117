// Verifies rows of a log that follow each other: each body against its leaf and its copied columns,
// positions and times in order, and within the range each version against the one before.

import type { Fault } from './ledger.js';
import { HASH_BYTES, leafHash } from './merkle.js';
import type { EventRow } from './store.js';
import { parseMicros } from './time.js';

export interface RangeReport {
  /** Entries before the range. */
  readonly start: number;
  /** Leaf hashes of the entries found good, one after another. */
  readonly leaves: Uint8Array;
  /** The first entry of each stream in the range, to be compared with the ranges before. */
  readonly firsts: readonly ChainLink[];
  /** Microseconds since 1970; 0 for an empty range. */
  readonly firstAt: number;
  readonly lastAt: number;
  readonly fault: Fault | undefined;
}

export interface ChainLink {
  readonly stream: string;
  readonly pos: number;
  readonly version: number;
  /** Leaf hash, hexadecimal, of the version before. */
  readonly prev: string | null;
  readonly leaf: string;
}

/** `count` entries must be there. Stops at the first fault. */
export function verifyRange(
  log: string,
  start: number,
  rows: readonly EventRow[],
  count: number,
): RangeReport {
  const leaves = Buffer.alloc(rows.length * HASH_BYTES);
  const firsts: ChainLink[] = [];
  const heads = new Map<string, ChainLink>();
  let lastAt = 0;
  let good = 0;
  let fault: Fault | undefined;
  for (const row of rows) {
    const pos = start + good + 1;
    const link = verifyRow(log, pos, row, lastAt);
    if (typeof link === 'string') {
      fault = { pos, says: link };
      break;
    }
    const before = heads.get(row.stream);
    const says = before && brokenChain(before, link);
    if (says !== undefined) {
      fault = { pos, says };
      break;
    }
    if (before === undefined) firsts.push(link);
    heads.set(row.stream, link);
    leaves.set(row.leaf, good * HASH_BYTES);
    lastAt = row.recordedAt;
    good++;
  }
  if (fault === undefined && good < count) fault = missing(start + good + 1);
  const used = leaves.subarray(0, good * HASH_BYTES);
  const firstAt = rows[0]?.recordedAt ?? 0;
  return { start, leaves: used, firsts, firstAt, lastAt, fault };
}

export function earliest(faults: readonly (Fault | undefined)[]): Fault | undefined {
  return faults.filter((fault) => fault !== undefined).sort((a, b) => a.pos - b.pos)[0];
}

function missing(pos: number): Fault {
  return { pos, says: `position ${pos} is missing` };
}

/** Why the second entry does not follow the first in their stream; undefined: it does. */
function brokenChain(
  before: { readonly version: number; readonly leaf: string | null },
  link: ChainLink,
): string | undefined {
  if (link.version !== before.version + 1) {
    return `version ${before.version} of ${link.stream} is followed by ${link.version}`;
  }
  if (link.prev !== before.leaf) return `it does not follow version ${before.version} as recorded`;
  return undefined;
}

/** The part of an envelope after its data, which has the copied fields. */
interface Tail {
  readonly effectiveAt: string;
  readonly log: string;
  readonly pos: number;
  readonly prev: string | null;
  readonly recordedAt: string;
  readonly stream: string;
  readonly type: string;
  readonly version: number;
}

const TAIL = ',"effectiveAt":"';

function verifyRow(log: string, pos: number, row: EventRow, lastAt: number): ChainLink | string {
  if (row.pos !== pos) return missing(pos).says;
  const leaf = leafHash(row.body);
  if (!leaf.equals(row.leaf)) return 'the body does not have the recorded hash';
  const tail = readTail(row.body);
  if (tail === undefined) return 'the body is not an event';
  let wrong: string[];
  try {
    wrong = differences(log, tail, row);
  } catch {
    return 'the body is not an event';
  }
  if (wrong.length > 0) return `columns differ from the body: ${wrong.join(', ')}`;
  if (row.recordedAt <= lastAt) return 'it was recorded before the entry in front of it';
  if ((row.version === 1) !== (tail.prev === null)) return 'only a first version has none before';
  const { stream, version } = row;
  return { stream, pos, version, prev: tail.prev, leaf: leaf.toString('hex') };
}

/** The data stands before these fields, and no string in JSON holds a quote without a backslash. */
function readTail(body: string): Tail | undefined {
  try {
    return JSON.parse(`{${body.slice(body.lastIndexOf(TAIL) + 1)}`) as Tail;
  } catch {
    return undefined;
  }
}

function differences(log: string, tail: Tail, row: EventRow): string[] {
  const wrong: string[] = [];
  if (tail.log !== log) wrong.push('log');
  if (tail.pos !== row.pos) wrong.push('pos');
  if (tail.stream !== row.stream) wrong.push('stream');
  if (tail.version !== row.version) wrong.push('version');
  if (tail.type !== row.type) wrong.push('type');
  if (parseMicros(tail.recordedAt) !== row.recordedAt) wrong.push('recordedAt');
  if (parseMicros(tail.effectiveAt) !== row.effectiveAt) wrong.push('effectiveAt');
  return wrong;
}
