// Asks a time-stamping authority over HTTP (RFC 3161, 3.4): bounded in time and size, never redirected.

import { Readable } from 'node:stream';

const LONGEST_MS = 10_000;
const MOST_BYTES = 64 * 1024;

/** @throws Error with one sentence where there is no reply of the right form */
export async function askAuthority(
  url: string,
  request: Buffer,
  stopped: AbortSignal,
): Promise<Buffer> {
  const response = await fetch(url, {
    method: 'POST',
    headers: {
      'Content-Type': 'application/timestamp-query',
      Accept: 'application/timestamp-reply',
    },
    body: new Uint8Array(request),
    redirect: 'error',
    signal: AbortSignal.any([stopped, AbortSignal.timeout(LONGEST_MS)]),
  });
  const type = response.headers.get('content-type') ?? 'nothing named';
  if (!response.ok || !type.startsWith('application/timestamp-reply') || !response.body) {
    await response.body?.cancel();
    throw new Error(`The authority answered ${response.status} with ${type.slice(0, 80)}.`);
  }
  return readAtMost(Readable.fromWeb(response.body as Parameters<typeof Readable.fromWeb>[0]));
}

async function readAtMost(body: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of body) {
    length += part.length;
    if (length > MOST_BYTES)
      throw new Error(`The authority's reply is longer than ${MOST_BYTES} bytes.`);
    parts.push(part);
  }
  return Buffer.concat(parts);
}
