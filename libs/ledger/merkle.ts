// The Merkle tree of a log: RFC 9162, section 2.1, with SHA-256 and no variations.

import { createHash, hash } from 'node:crypto';

/** 32 bytes. */
export type Hash = Buffer;

export const HASH_BYTES = 32;

/** Of the empty tree: SHA-256 of nothing. */
export const EMPTY_ROOT: Hash = createHash('sha256').digest();

/** What comes before a body in its leaf's hash. */
export const LEAF = '\0';

/** SHA-256(0x00 ‖ body); a text is hashed as UTF-8. */
export function leafHash(body: string | Uint8Array): Hash {
  if (typeof body === 'string') return Buffer.from(hash('sha256', LEAF + body, 'hex'), 'hex');
  return createHash('sha256').update('\0').update(body).digest();
}

const pair = Buffer.alloc(1 + 2 * HASH_BYTES, 1);

/** SHA-256(0x01 ‖ left ‖ right). */
export function nodeHash(left: Uint8Array, right: Uint8Array): Hash {
  if (left.length !== HASH_BYTES || right.length !== HASH_BYTES) {
    return createHash('sha256').update('\u0001').update(left).update(right).digest();
  }
  pair.set(left, 1);
  pair.set(right, 1 + HASH_BYTES);
  // As Latin-1 text, the quickest way from the digest to its bytes.
  return Buffer.from(hash('sha256', pair, 'latin1' as 'hex'), 'latin1');
}

/** The root over leaf hashes. */
export function treeRoot(leaves: readonly Hash[]): Hash {
  const frontier = new Frontier();
  for (const leaf of leaves) frontier.append(leaf);
  return frontier.root();
}

/** The right edge of a tree: the roots of its full subtrees, largest first, one for each set bit. */
export class Frontier {
  constructor(
    public size = 0,
    private readonly nodes: Hash[] = [],
  ) {
    if (nodes.length !== setBits(size)) {
      throw new RangeError(`a tree of ${size} leaves has ${setBits(size)} full subtrees`);
    }
  }

  /** @throws RangeError when the bytes do not fit the size */
  static decode(size: number, bytes: Uint8Array): Frontier {
    const nodes: Hash[] = [];
    for (let i = 0; i + HASH_BYTES <= bytes.length; i += HASH_BYTES) {
      nodes.push(Buffer.from(bytes.subarray(i, i + HASH_BYTES)));
    }
    if (bytes.length !== nodes.length * HASH_BYTES) throw new RangeError('hashes have 32 bytes');
    return new Frontier(size, nodes);
  }

  encode(): Buffer {
    return Buffer.concat(this.nodes);
  }

  copy(): Frontier {
    return new Frontier(this.size, [...this.nodes]);
  }

  append(leaf: Hash): void {
    let node = leaf;
    for (let rest = this.size; rest % 2 === 1; rest = (rest - 1) / 2) {
      node = nodeHash(this.nodes.pop() as Hash, node);
    }
    this.nodes.push(node);
    this.size++;
  }

  root(): Hash {
    return foldPeaks(this.nodes);
  }

  /** Roots of the full subtrees, largest first. */
  peaks(): readonly Hash[] {
    return this.nodes;
  }
}

/** The root over full subtrees that stand side by side, each smaller than the one before. */
export function foldPeaks(peaks: readonly Hash[]): Hash {
  if (peaks.length === 0) return EMPTY_ROOT;
  return peaks.reduceRight((right, left) => nodeHash(left, right));
}

function setBits(size: number): number {
  let bits = 0;
  for (let rest = size; rest > 0; rest = Math.floor(rest / 2)) bits += rest % 2;
  return bits;
}
