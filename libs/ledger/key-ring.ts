// The installation's signing keys, in a file for its owner only: the one in use and, in public form,
// those used before.

import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';
import { makeSigner, rawKey, verifierFor } from './note.js';
import type { NoteSigner, NoteVerifier } from './note.js';

export interface KeyRing {
  signer(origin: string): NoteSigner;
  /** Of the key in use and of all before. */
  verifiers(origin: string): NoteVerifier[];
  /** A key that is not in use yet. */
  newSeed(): Buffer;
  /** The new key is in use from now on. */
  change(seed: Buffer): void;
}

interface KeyFile {
  /** Hexadecimal seed. */
  readonly seed: string;
  /** Hexadecimal public keys. */
  readonly former: readonly string[];
}

/** Opens the file, or makes it with a new key. */
export function openKeyRing(file: string): KeyRing {
  if (!existsSync(file)) {
    writeDurably(file, JSON.stringify({ seed: randomBytes(32).toString('hex'), former: [] }));
  }
  let keys = JSON.parse(readFileSync(file, 'utf8')) as KeyFile;
  const signer = (origin: string) => makeSigner(origin, Buffer.from(keys.seed, 'hex'));
  return {
    signer,
    verifiers: (origin) => [
      signer(origin).verifier,
      ...keys.former.map((key) => verifierFor(origin, Buffer.from(key, 'hex'))),
    ],
    newSeed: () => randomBytes(32),
    change: (seed) => {
      const former = rawKey(signer('key').verifier).toString('hex');
      keys = { seed: seed.toString('hex'), former: [...keys.former, former] };
      writeDurably(file, JSON.stringify(keys));
    },
  };
}

/** Whole or not at all, and on the disk when it returns; readable for its owner only. */
export function writeDurably(file: string, text: string): void {
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  const fresh = `${file}.${randomBytes(6).toString('hex')}.new`;
  const handle = openSync(fresh, 'w', 0o600);
  writeSync(handle, text);
  fsyncSync(handle);
  closeSync(handle);
  renameSync(fresh, file);
}
