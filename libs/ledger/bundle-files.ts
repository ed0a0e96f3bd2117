// The files of an opened evidence bundle, and whether its documents are the ones that were issued.

import { createHash } from 'node:crypto';
import { attachmentFile, documentFile, entryFile } from './bundle.js';
import type { Contents } from './bundle.js';
import type { Checkpoint } from './checkpoint.js';
import type { NoteVerifier } from './note.js';
import type { Files } from './zip.js';

export interface Opened {
  readonly contents: Contents;
  readonly files: Files;
  readonly verifiers: readonly NoteVerifier[];
  readonly checkpoint: Checkpoint;
}

export function checkFiles({ contents, files }: Opened, says: string[]): void {
  for (const { name, digest, erasedAt } of contents.documents) {
    if (erasedAt !== undefined) {
      says.push(`${name} was issued, and erased on ${erasedAt}.`);
      continue;
    }
    checkDigest(files, documentFile(name), digest);
    says.push(`${name} is as issued (${digest.slice(0, 16)}…)${namedBy(contents, files, digest)}.`);
  }
  for (const { name, digest } of contents.attachments) {
    checkDigest(files, attachmentFile(name), digest);
    says.push(
      `${name} is as attached (${digest.slice(0, 16)}…)${namedBy(contents, files, digest)}.`,
    );
  }
}

/** An entry that names a digest ties the file to the log. */
function namedBy({ streams }: Contents, files: Files, digest: string): string {
  const named = streams
    .flatMap(({ positions }) => positions)
    .filter((pos) => text(files, entryFile(pos)).includes(digest));
  return named.length === 0
    ? ', named by no entry here'
    : `, named at position ${named.join(', ')}`;
}

function checkDigest(files: Files, name: string, digest: string): void {
  const bytes = files.get(name);
  if (bytes === undefined) throw new SyntaxError(`${name} is missing.`);
  if (createHash('sha256').update(bytes).digest('hex') !== digest) {
    throw new SyntaxError(`${name} was altered.`);
  }
}

export function text(files: Files, name: string): string {
  const bytes = files.get(name);
  if (bytes === undefined) throw new SyntaxError(`${name} is missing.`);
  return bytes.toString('utf8');
}

/** Every line ends with a line end, the last one too. */
export function lines(content: string): string[] {
  const all = content.split('\n');
  if (all.pop() !== '') throw new SyntaxError('A list in the bundle does not end with a line end.');
  return all;
}
