// Signs a log's checkpoints, and refuses what does not continue the last one it signed: that one also
// lives in a file outside the database, where whoever rewrites the database does not reach it.

import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { openCheckpoint, signCheckpoint } from './checkpoint.js';
import type { Checkpoint } from './checkpoint.js';
import { writeDurably } from './key-ring.js';
import type { KeyRing } from './key-ring.js';
import type { By, Ledger } from './ledger.js';
import { makeSigner, signNote } from './note.js';
import type { NoteSigner } from './note.js';
import { verifyConsistency } from './proof.js';
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
  /** Makes a new key the one in use; an entry in each log, signed by both keys, says so. */
  changeKey(logs: readonly string[], by: By): Promise<SignResult[]>;
  tree(log: string): Tree;
}

interface Signed {
  readonly note: string;
  readonly checkpoint: Checkpoint;
}

export const KEY_STREAM = 'ledger-keys';
export const KEY_CHANGED = 'ledger-key-changed/1';

export function createSigner({ ledger, keys, folder, origin }: SignerOptions): Signer {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const trees = new Map<string, Tree>();
  const turns = new Map<string, Promise<unknown>>();
  const tree = (log: string): Tree => {
    const known = trees.get(log) ?? createTree(ledger, log);
    trees.set(log, known);
    return known;
  };
  const file = (log: string) => path.join(folder, `${encodeURIComponent(log)}.checkpoint`);

  const lastSigned = async (log: string): Promise<Signed[]> => {
    const stored = (await ledger.checkpoints(log)).at(-1)?.note;
    const outside = existsSync(file(log)) ? readFileSync(file(log), 'utf8') : undefined;
    return [outside, stored]
      .filter((note) => note !== undefined)
      .map((note) => ({ note, checkpoint: openCheckpoint(note, keys.verifiers(origin(log))) }));
  };

  const signNow = async (log: string, signers: readonly NoteSigner[]): Promise<SignResult> => {
    const { pos: size, root } = await ledger.head(log);
    const checkpoint = { origin: origin(log), size, root };
    let last: Signed[];
    try {
      last = await lastSigned(log);
    } catch (error) {
      const reason = `The last checkpoint kept is not one that was signed here: ${String(error)}`;
      return { kind: 'refused', reason };
    }
    for (const each of last) {
      const reason = await whyNot(tree(log), each.checkpoint, checkpoint);
      if (reason !== undefined) return { kind: 'refused', reason };
    }
    const same = last.find((each) => each.checkpoint.size === size);
    const note = same?.note ?? signCheckpoint(checkpoint, signers);
    writeDurably(file(log), note);
    await ledger.keepCheckpoint(log, { size, root, note });
    return { kind: 'signed', checkpoint, note };
  };

  /** One at a time for each log. */
  const inTurn = <T>(log: string, work: () => Promise<T>): Promise<T> => {
    const result = (turns.get(log) ?? Promise.resolve()).then(work, work);
    turns.set(
      log,
      result.catch(() => undefined),
    );
    return result;
  };

  const changeKey: Signer['changeKey'] = async (logs, by) => {
    const seed = keys.newSeed();
    const results: SignResult[] = [];
    for (const log of logs) {
      const pair = [keys.signer(origin(log)), makeSigner(origin(log), seed)] as const;
      await appendKeyChange(ledger, log, pair, by);
      results.push(await inTurn(log, () => signNow(log, pair)));
    }
    if (results.every((result) => result.kind === 'signed')) keys.change(seed);
    return results;
  };

  return {
    sign: (log) => inTurn(log, () => signNow(log, [keys.signer(origin(log))])),
    changeKey,
    tree,
  };
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

/** What both keys sign when one takes the other's place. */
export function keyChangeText(origin: string, from: string, to: string): string {
  return `The signing key of this log changes.\n${origin}\n${from}\n${to}\n`;
}

async function appendKeyChange(
  ledger: Ledger,
  log: string,
  pair: readonly [NoteSigner, NoteSigner],
  by: By,
): Promise<void> {
  const [from, to] = pair.map(({ verifier }) => verifier.text) as [string, string];
  const note = signNote(keyChangeText(pair[0].verifier.name, from, to), pair);
  const events = [{ type: KEY_CHANGED, data: { from, to, note } }];
  for (let expectedVersion = 0; ;) {
    const result = await ledger.append({
      log,
      command: { id: `key change to ${to}`, digest: to },
      by,
      streams: [{ stream: KEY_STREAM, expectedVersion, events }],
    });
    if (result.kind !== 'wrong-version') {
      if (result.kind === 'appended') return;
      throw new Error(`The key change of ${log} was answered with ${result.kind}.`);
    }
    expectedVersion = result.actual;
  }
}
