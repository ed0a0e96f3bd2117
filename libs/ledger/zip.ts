// Zip files, small and strict: written the same for the same content, read only when every checksum
// fits (PKWARE APPNOTE, without encryption, splitting or ZIP64).

import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';

export type Files = ReadonlyMap<string, Buffer>;

const LOCAL = 0x0403_4b50;
const CENTRAL = 0x0201_4b50;
const END = 0x0605_4b50;
const STORED = 0;
const DEFLATED = 8;
const UTF8_NAMES = 0x0800;
/** 1980-01-01: the content says when, the container does not. */
const DATE = 0x0021;
const MOST_FILES = 65_535;
const MOST_BYTES = 1024 ** 3;

export function writeZip(files: Files): Buffer {
  if (files.size > MOST_FILES) throw new RangeError(`a zip file holds at most ${MOST_FILES} files`);
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const [name, bytes] of files) {
    const packed = deflateRawSync(bytes, { level: 9 });
    const method = packed.length < bytes.length ? DEFLATED : STORED;
    const content = method === DEFLATED ? packed : bytes;
    const fields = { name: Buffer.from(name), method, crc: crc32(bytes), content, bytes };
    const local = localHeader(fields);
    directory.push(centralHeader(fields, offset));
    parts.push(local, content);
    offset += local.length + content.length;
  }
  if (offset > MOST_BYTES) throw new RangeError('a zip file of more than 1 GB is not written');
  const central = Buffer.concat(directory);
  return Buffer.concat([...parts, central, endRecord(files.size, central.length, offset)]);
}

/** @throws SyntaxError saying what is wrong */
export function readZip(bytes: Buffer): Files {
  const end = bytes.lastIndexOf(Buffer.from('504b0506', 'hex'));
  if (end < 0 || bytes.length < end + 22) throw new SyntaxError('This is not a zip file.');
  const count = bytes.readUInt16LE(end + 10);
  let at = bytes.readUInt32LE(end + 16);
  const files = new Map<string, Buffer>();
  let total = 0;
  for (let i = 0; i < count; i++) {
    const entry = readCentral(bytes, at);
    total += entry.size;
    if (total > MOST_BYTES) throw new SyntaxError('The zip file holds more than 1 GB.');
    if (files.has(entry.name)) throw new SyntaxError(`${entry.name} is in the zip file twice.`);
    files.set(entry.name, readContent(bytes, entry));
    at = entry.next;
  }
  return files;
}

interface Fields {
  readonly name: Buffer;
  readonly method: number;
  readonly crc: number;
  readonly content: Buffer;
  readonly bytes: Buffer;
}

/** The eleven fields that the local and the central header share. */
function common({ name, method, crc, content, bytes }: Fields): Buffer {
  const header = Buffer.alloc(26);
  header.writeUInt16LE(20, 0);
  header.writeUInt16LE(UTF8_NAMES, 2);
  header.writeUInt16LE(method, 4);
  header.writeUInt16LE(DATE, 8);
  header.writeUInt32LE(crc, 10);
  header.writeUInt32LE(content.length, 14);
  header.writeUInt32LE(bytes.length, 18);
  header.writeUInt16LE(name.length, 22);
  return header;
}

function signature(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}

function localHeader(fields: Fields): Buffer {
  return Buffer.concat([signature(LOCAL), common(fields), fields.name]);
}

function centralHeader(fields: Fields, offset: number): Buffer {
  const version = Buffer.from([20, 0]);
  const rest = Buffer.alloc(14);
  rest.writeUInt32LE(offset, 10);
  return Buffer.concat([signature(CENTRAL), version, common(fields), rest, fields.name]);
}

function endRecord(count: number, size: number, offset: number): Buffer {
  const end = Buffer.alloc(22);
  end.writeUInt32LE(END, 0);
  end.writeUInt16LE(count, 8);
  end.writeUInt16LE(count, 10);
  end.writeUInt32LE(size, 12);
  end.writeUInt32LE(offset, 16);
  return end;
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
  readonly next: number;
}

function readCentral(bytes: Buffer, at: number): Entry {
  if (at + 46 > bytes.length || bytes.readUInt32LE(at) !== CENTRAL) {
    throw new SyntaxError('The directory of the zip file is damaged.');
  }
  const nameEnd = at + 46 + bytes.readUInt16LE(at + 28);
  const name = bytes.toString('utf8', at + 46, nameEnd);
  if (name === '' || name.startsWith('/') || /\\|(^|\/)\.\.(\/|$)/.test(name)) {
    throw new SyntaxError(`The zip file holds a file with the name "${name}".`);
  }
  return {
    name,
    method: bytes.readUInt16LE(at + 10),
    crc: bytes.readUInt32LE(at + 16),
    packed: bytes.readUInt32LE(at + 20),
    size: bytes.readUInt32LE(at + 24),
    offset: bytes.readUInt32LE(at + 42),
    next: nameEnd + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32),
  };
}

function readContent(bytes: Buffer, entry: Entry): Buffer {
  const { name, offset, packed, size, method } = entry;
  if (offset + 30 > bytes.length || bytes.readUInt32LE(offset) !== LOCAL) {
    throw new SyntaxError(`${name} in the zip file is damaged.`);
  }
  const start = offset + 30 + bytes.readUInt16LE(offset + 26) + bytes.readUInt16LE(offset + 28);
  const content = bytes.subarray(start, start + packed);
  const unpacked = unpack(content, method, size, name);
  if (unpacked.length !== size || crc32(unpacked) !== entry.crc) {
    throw new SyntaxError(`${name} in the zip file does not have its checksum.`);
  }
  return unpacked;
}

function unpack(content: Buffer, method: number, size: number, name: string): Buffer {
  if (method === STORED) return content;
  if (method !== DEFLATED) throw new SyntaxError(`${name} is packed in an unknown way.`);
  try {
    return inflateRawSync(content, { maxOutputLength: Math.max(1, size) });
  } catch {
    throw new SyntaxError(`${name} in the zip file is damaged.`);
  }
}
