// One entry's proof as a text file that verifies offline: C2SP tlog-proof.

import { openCheckpoint } from './checkpoint.js';
import type { Checkpoint } from './checkpoint.js';
import { leafHash } from './merkle.js';
import type { Hash } from './merkle.js';
import { decodeBase64 } from './note.js';
import type { NoteVerifier } from './note.js';
import { verifyInclusion } from './proof.js';

const FIRST_LINE = 'c2sp.org/tlog-proof@v1';

/** `pos` is 1, 2, …; the file counts from 0. */
export function formatProof(pos: number, hashes: readonly Hash[], note: string): string {
  const lines = hashes.map((hash) => hash.toString('base64'));
  return [FIRST_LINE, `index ${pos - 1}`, ...lines, '', note].join('\n');
}

/**
 * The checkpoint under which the proof shows that this body is the entry at `pos`.
 * @throws SyntaxError saying what is wrong
 */
export function openProof(
  text: string,
  pos: number,
  body: string | Uint8Array,
  verifiers: readonly NoteVerifier[],
): Checkpoint {
  const cut = text.indexOf('\n\n');
  const [first, index, ...lines] = text.slice(0, cut).split('\n');
  if (cut < 0 || first !== FIRST_LINE || index !== `index ${pos - 1}`) {
    throw new SyntaxError(`The proof is not one of position ${pos}.`);
  }
  const hashes = lines.map(decodeBase64);
  if (hashes.includes(undefined)) throw new SyntaxError('The proof has a malformed hash.');
  const checkpoint = openCheckpoint(text.slice(cut + 2), verifiers);
  const proof = hashes as Hash[];
  if (!verifyInclusion(pos - 1, checkpoint.size, leafHash(body), proof, checkpoint.root)) {
    throw new SyntaxError(`The entry is not the one that was recorded at position ${pos}.`);
  }
  return checkpoint;
}
