// Proofs over a log's tree and their strict verification: RFC 9162, sections 2.1.3 and 2.1.4.

import { HASH_BYTES, nodeHash } from './merkle.js';

/** Leaves start ≤ i < end. */
export interface Range {
  readonly start: number;
  readonly end: number;
}

/** The subtrees whose roots are the inclusion proof of leaf `index` in a tree of `size` leaves. */
export function inclusionRanges(index: number, size: number): Range[] {
  if (!isCount(size) || !isCount(index) || index >= size) {
    throw new RangeError(`no leaf ${index} in a tree of ${size} leaves`);
  }
  return inclusionIn(index, { start: 0, end: size });
}

/** The same inside one subtree. */
export function inclusionIn(index: number, tree: Range): Range[] {
  if (tree.end - tree.start <= 1) return [];
  const middle = tree.start + split(tree.end - tree.start);
  const left = { start: tree.start, end: middle };
  const right = { start: middle, end: tree.end };
  return index < middle
    ? [...inclusionIn(index, left), right]
    : [...inclusionIn(index, right), left];
}

/** The subtrees whose roots prove that the tree of `from` leaves begins the tree of `to` leaves. */
export function consistencyRanges(from: number, to: number): Range[] {
  if (!isCount(from) || !isCount(to) || from < 1 || from > to) {
    throw new RangeError(`no consistency proof from ${from} to ${to} leaves`);
  }
  return subtreeRanges({ start: 0, end: from }, { start: 0, end: to }, true);
}

/** The same for any subtree; `known`: the verifier has the subtree's own root. */
export function subtreeRanges(part: Range, tree: Range, known: boolean): Range[] {
  if (part.start === tree.start && part.end === tree.end) return known ? [] : [tree];
  const middle = tree.start + split(tree.end - tree.start);
  const left = { start: tree.start, end: middle };
  const right = { start: middle, end: tree.end };
  if (part.end <= middle) return [...subtreeRanges(part, left, known), right];
  if (part.start >= middle) return [...subtreeRanges(part, right, known), left];
  return [...subtreeRanges({ start: middle, end: part.end }, right, false), left];
}

/** True only for a complete, well-formed proof that the leaf is at `index` under this root. */
export function verifyInclusion(
  index: number,
  size: number,
  leaf: Uint8Array,
  proof: readonly Uint8Array[],
  root: Uint8Array,
): boolean {
  if (!isCount(size) || !isCount(index) || index >= size) return false;
  if (![leaf, root, ...proof].every(isHash)) return false;
  let node = index;
  let last = size - 1;
  let hash = leaf;
  for (const sibling of proof) {
    if (last === 0) return false;
    if (node % 2 === 1 || node === last) {
      hash = nodeHash(sibling, hash);
      while (node % 2 === 0 && node > 0) [node, last] = [half(node), half(last)];
    } else {
      hash = nodeHash(hash, sibling);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 && equal(hash, root);
}

/** True only for a complete, well-formed proof that the second tree continues the first. */
export function verifyConsistency(
  from: number,
  to: number,
  fromRoot: Uint8Array,
  toRoot: Uint8Array,
  proof: readonly Uint8Array[],
): boolean {
  if (!isCount(from) || !isCount(to) || from < 1 || from > to) return false;
  if (![fromRoot, toRoot, ...proof].every(isHash)) return false;
  if (from === to) return proof.length === 0 && equal(fromRoot, toRoot);
  const path = isPowerOfTwo(from) ? [fromRoot, ...proof] : proof;
  const [first, ...rest] = path;
  if (first === undefined || proof.length === 0) return false;
  let node = from - 1;
  let last = to - 1;
  while (node % 2 === 1) [node, last] = [half(node), half(last)];
  let before = first;
  let after = first;
  for (const sibling of rest) {
    if (last === 0) return false;
    if (node % 2 === 1 || node === last) {
      before = nodeHash(sibling, before);
      after = nodeHash(sibling, after);
      while (node % 2 === 0 && node > 0) [node, last] = [half(node), half(last)];
    } else {
      after = nodeHash(after, sibling);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 && equal(before, fromRoot) && equal(after, toRoot);
}

/** The largest power of two smaller than `count`, for counts above one. */
export function split(count: number): number {
  let power = 1;
  while (power * 2 < count) power *= 2;
  return power;
}

const half = (n: number): number => Math.floor(n / 2);
const isCount = (n: number): boolean => Number.isSafeInteger(n) && n >= 0;
const isHash = (bytes: Uint8Array): boolean => bytes.length === HASH_BYTES;
const isPowerOfTwo = (n: number): boolean => 2 ** Math.round(Math.log2(n)) === n;
const equal = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;
