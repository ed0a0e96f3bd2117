// The number stream of the RFC 8785 authors: doubles made by a chain of SHA-256, printed by the
// canonicalizer, and digested after so many lines.

import { createHash, hash } from 'node:crypto';
import { canonical } from '#ledger';
import { FIXED_DOUBLES } from './number-stream.table.js';

export interface StreamDigest extends Record<string, unknown> {
  readonly sha256_hex: string;
  readonly size_bytes: number;
}

const SUBNORMAL_EDGE = 0x0010_0000_0000_0000n;
const STEPS = 2000;
const asked = new Map<number, StreamDigest>();

/** Digest and size of the first `lines` lines "bits in hexadecimal,number". */
export function numberStream(lines: number): StreamDigest {
  const known = asked.get(lines);
  if (known !== undefined) return known;
  const rolling = createHash('sha256');
  const bytes = Buffer.alloc(8);
  let size = 0;
  let printed = 0;
  let chunk = '';
  const flush = () => {
    rolling.update(chunk);
    size += chunk.length;
    chunk = '';
  };
  for (const bits of doubles()) {
    bytes.writeBigUInt64BE(bits);
    chunk += `${bits.toString(16)},${canonical(bytes.readDoubleBE())}\n`;
    printed++;
    if (printed % 1000 === 0) flush();
    if (printed === lines) break;
  }
  flush();
  const digest = { sha256_hex: rolling.digest('hex'), size_bytes: size };
  asked.set(lines, digest);
  return digest;
}

function* doubles(): Generator<bigint> {
  for (const fixed of FIXED_DOUBLES.trim().split(/\s+/)) yield BigInt(`0x${fixed}`);
  for (let i = 0; i < STEPS; i++) yield SUBNORMAL_EDGE + BigInt(i);
  let block = Buffer.alloc(32);
  for (;;) {
    block = hash('sha256', block, 'buffer') as Buffer<ArrayBuffer>;
    for (let i = 0; i < 32; i += 8) {
      const value = block.readDoubleLE(i);
      if (value !== 0 && Number.isFinite(value)) yield block.readBigUInt64LE(i);
    }
  }
}
