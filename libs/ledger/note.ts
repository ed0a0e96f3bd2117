// Signed notes by C2SP signed-note, with Ed25519 keys: a text, and lines that say who stands for it.

import { createHash, createPrivateKey, createPublicKey, sign, verify } from 'node:crypto';
import type { KeyObject } from 'node:crypto';
import { isUnicode } from './canonical.js';

/** Who may sign; made from a verifier key such as "example.org/log+33d7b496+AeHT…". */
export interface NoteVerifier {
  readonly name: string;
  /** 8 hexadecimal digits. */
  readonly id: string;
  readonly text: string;
  verifies(message: string, signature: Uint8Array): boolean;
}

export interface NoteSigner {
  readonly verifier: NoteVerifier;
  sign(message: string | Uint8Array): Buffer;
}

const ED25519 = 1;
const SIGNATURE_BYTES = 64;
const PUBLIC_DER = Buffer.from('302a300506032b6570032100', 'hex');
const PRIVATE_DER = Buffer.from('302e020100300506032b657004220420', 'hex');

/** @throws SyntaxError for what is not a verifier key of type Ed25519 */
export function readVerifier(text: string): NoteVerifier {
  const [, name, id, encoded] = /^([^\s+]+)\+([0-9a-f]{8})\+([A-Za-z0-9+/=]+)$/u.exec(text) ?? [];
  const bytes = decodeBase64(encoded ?? '');
  if (name === undefined || id === undefined || bytes?.length !== 33 || bytes[0] !== ED25519) {
    throw new SyntaxError(`"${text}" is not an Ed25519 verifier key.`);
  }
  const made = verifierOf(name, publicKey(bytes.subarray(1)), bytes.subarray(1));
  if (made.id !== id) throw new SyntaxError(`"${text}": its key does not have the id ${id}.`);
  return made;
}

/** A signer from a 32-byte Ed25519 seed. */
export function makeSigner(name: string, seed: Uint8Array): NoteSigner {
  if (!/^[^\s+]+$/u.test(name)) throw new SyntaxError(`"${name}" is not a key name.`);
  if (seed.length !== 32) throw new RangeError('an Ed25519 seed has 32 bytes');
  const key = createPrivateKey({
    key: Buffer.concat([PRIVATE_DER, seed]),
    format: 'der',
    type: 'pkcs8',
  });
  const open = createPublicKey(key);
  const raw = open.export({ format: 'der', type: 'spki' }).subarray(PUBLIC_DER.length);
  return {
    verifier: verifierOf(name, open, raw),
    sign: (message) => sign(null, bytesOf(message), key),
  };
}

/** A verifier from a raw 32-byte public key. */
export function verifierFor(name: string, raw: Uint8Array): NoteVerifier {
  return verifierOf(name, publicKey(raw), raw);
}

/** The raw 32-byte public key of a verifier. */
export function rawKey(verifier: NoteVerifier): Buffer {
  const encoded = verifier.text.slice(verifier.name.length + verifier.id.length + 2);
  return Buffer.from(encoded, 'base64').subarray(1);
}

/** Ed25519 itself, over raw keys: RFC 8032. */
export function verifyEd25519(
  open: Uint8Array,
  message: Uint8Array,
  signature: Uint8Array,
): boolean {
  if (open.length !== 32 || signature.length !== SIGNATURE_BYTES) return false;
  return verify(null, message, publicKey(open), signature);
}

/** The text with a signature line for each signer. */
export function signNote(text: string, signers: readonly NoteSigner[]): string {
  if (!isNoteText(text)) throw new SyntaxError('a note is lines of plain text');
  const lines = signers.map(({ verifier, sign: signText }) => {
    const bytes = Buffer.concat([Buffer.from(verifier.id, 'hex'), signText(text)]);
    return `— ${verifier.name} ${bytes.toString('base64')}\n`;
  });
  return `${text}\n${lines.join('')}`;
}

/**
 * The text of a note that at least one of the verifiers signed. Lines of unknown keys are ignored;
 * a wrong signature by a known key refuses the note.
 * @throws SyntaxError saying what is wrong
 */
export function openNote(note: string, verifiers: readonly NoteVerifier[]): string {
  const cut = note.lastIndexOf('\n\n');
  if (cut < 0 || !note.endsWith('\n')) throw new SyntaxError('The note has no signature lines.');
  const text = note.slice(0, cut + 1);
  if (!isNoteText(text)) throw new SyntaxError('The note is not lines of plain text.');
  let signed = false;
  for (const line of note.slice(cut + 2, -1).split('\n')) {
    const [name, id, signature] = readSignatureLine(line);
    const verifier = verifiers.find((known) => known.name === name && known.id === id);
    if (verifier === undefined) continue;
    if (!verifier.verifies(text, signature)) {
      throw new SyntaxError(`The signature of ${verifier.name} does not fit the text.`);
    }
    signed = true;
  }
  if (!signed) throw new SyntaxError('The note is not signed by a key that is known here.');
  return text;
}

/** Strict base64: the one encoding of the bytes, or undefined. */
export function decodeBase64(text: string): Buffer | undefined {
  const bytes = Buffer.from(text, 'base64');
  return bytes.toString('base64') === text ? bytes : undefined;
}

function readSignatureLine(line: string): readonly [string, string, Uint8Array] {
  const [, name, encoded] = /^— ([^\s+]+) ([A-Za-z0-9+/=]+)$/u.exec(line) ?? [];
  const bytes = decodeBase64(encoded ?? '');
  if (name === undefined || bytes === undefined || bytes.length < 5) {
    throw new SyntaxError('The note has a malformed signature line.');
  }
  return [name, bytes.subarray(0, 4).toString('hex'), bytes.subarray(4)];
}

function isNoteText(text: string): boolean {
  return text.endsWith('\n') && isUnicode(text) && !/[\u0000-\u0009\u000b-\u001f]/.test(text);
}

function verifierOf(name: string, key: KeyObject, raw: Uint8Array): NoteVerifier {
  const typed = Buffer.concat([Buffer.of(ED25519), raw]);
  const id = createHash('sha256').update(`${name}\n`).update(typed).digest('hex').slice(0, 8);
  return {
    name,
    id,
    text: `${name}+${id}+${typed.toString('base64')}`,
    verifies: (message, signature) =>
      signature.length === SIGNATURE_BYTES && verify(null, bytesOf(message), key, signature),
  };
}

const bytesOf = (message: string | Uint8Array): Uint8Array =>
  typeof message === 'string' ? Buffer.from(message) : message;

function publicKey(raw: Uint8Array): KeyObject {
  return createPublicKey({ key: Buffer.concat([PUBLIC_DER, raw]), format: 'der', type: 'spki' });
}
