// Whether a zip file may be opened: few parts, none hidden, and together no larger than a workbook
// of ours can be. Each part is unpacked against a limit first, because a declared size may lie.

import { inflateRawSync } from 'node:zlib';

const MOST_PARTS = 200;
const MOST_BYTES = 32 * 1024 * 1024;

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const ENTRY_LENGTH = 46;
const LOCAL_LENGTH = 30;
const LONGEST_COMMENT = 0xffff;

interface Part {
  readonly method: number;
  readonly encrypted: boolean;
  readonly packed: number;
  readonly size: number;
  readonly at: number;
}

/** Why it may not be opened, in a sentence; undefined where it may. */
export function zipFault(zip: Buffer): string | undefined {
  const parts = partsOf(zip);
  if (typeof parts === 'string') return parts;
  if (parts.length > MOST_PARTS)
    return `The file has ${parts.length} parts; at most ${MOST_PARTS}.`;
  if (parts.some(({ encrypted }) => encrypted))
    return 'The file is encrypted; save it without a password.';
  const declared = parts.reduce((sum, { size }) => sum + size, 0);
  if (declared > MOST_BYTES) return tooLarge;
  let left = MOST_BYTES;
  for (const part of parts) {
    const size = unpackedSize(zip, part, Math.min(left, part.size));
    if (size !== part.size) return 'A part of the file is not of the size it declares.';
    left -= size;
  }
  return undefined;
}

const tooLarge = `Unpacked, the file is larger than ${MOST_BYTES / 1024 / 1024} MiB.`;
const notZip = 'This is not a workbook: its zip directory cannot be read.';

function partsOf(zip: Buffer): readonly Part[] | string {
  const end = endOf(zip);
  if (end < 0) return notZip;
  const count = zip.readUInt16LE(end + 10);
  const offset = zip.readUInt32LE(end + 16);
  if (count === 0xffff || offset === 0xffffffff)
    return 'The file is larger than a workbook can be.';
  const parts: Part[] = [];
  let at = offset;
  for (let i = 0; i < count; i++) {
    if (at + ENTRY_LENGTH > zip.length || zip.readUInt32LE(at) !== ENTRY) return notZip;
    parts.push({
      encrypted: (zip.readUInt16LE(at + 8) & 1) === 1,
      method: zip.readUInt16LE(at + 10),
      packed: zip.readUInt32LE(at + 20),
      size: zip.readUInt32LE(at + 24),
      at: zip.readUInt32LE(at + 42),
    });
    at +=
      ENTRY_LENGTH +
      zip.readUInt16LE(at + 28) +
      zip.readUInt16LE(at + 30) +
      zip.readUInt16LE(at + 32);
  }
  return parts;
}

function endOf(zip: Buffer): number {
  const earliest = Math.max(0, zip.length - END_LENGTH - LONGEST_COMMENT);
  for (let at = zip.length - END_LENGTH; at >= earliest; at--)
    if (zip.readUInt32LE(at) === END) return at;
  return -1;
}

/** Of one part, never unpacking more than `most` bytes; -1 where it cannot be, or is longer. */
function unpackedSize(zip: Buffer, { at, method, packed }: Part, most: number): number {
  if (at + LOCAL_LENGTH > zip.length || zip.readUInt32LE(at) !== LOCAL) return -1;
  const start = at + LOCAL_LENGTH + zip.readUInt16LE(at + 26) + zip.readUInt16LE(at + 28);
  const bytes = zip.subarray(start, start + packed);
  if (method === 0) return bytes.length;
  if (method !== 8) return -1;
  try {
    return inflateRawSync(bytes, { maxOutputLength: Math.max(1, most) }).length;
  } catch {
    return -1;
  }
}
