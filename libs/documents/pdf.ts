// A template and plain data become a PDF: tagged, archival (PDF/A-3a), with the canonical JSON
// attached, and the same bytes every time. No text of the data is ever read as markup.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { FONTS, printableData } from './fonts.js';

export type PaperSize = 'letter' | 'a4';
export type TemplateName =
  'decision-record' | 'order' | 'engineer-packet' | 'warranty' | 'decision-letter';

/** What every paper carries besides its own content. */
export interface Paper {
  /** "Decision record". */
  readonly kind: string;
  /** What it is about: "Job 2026-0142, Hay barn". */
  readonly about: string;
  /** The record's own moment, RFC 3339 in UTC: the date of the file. */
  readonly at: string;
  readonly size: PaperSize;
  /** SHA-256 of the attached JSON. */
  readonly digest: string;
  /** Place in the log, once issued. */
  readonly position?: number;
  /** What the paper is not, on every page: "played from a file, not a record". */
  readonly standing?: string;
  /** Printed on every page. */
  readonly cautions: readonly string[];
}

export interface PdfInput {
  readonly paper: Paper;
  readonly body: unknown;
  /** Canonical JSON, attached as record.json. */
  readonly json: string;
  readonly attachments?: readonly Attachment[];
}

/** How a paper is issued: what every render function takes besides its data. */
export interface PaperOptions {
  readonly size: PaperSize;
  /** The canonical bytes of the data, attached as record.json. */
  readonly json: string;
  /** SHA-256 of those bytes, printed on every page. */
  readonly digest: string;
  /** Place in the log, once issued. */
  readonly position?: number;
  readonly attachments?: readonly Attachment[];
  /** What the paper is not, on every page: "played from a file, not a record". */
  readonly standing?: string;
}

export interface Attachment {
  /** A plain file name. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The compiler or the archival standard refused: a missing alternative text, say. */
export class PdfRefused extends Error {}

const FOLDER = fileURLToPath(new URL('./templates/', import.meta.url));
const inFolder = (name: string): string => path.join(FOLDER, name);

let made: NodeCompiler | undefined;
const compiler = (): NodeCompiler =>
  (made ??= NodeCompiler.create({ workspace: FOLDER, fontArgs: [{ fontBlobs: [...FONTS] }] }));

/** Throws PdfRefused with the compiler's own words. */
export async function renderPdf(template: TemplateName, input: PdfInput): Promise<Uint8Array> {
  return renderSource(readFileSync(inFolder(`${template}.typ`), 'utf8'), input);
}

/** A paper of one kind from its content and the way it is issued. */
export async function issuePaper(
  template: TemplateName,
  about: Pick<Paper, 'kind' | 'about' | 'at' | 'cautions'>,
  body: unknown,
  { json, attachments = [], ...rest }: PaperOptions,
): Promise<Uint8Array> {
  return renderPdf(template, { paper: { ...rest, ...about }, body, json, attachments });
}

/** Loads, spans, gauges and fastening are never printed without cautions. */
export function mustCaution(kind: string, cautions: readonly string[]): readonly string[] {
  if (cautions.length === 0)
    throw new PdfRefused(`${kind}: no caution is given, and every page needs one`);
  return cautions;
}

/** Renders a template given as text; for trying one that is not in the folder. */
export async function renderSource(source: string, input: PdfInput): Promise<Uint8Array> {
  const typst = compiler();
  const files = shadowFiles(source, input);
  for (const [name, bytes] of files) typst.mapShadow(inFolder(name), bytes);
  try {
    const done = typst.compile({ mainFilePath: inFolder('main.typ'), resetRead: true });
    if (!done.result) throw new PdfRefused(diagnostics(typst, done.takeDiagnostics()));
    const warnings = done.takeWarnings();
    if (warnings) throw new PdfRefused(diagnostics(typst, warnings));
    return new Uint8Array(typst.pdf(done.result, { pdfStandard: 'a-3a' }));
  } catch (error) {
    throw error instanceof PdfRefused ? error : new PdfRefused(messages(String(error)));
  } finally {
    typst.resetShadow();
    typst.evictCache(10);
  }
}

function shadowFiles(
  source: string,
  { paper, body, json, attachments = [] }: PdfInput,
): readonly (readonly [string, Buffer])[] {
  const names = attachments.map(({ name }) => name);
  if (new Set(['record.json', ...names]).size !== names.length + 1)
    throw new PdfRefused('two attachments have one name');
  const data = printableData({
    paper: { ...paper, moment: momentParts(paper.at) },
    body,
    attachments: names,
  });
  return [
    ['main.typ', Buffer.from(source)],
    ['data.json', Buffer.from(JSON.stringify(data))],
    ['record.json', Buffer.from(json)],
    ...attachments.map(({ bytes }, i) => [`attachment-${i}`, Buffer.from(bytes)] as const),
  ];
}

function momentParts(at: string): readonly number[] {
  const moment = new Date(at);
  if (Number.isNaN(moment.getTime())) throw new PdfRefused(`"${at}" is not a moment`);
  return moment
    .toISOString()
    .split(/[-T:.]/)
    .slice(0, 6)
    .map(Number);
}

function diagnostics(
  typst: NodeCompiler,
  error: Parameters<NodeCompiler['fetchDiagnostics']>[0] | null,
): string {
  if (!error) return 'the paper cannot be made';
  return typst
    .fetchDiagnostics(error)
    .map((each: { message?: string }) => each.message ?? '')
    .join('; ');
}

function messages(text: string): string {
  const found = [...text.matchAll(/message: "((?:[^"\\]|\\.)*)"/g)].map(([, message]) => message);
  return found.length > 0 ? found.join('; ') : text;
}

/** What an issued paper's record names besides its bytes: compiler, template and its digest. */
export function typesetting(template: TemplateName): {
  readonly compiler: string;
  readonly template: string;
  readonly digest: string;
} {
  const hash = createHash('sha256');
  for (const name of ['paper', template]) hash.update(readFileSync(inFolder(`${name}.typ`)));
  return { compiler: 'Typst 0.14.2', template, digest: hash.digest('hex') };
}
