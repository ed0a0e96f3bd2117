// Roots and proofs of a log from its leaves, with the roots of whole blocks remembered, so that a proof
// reads a few hundred leaves and not the log. What it gives is only as true as its check against a
// signed root; every proof is checked before it leaves.

import type { Ledger } from './ledger.js';
import { foldPeaks, Frontier, treeRoot } from './merkle.js';
import type { Hash } from './merkle.js';
import { consistencyRanges, inclusionRanges } from './proof.js';
import type { Range } from './proof.js';

export interface Tree {
  /** Root of the first `size` entries. */
  root(size: number): Promise<Hash>;
  /** Proof that the entry at `pos` (1, 2, …) is in the tree of `size` entries. */
  inclusion(pos: number, size: number): Promise<Hash[]>;
  consistency(from: number, to: number): Promise<Hash[]>;
}

const BLOCK = 256;
/** Blocks read at once. */
const READ_BLOCKS = 64;

export function createTree(ledger: Pick<Ledger, 'leaves'>, log: string): Tree {
  const blocks = new Map<number, Hash>();
  const leaves = async (start: number, end: number): Promise<Hash[]> => {
    const found = await ledger.leaves(log, start, end);
    if (found.length !== end - start) throw new RangeError(`The log ${log} ends before ${end}.`);
    return found;
  };
  const readBlocks = async (from: number, to: number): Promise<void> => {
    for (let at = from; at < to; at += READ_BLOCKS) {
      const end = Math.min(at + READ_BLOCKS, to);
      const found = await leaves(at * BLOCK, end * BLOCK);
      for (let b = at; b < end; b++) {
        blocks.set(b, treeRoot(found.slice((b - at) * BLOCK, (b - at + 1) * BLOCK)));
      }
    }
  };
  /** Of a range as proofs have them: it starts at a multiple of its width's power of two. */
  const rangeRoot = async ({ start, end }: Range): Promise<Hash> => {
    if (end - start < BLOCK) return treeRoot(await leaves(start, end));
    const [first, last] = [start / BLOCK, Math.floor(end / BLOCK)];
    const whole = new Frontier();
    for (let b = first; b < last; b++) {
      if (!blocks.has(b)) await readBlocks(b, last);
      whole.append(blocks.get(b) as Hash);
    }
    const rest = new Frontier();
    for (const leaf of await leaves(last * BLOCK, end)) rest.append(leaf);
    return foldPeaks([...whole.peaks(), ...rest.peaks()]);
  };
  const roots = async (ranges: readonly Range[]): Promise<Hash[]> => {
    const found: Hash[] = [];
    for (const range of ranges) found.push(await rangeRoot(range));
    return found;
  };
  return {
    root: (size) => rangeRoot({ start: 0, end: size }),
    inclusion: (pos, size) => roots(inclusionRanges(pos - 1, size)),
    consistency: (from, to) => roots(consistencyRanges(from, to)),
  };
}
