// Checks an evidence bundle from its bytes alone and says in words what it shows.

import { checkpointFile, consistencyFile, entryFile, FORMAT, proofFile } from './bundle.js';
import type { Contents } from './bundle.js';
import { checkFiles, lines, text } from './bundle-files.js';
import type { Opened } from './bundle-files.js';
import { canonical } from './canonical.js';
import { openCheckpoint } from './checkpoint.js';
import type { Recorded } from './ledger.js';
import { checkTimeStamps } from './bundle-times.js';
import { leafHash } from './merkle.js';
import { decodeBase64, openNote, readVerifier } from './note.js';
import { verifyConsistency } from './proof.js';
import { KEY_CHANGED, keyChangeText } from './key-change.js';
import { parseStrict } from './strict-json.js';
import { openProof } from './tlog-proof.js';
import { readZip } from './zip.js';
import type { Files } from './zip.js';

export interface Held {
  /** A key known from elsewhere: the bundle must be signed by it. */
  readonly key?: string;
  /** A checkpoint held from elsewhere, such as one printed on a document: size and base64 root. */
  readonly checkpoint?: { readonly size: number; readonly root: string };
  /** Certificates of a time-stamping authority, PEM: time-stamps must lead to one of them. */
  readonly authority?: string;
}

export interface BundleReport {
  readonly ok: boolean;
  /** What is shown, in sentences; the last one of a bad bundle is its first fault. */
  readonly says: readonly string[];
  /** Position of the entry at fault, where it is one entry's. */
  readonly pos?: number;
}

export function verifyBundle(bytes: Buffer, held: Held = {}): BundleReport {
  const says: string[] = [];
  let pos: number | undefined;
  try {
    const bundle = open(readZip(bytes), held, says);
    for (const { stream, positions } of bundle.contents.streams) {
      let before: string | null = null;
      for (const [i, at] of positions.entries()) {
        pos = at;
        before = checkEntry(bundle, { stream, pos: at, version: i + 1, prev: before });
      }
      pos = undefined;
      says.push(streamSays(stream, positions));
    }
    checkCheckpoints(bundle, held, says);
    checkTimeStamps(bundle, held.authority, says);
    checkFiles(bundle, says);
    says.push('Not shown, because no bundle can: that no later version exists.');
    return { ok: true, says };
  } catch (error) {
    const where = pos === undefined ? '' : `Position ${pos}: `;
    const message = error instanceof SyntaxError ? error.message : `unreadable: ${String(error)}`;
    return { ok: false, says: [...says, `${where}${message}`], ...(pos && { pos }) };
  }
}

function open(files: Files, held: Held, says: string[]): Opened {
  const contents = parseStrict(text(files, 'bundle.json')) as unknown as Contents;
  if (contents.format !== FORMAT)
    throw new SyntaxError(`This is not a bundle of the form ${FORMAT}.`);
  const keys = lines(text(files, 'keys.txt')).map(readVerifier);
  if (held.key !== undefined && !keys.some((key) => key.text === held.key)) {
    throw new SyntaxError('The key you hold is not one of the bundle’s keys.');
  }
  const verifiers = keys.filter((key) => key.name === contents.origin);
  const checkpoint = openCheckpoint(text(files, 'checkpoint.txt'), verifiers);
  if (checkpoint.origin !== contents.origin) {
    throw new SyntaxError(`The checkpoint is of ${checkpoint.origin}.`);
  }
  says.push(
    `The log ${contents.origin} had ${checkpoint.size} entries at the bundle's checkpoint, ` +
      `signed by the key ${verifiers.map((key) => key.id).join(' or ')}` +
      (held.key === undefined ? '; compare the key with one you hold.' : ', which you hold.'),
  );
  return { contents, files, verifiers, checkpoint };
}

interface Expected {
  readonly stream: string;
  readonly pos: number;
  readonly version: number;
  readonly prev: string | null;
}

/** Gives the entry's leaf hash, hexadecimal. */
function checkEntry({ contents, files, verifiers, checkpoint }: Opened, at: Expected): string {
  const body = text(files, entryFile(at.pos));
  const proven = openProof(text(files, proofFile(at.pos)), at.pos, body, verifiers);
  if (proven.size !== checkpoint.size || !proven.root.equals(checkpoint.root)) {
    throw new SyntaxError('The proof leads to another checkpoint than the bundle’s.');
  }
  const entry = parseStrict(body) as unknown as Recorded;
  if (canonical(entry) !== body) throw new SyntaxError('The entry is not canonical JSON.');
  const fields = { log: contents.log, ...at };
  for (const [name, value] of Object.entries(fields)) {
    if (entry[name as keyof Expected] !== value) {
      throw new SyntaxError(`The entry's ${name} is not ${String(value)}.`);
    }
  }
  if (entry.type === KEY_CHANGED) checkKeyChange(entry, contents.origin);
  return leafHash(body).toString('hex');
}

function checkKeyChange({ data }: Recorded, origin: string): void {
  const { from, to, note } = data as { from: string; to: string; note: string };
  for (const key of [from, to]) {
    if (openNote(note, [readVerifier(key)]) !== keyChangeText(origin, from, to)) {
      throw new SyntaxError('The key change is not signed as it says.');
    }
  }
}

function streamSays(stream: string, positions: readonly number[]): string {
  const last = positions.length;
  const versions = last === 1 ? 'version 1' : `versions 1 to ${last}`;
  return `${stream}: ${versions}, unaltered and in this order, at positions ${positions.join(', ')}.`;
}

function checkCheckpoints(bundle: Opened, held: Held, says: string[]): void {
  const { contents, files, verifiers, checkpoint } = bundle;
  const met = [checkpoint];
  for (const size of contents.checkpoints) {
    const earlier = openCheckpoint(text(files, checkpointFile(size)), verifiers);
    const proof = lines(text(files, consistencyFile(size))).map(decodeBase64);
    const hashes = proof.filter((hash) => hash !== undefined);
    const { root } = checkpoint;
    if (
      earlier.size !== size ||
      earlier.origin !== contents.origin ||
      hashes.length !== proof.length ||
      !verifyConsistency(size, checkpoint.size, earlier.root, root, hashes)
    ) {
      throw new SyntaxError(`The log does not continue its checkpoint of ${size} entries.`);
    }
    met.push(earlier);
  }
  const earlier = met.length - 1;
  if (earlier > 0) {
    const since =
      earlier === 1 ? 'an earlier signed checkpoint' : `${earlier} earlier signed checkpoints`;
    says.push(`The log only grew since ${since}.`);
  }
  if (held.checkpoint === undefined) return;
  const same = met.find((each) => each.size === held.checkpoint?.size);
  if (same?.root.toString('base64') !== held.checkpoint.root) {
    throw new SyntaxError('The checkpoint you hold is not one of the bundle’s.');
  }
  says.push(`The checkpoint of ${same.size} entries that you hold is one of the bundle's.`);
}
