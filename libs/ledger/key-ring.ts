// The installation's signing keys, in a file for its owner only: the one in use and, in public form,
// those used before.

import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';
import { makeSigner, rawKey, verifierFor } from './note.js';
import type { NoteSigner, NoteVerifier } from './note.js';

export interface KeyRing {
  signer(origin: string): NoteSigner;
  /** Of the key in use and of all before. */
  verifiers(origin: string): NoteVerifier[];
  /** The key that is to come, while a change is under way. */
  coming(origin: string): NoteSigner | undefined;
  /** Begins a change, or goes on with one that was broken off; the key is not in use yet. */
  begin(): Buffer;
  /** The new key is in use from now on, in every process that has this file. */
  change(seed: Buffer): void;
}

interface KeyFile {
  /** Hexadecimal seed. */
  readonly seed: string;
  /** Hexadecimal public keys. */
  readonly former: readonly string[];
}

/** Opens the file, or makes it with a new key. It is read at each use: another process may change the key. */
export function openKeyRing(file: string): KeyRing {
  if (!existsSync(file)) {
    writeDurably(file, JSON.stringify({ seed: randomBytes(32).toString('hex'), former: [] }));
  }
  const next = `${file}.coming`;
  const read = () => JSON.parse(readFileSync(file, 'utf8')) as KeyFile;
  const signerOf = ({ seed }: KeyFile, origin: string) =>
    makeSigner(origin, Buffer.from(seed, 'hex'));
  const pending = (): string | undefined => {
    const seed = existsSync(next) ? readFileSync(next, 'utf8') : undefined;
    return seed === read().seed ? undefined : seed;
  };
  return {
    signer: (origin) => signerOf(read(), origin),
    verifiers: (origin) => {
      const keys = read();
      return [
        signerOf(keys, origin).verifier,
        ...keys.former.map((key) => verifierFor(origin, Buffer.from(key, 'hex'))),
      ];
    },
    coming: (origin) => {
      const seed = pending();
      return seed === undefined ? undefined : makeSigner(origin, Buffer.from(seed, 'hex'));
    },
    begin: () => {
      if (pending() === undefined) {
        rmSync(next, { force: true });
        writeOnce(next, randomBytes(32).toString('hex'));
      }
      return Buffer.from(readFileSync(next, 'utf8'), 'hex');
    },
    change: (seed) => {
      const keys = read();
      const given = seed.toString('hex');
      if (keys.seed !== given) {
        const former = rawKey(signerOf(keys, 'key').verifier).toString('hex');
        writeDurably(file, JSON.stringify({ seed: given, former: [...keys.former, former] }));
      }
      rmSync(next, { force: true });
    },
  };
}

/** Whole and on the disk; where two do it at once, the first one's stays. */
function writeOnce(file: string, text: string): void {
  const own = `${file}.${process.pid}`;
  writeDurably(own, text);
  try {
    linkSync(own, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(own, { force: true });
  }
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
