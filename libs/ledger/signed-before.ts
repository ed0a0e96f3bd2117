// The checkpoints signed of a log so far, opened: verification holds the log to them, and says where one
// is not as it was signed.

import { openCheckpoint } from './checkpoint.js';
import type { Checkpoint } from './checkpoint.js';
import type { KeptCheckpoint } from './ledger.js';
import type { NoteVerifier } from './note.js';

export interface SignedBefore {
  /** The last one, from the file outside the database. */
  readonly outside: Checkpoint | undefined;
  /** All that the database keeps, in order of size. */
  readonly kept: readonly Checkpoint[];
  /** Checkpoints that were not signed here, or not with these words, in sentences. */
  readonly faults: readonly string[];
}

interface Found {
  readonly origin: string;
  readonly verifiers: readonly NoteVerifier[];
  /** The last one first. */
  readonly outside: readonly string[];
  readonly kept: readonly KeptCheckpoint[];
}

export function openSigned({ origin, verifiers, outside, kept }: Found): SignedBefore {
  const faults: string[] = [];
  const open = (note: string, where: string): Checkpoint | undefined => {
    try {
      const found = openCheckpoint(note, verifiers);
      if (found.origin === origin) return found;
      faults.push(`The checkpoint ${where} is of ${found.origin}.`);
    } catch {
      faults.push(`The checkpoint ${where} is not one that was signed here.`);
    }
    return undefined;
  };
  const opened = kept.flatMap((each) => {
    const found = open(each.note, `of ${each.size} entries in the database`);
    if (found === undefined) return [];
    if (found.size !== each.size || !found.root.equals(each.root)) {
      faults.push(`The columns of the checkpoint of ${each.size} entries differ from its note.`);
    }
    return [found];
  });
  const files = outside.map((note) => open(note, 'in the file outside the database'));
  return { outside: files.find((each) => each !== undefined), kept: opened, faults };
}
