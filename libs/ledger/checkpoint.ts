// A checkpoint says how large a log is and what its root is: C2SP tlog-checkpoint, the text of a note.

import { HASH_BYTES } from './merkle.js';
import type { Hash } from './merkle.js';
import { decodeBase64, openNote, signNote } from './note.js';
import type { NoteSigner, NoteVerifier } from './note.js';

export interface Checkpoint {
  /** The log's name, unique in the world. */
  readonly origin: string;
  /** Entries in the log. */
  readonly size: number;
  readonly root: Hash;
}

/** Three lines: origin, size in decimal, root in base64. Extension lines are for other logs' sake. */
export function formatCheckpoint(
  checkpoint: Checkpoint,
  extensions: readonly string[] = [],
): string {
  const { origin, size, root } = checkpoint;
  if (origin === '' || origin.includes('\n')) throw new SyntaxError('an origin is one line');
  if (!Number.isSafeInteger(size) || size < 0) throw new RangeError(`${size} is not a size`);
  return [origin, String(size), root.toString('base64'), ...extensions, ''].join('\n');
}

/** @throws SyntaxError saying what is wrong */
export function parseCheckpoint(text: string): Checkpoint {
  const [origin, digits, encoded, ...rest] = text.split('\n');
  if (origin === undefined || digits === undefined || encoded === undefined || rest.length === 0) {
    throw new SyntaxError('A checkpoint has three lines: origin, size, root.');
  }
  const size = Number(digits);
  if (!/^(?:0|[1-9]\d*)$/.test(digits) || !Number.isSafeInteger(size)) {
    throw new SyntaxError(`The checkpoint's size "${digits}" is not one.`);
  }
  const root = decodeBase64(encoded);
  if (root?.length !== HASH_BYTES) throw new SyntaxError("The checkpoint's root is not a hash.");
  if (origin === '' || rest.at(-1) !== '') throw new SyntaxError('The checkpoint is malformed.');
  return { origin, size, root };
}

export function signCheckpoint(checkpoint: Checkpoint, signers: readonly NoteSigner[]): string {
  return signNote(formatCheckpoint(checkpoint), signers);
}

/** @throws SyntaxError when no known key signed it, or it is not a checkpoint */
export function openCheckpoint(note: string, verifiers: readonly NoteVerifier[]): Checkpoint {
  return parseCheckpoint(openNote(note, verifiers));
}
