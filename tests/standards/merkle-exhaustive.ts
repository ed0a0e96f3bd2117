// Every subtree, inclusion proof and consistency proof of trees up to 130 leaves, as one digest: the
// loops of the published exhaustive vectors.

import { createHash } from 'node:crypto';
import { Frontier, inclusionIn, inclusionRanges, leafHash, subtreeRanges, treeRoot } from '#ledger';
import type { Range } from '#ledger';

const SIZE = 130;
const all = Array.from({ length: SIZE }, (_, i) => leafHash(Buffer.of(i)));
const roots = new Map<string, string>();

function root({ start, end }: Range): string {
  const key = `${start}-${end}`;
  const known = roots.get(key) ?? treeRoot(all.slice(start, end)).toString('hex');
  roots.set(key, known);
  return known;
}

const proof = (head: string, ranges: readonly Range[]): string =>
  [head, ...ranges.map(root)].join(' ');
const name = ({ start, end }: Range): string => `[${start}, ${end})`;

/** What the case of this id expects, computed. */
export function exhaustiveDigest(id: string): Record<string, unknown> {
  if (id === 'merkle-rolling-plain-roots') return { sha256_hex: rootsDigest() };
  const lines = (loops[id] as () => string[])();
  const digest = createHash('sha256')
    .update(`${lines.join('\n')}\n`)
    .digest('hex');
  return { sha256_of_all_lines_hex: digest };
}

const loops: Record<string, () => string[]> = {
  'merkle-rolling-subtree-hash': () =>
    subtrees(SIZE).map((range) => `${name(range)} ${root(range)}`),
  'merkle-rolling-inclusion': () =>
    subtrees(SIZE).flatMap((range) =>
      span(range.start, range.end).map((i) => proof(`${i} ${name(range)}`, inclusionIn(i, range))),
    ),
  'merkle-rolling-consistency': () =>
    span(0, SIZE + 1).flatMap((size) =>
      subtrees(size).map((range) => {
        const empty = range.start === range.end;
        const ranges = empty ? [] : subtreeRanges(range, { start: 0, end: size }, true);
        return proof(`${name(range)} ${size}`, ranges);
      }),
    ),
  'merkle-rolling-plain-inclusion': () =>
    span(1, SIZE + 1).flatMap((size) =>
      span(0, size).map((i) => proof(`${i} ${size}`, inclusionRanges(i, size))),
    ),
};

function rootsDigest(): string {
  const frontier = new Frontier();
  const rolling = createHash('sha256');
  for (const leaf of all) {
    frontier.append(leaf);
    rolling.update(frontier.root());
  }
  return rolling.digest('hex');
}

function subtrees(upTo: number): Range[] {
  return span(0, upTo + 1).flatMap((end) =>
    span(0, end + 1)
      .filter((start) => isSubtree(start, end))
      .map((start) => ({ start, end })),
  );
}

function isSubtree(start: number, end: number): boolean {
  let width = 1;
  while (width < end - start) width *= 2;
  return start === 0 || start === end || start % width === 0;
}

function span(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}
