// The evidence bundle of some streams: their entries with proofs, checkpoints, keys and documents in
// one zip file that verifies anywhere, without network or database.

import { createHash } from 'node:crypto';
import { canonical } from './canonical.js';
import type { KeyRing } from './key-ring.js';
import type { Ledger } from './ledger.js';
import { KEY_STREAM } from './key-change.js';
import type { Signer, SignResult } from './signer.js';
import { formatProof } from './tlog-proof.js';
import { writeZip } from './zip.js';

export interface BundleRequest {
  readonly log: string;
  readonly origin: string;
  readonly streams: readonly string[];
  /** Issued documents by digest, with the name their file shall have. */
  readonly documents: readonly { readonly name: string; readonly digest: string }[];
  /** What else belongs to the case, such as the edition of the rules. */
  readonly attachments: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

export interface BundleTools {
  readonly ledger: Ledger;
  readonly signer: Signer;
  readonly keys: KeyRing;
}

export type BundleResult =
  | { readonly kind: 'made'; readonly bytes: Buffer }
  | { readonly kind: 'refused'; readonly reason: string };

/** The table of contents, bundle.json. */
export interface Contents {
  readonly format: typeof FORMAT;
  readonly log: string;
  readonly origin: string;
  readonly streams: readonly { readonly stream: string; readonly positions: readonly number[] }[];
  /** Sizes of earlier checkpoints, each with its proof of consistency. */
  readonly checkpoints: readonly number[];
  /** Sizes of checkpoints with a time-stamp; absent where none has one. */
  readonly timeStamps?: readonly number[];
  readonly documents: readonly {
    readonly name: string;
    readonly digest: string;
    readonly erasedAt?: string;
  }[];
  readonly attachments: readonly { readonly name: string; readonly digest: string }[];
}

export const FORMAT = 'evidence-bundle/1';
export const entryFile = (pos: number): string => `entries/${pos}.json`;
export const proofFile = (pos: number): string => `entries/${pos}.proof.txt`;
export const checkpointFile = (size: number): string => `checkpoints/${size}.txt`;
export const consistencyFile = (size: number): string => `checkpoints/${size}.consistency.txt`;
/** The request, the reply and the certificate trusted then. */
export const timeStampFiles = (size: number) => ({
  request: `time-stamps/${size}.tsq`,
  reply: `time-stamps/${size}.tsr`,
  trusted: `time-stamps/${size}.pem`,
});
export const documentFile = (name: string): string => `documents/${name}`;
export const attachmentFile = (name: string): string => `attachments/${name}`;

export async function makeBundle(
  tools: BundleTools,
  request: BundleRequest,
): Promise<BundleResult> {
  const { log, origin } = request;
  const signed = await tools.signer.sign(log);
  if (signed.kind === 'refused') return signed;
  const files = new Map<string, Buffer>();
  const add: Add = (name, content) => files.set(name, Buffer.from(content));
  add('README.txt', README);
  add('keys.txt', lines(tools.keys.verifiers(origin).map((key) => key.text)));
  add('checkpoint.txt', signed.note);
  const contents: Contents = {
    format: FORMAT,
    log,
    origin,
    streams: await addEntries(tools, request, signed, add),
    checkpoints: await addCheckpoints(tools, log, signed.checkpoint.size, add),
    ...(await addTimeStamps(tools.ledger, log, signed.checkpoint.size, add)),
    documents: await addDocuments(tools.ledger, request, add),
    attachments: addAttachments(request, add),
  };
  add('bundle.json', canonical(contents));
  return { kind: 'made', bytes: writeZip(files) };
}

type Add = (name: string, content: string | Uint8Array) => void;
type Signed = Extract<SignResult, { kind: 'signed' }>;

/** The requested streams, and the one that tells of key changes. */
async function addEntries(
  { ledger, signer }: BundleTools,
  { log, streams }: BundleRequest,
  { checkpoint, note }: Signed,
  add: Add,
): Promise<Contents['streams']> {
  const added: Contents['streams'][number][] = [];
  for (const stream of new Set([...streams, KEY_STREAM])) {
    const all = await ledger.readStream(log, stream);
    const events = all.filter((event) => event.pos <= checkpoint.size);
    for (const event of events) {
      const hashes = await signer.tree(log).inclusion(event.pos, checkpoint.size);
      add(entryFile(event.pos), canonical(event));
      add(proofFile(event.pos), formatProof(event.pos, hashes, note));
    }
    if (events.length > 0) added.push({ stream, positions: events.map((event) => event.pos) });
  }
  return added;
}

async function addCheckpoints(
  { ledger, signer }: BundleTools,
  log: string,
  size: number,
  add: Add,
): Promise<number[]> {
  const kept = await ledger.checkpoints(log);
  const earlier = kept.filter((each) => each.size > 0 && each.size < size);
  for (const each of earlier) {
    const proof = await signer.tree(log).consistency(each.size, size);
    add(checkpointFile(each.size), each.note);
    add(consistencyFile(each.size), lines(proof.map((hash) => hash.toString('base64'))));
  }
  return earlier.map((each) => each.size);
}

async function addTimeStamps(
  ledger: Ledger,
  log: string,
  size: number,
  add: Add,
): Promise<Pick<Contents, 'timeStamps'>> {
  const kept = (await ledger.timeStamps(log)).filter((each) => each.size <= size);
  for (const each of kept) {
    const names = timeStampFiles(each.size);
    add(names.request, each.request);
    add(names.reply, each.reply);
    add(names.trusted, each.trusted);
  }
  return kept.length === 0 ? {} : { timeStamps: kept.map((each) => each.size) };
}

async function addDocuments(
  ledger: Ledger,
  { log, documents }: BundleRequest,
  add: Add,
): Promise<Contents['documents']> {
  const added: Contents['documents'][number][] = [];
  for (const { name, digest } of documents) {
    const issued = await ledger.issued(log, digest);
    if (issued === undefined) throw new RangeError(`no document ${digest} was issued in ${log}`);
    const { bytes, erasedAt } = issued;
    if (bytes !== undefined) add(documentFile(name), bytes);
    added.push({ name, digest, ...(erasedAt === undefined ? {} : { erasedAt }) });
  }
  return added;
}

function addAttachments({ attachments }: BundleRequest, add: Add): Contents['attachments'] {
  return attachments.map(({ name, bytes }) => {
    add(attachmentFile(name), bytes);
    return { name, digest: createHash('sha256').update(bytes).digest('hex') };
  });
}

const lines = (list: readonly string[]): string => list.map((each) => `${each}\n`).join('');

const README = `Evidence bundle

bundle.json        what is in here
entries/           recorded entries, byte for byte as they were hashed, each with its proof
checkpoint.txt     the log's size and root, signed; every proof leads to it
checkpoints/       earlier signed checkpoints, each with the proof that the log only grew since
time-stamps/       time-stamps of checkpoints by an outside authority, where there are any (RFC 3161)
keys.txt           the keys of the signatures
documents/         documents as they were issued
attachments/       what else belongs to the case

To check it: npm run -s verify -- this-file.zip
It needs neither network nor database. Compare the key, or a checkpoint printed on a document you
hold, with the ones in here: what nobody outside has seen proves nothing.

By hand: the hash of an entry is SHA-256 over one zero byte and the file's bytes (RFC 9162, 2.1.1);
the files under entries/ that end in .proof.txt follow c2sp.org/tlog-proof, the checkpoints
c2sp.org/tlog-checkpoint and c2sp.org/signed-note. Under time-stamps/ lie, named by the size of the
checkpoint, the request (.tsq), the reply (.tsr) and the authority's certificate trusted then (.pem).

A bundle shows that these entries were recorded in this order and are unaltered. It cannot show that
no later version exists.
`;
