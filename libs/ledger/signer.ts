// Signs a log's checkpoints, and refuses what does not continue the last one it signed: that one also
// lives in a file outside the database, where whoever rewrites the database does not reach it.

import { mkdirSync } from 'node:fs';
import { openCheckpoint, signCheckpoint } from './checkpoint.js';
import type { Checkpoint } from './checkpoint.js';
import { appendKeyChange, keyNamed } from './key-change.js';
import type { KeyRing } from './key-ring.js';
import { keptOutside } from './kept-outside.js';
import type { By, Ledger } from './ledger.js';
import { makeSigner } from './note.js';
import type { NoteSigner, NoteVerifier } from './note.js';
import { verifyConsistency } from './proof.js';
import { openSigned } from './signed-before.js';
import type { SignedBefore } from './signed-before.js';
import { createTree } from './tree.js';
import type { Tree } from './tree.js';

export interface SignerOptions {
  readonly ledger: Ledger;
  readonly keys: KeyRing;
  /** Folder outside the database. */
  readonly folder: string;
  /** The log's name in the world, such as "records.example/roofers". */
  readonly origin: (log: string) => string;
}

export type SignResult =
  | { readonly kind: 'signed'; readonly checkpoint: Checkpoint; readonly note: string }
  | { readonly kind: 'refused'; readonly reason: string };

export interface Signer {
  /** The log as it is now; the same note again when nothing was added since. */
  sign(log: string): Promise<SignResult>;
  /**
   * Makes a new key the one in use; an entry in each log, signed by both keys, says so. Where a log is
   * refused or the process ends, the key before stays in use, and the next call goes on with the same key.
   */
  changeKey(logs: readonly string[], by: By): Promise<SignResult[]>;
  /** What was signed of this log before, for verification. */
  signed(log: string): Promise<SignedBefore>;
  tree(log: string): Tree;
}

interface Signed {
  readonly note: string;
  readonly checkpoint: Checkpoint;
}

export function createSigner({ ledger, keys, folder, origin }: SignerOptions): Signer {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const trees = new Map<string, Tree>();
  const inTurn = oneAtATime();
  const tree = (log: string): Tree => {
    const known = trees.get(log) ?? createTree(ledger, log);
    trees.set(log, known);
    return known;
  };
  const outside = keptOutside(folder);

  const signNow = async (log: string): Promise<SignResult> => {
    const signers = await signersOf(keys, origin(log), await keyNamed(ledger, log));
    if (signers === undefined) return { kind: 'refused', reason: OTHER_KEY };
    let last: Signed[];
    try {
      const kept = [...outside.read(log), (await ledger.lastCheckpoint(log))?.note];
      last = openAll(kept, keys.verifiers(origin(log)));
    } catch (error) {
      const reason = `The last checkpoint kept is not one that was signed here: ${String(error)}`;
      return { kind: 'refused', reason };
    }
    // Read after the last checkpoints: another process may sign meanwhile, and the log only grows.
    const { pos: size, root } = await ledger.head(log);
    const checkpoint = { origin: origin(log), size, root };
    for (const each of last) {
      const reason = await whyNot(tree(log), each.checkpoint, checkpoint);
      if (reason !== undefined) return { kind: 'refused', reason };
    }
    const same = last.find((each) => each.checkpoint.size === size);
    const note = same?.note ?? signCheckpoint(checkpoint, signers);
    outside.keep(log, size, note);
    await ledger.keepCheckpoint(log, { size, root, note });
    return { kind: 'signed', checkpoint, note };
  };

  const changeKey: Signer['changeKey'] = async (logs, by) => {
    const seed = keys.begin();
    const results: SignResult[] = [];
    for (const log of logs) {
      const pair = [keys.signer(origin(log)), makeSigner(origin(log), seed)] as const;
      await appendKeyChange(ledger, log, pair, by);
      results.push(await inTurn(log, () => signNow(log)));
    }
    if (results.every((result) => result.kind === 'signed')) keys.change(seed);
    return results;
  };

  return {
    sign: (log) => inTurn(log, () => signNow(log)),
    changeKey,
    signed: async (log) =>
      openSigned({
        origin: origin(log),
        verifiers: keys.verifiers(origin(log)),
        outside: outside.read(log),
        kept: await ledger.checkpoints(log),
      }),
    tree,
  };
}

/** The key in use, and the one to come where the record names it already; no other key signs. */
function signersOf(
  keys: KeyRing,
  origin: string,
  named: string | undefined,
): readonly NoteSigner[] | undefined {
  const [using, coming] = [keys.signer(origin), keys.coming(origin)];
  if (named === undefined || named === using.verifier.text) return [using];
  return named === coming?.verifier.text ? [using, coming] : undefined;
}

const OTHER_KEY =
  'The record names another signing key than the one in the folder of keys here: the key was changed ' +
  'elsewhere, and this is a copy from before, or somebody wrote that entry who does not hold the key.';

/** For each name: the next work begins when the one before has ended, however it ended. */
function oneAtATime(): <T>(name: string, work: () => Promise<T>) => Promise<T> {
  const turns = new Map<string, Promise<unknown>>();
  return (name, work) => {
    const result = (turns.get(name) ?? Promise.resolve()).then(work);
    turns.set(
      name,
      result.catch(() => undefined),
    );
    return result;
  };
}

function openAll(
  notes: readonly (string | undefined)[],
  verifiers: readonly NoteVerifier[],
): Signed[] {
  return notes
    .filter((note) => note !== undefined)
    .map((note) => ({ note, checkpoint: openCheckpoint(note, verifiers) }));
}

async function whyNot(tree: Tree, last: Checkpoint, now: Checkpoint): Promise<string | undefined> {
  const signed = `the last signed checkpoint (${last.size} entries)`;
  if (last.origin !== now.origin) return `The last signed checkpoint is of ${last.origin}.`;
  if (now.size < last.size) {
    return (
      `The log has ${now.size} entries, fewer than ${signed}: ` +
      'entries were cut, or an old copy of the database was restored.'
    );
  }
  if (last.size === 0) return undefined;
  const proof = await tree.consistency(last.size, now.size);
  if (verifyConsistency(last.size, now.size, last.root, now.root, proof)) return undefined;
  return `The log does not continue ${signed}: entries up to there were altered.`;
}
