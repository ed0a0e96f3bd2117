// Reads a PDF back by poppler, as anybody else would: its text, its attachments, and a text form that
// a person has approved. Where poppler is missing the tests say so by name and are skipped.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test } from '@jest/globals';

const has = (tool: string): boolean => spawnSync(tool, ['-v']).error === undefined;
const POPPLER = ['pdftotext', 'pdfdetach'].every(has);

/** A test that runs only where poppler is; its name says so where it does not. */
export const testByPoppler = (name: string, run: () => Promise<void>): void =>
  POPPLER
    ? test(name, run)
    : test.skip(`${name} (skipped: needs pdftotext and pdfdetach of poppler)`, run);

function withFile<T>(bytes: Uint8Array, work: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(path.join(tmpdir(), 'pdf-'));
  const file = path.join(folder, 'paper.pdf');
  try {
    writeFileSync(file, bytes);
    return work(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(tool: string, args: readonly string[]): string {
  const done = spawnSync(tool, args, { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`${tool}: ${done.stderr}`);
  return done.stdout;
}

/** The words in the order they are tagged. */
export const pdfText = (bytes: Uint8Array): string =>
  withFile(bytes, (file) => run('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-']));

/** Attached files by name. */
export function attachmentsOf(bytes: Uint8Array): ReadonlyMap<string, Buffer> {
  return withFile(bytes, (file, folder) => {
    const out = mkdtempSync(path.join(folder, 'out-'));
    run('pdfdetach', ['-saveall', '-o', out, file]);
    return new Map(readdirSync(out).map((name) => [name, readFileSync(path.join(out, name))]));
  });
}

/** Without white space and in one case: where lines break is the printer's affair. */
export const squashed = (words: string): string => words.replaceAll(/\s+/g, '').toLowerCase();

const APPROVED = new URL('approved/', import.meta.url);

/** The approved text of a file; with APPROVE=1 in the environment the text given becomes it. */
export function approvedText(name: string, text: string): string {
  const file = new URL(name, APPROVED);
  if (process.env['APPROVE'] === '1') writeFileSync(file, text);
  return readFileSync(file, 'utf8');
}
