// The envelope of an event: the canonical JSON that is stored, hashed and never rewritten.

import { hash, randomFillSync, randomUUID } from 'node:crypto';
import { canonical } from './canonical.js';
import type { AppendRequest, NewEvent, Recorded } from './ledger.js';
import { LEAF } from './merkle.js';
import { formatMicros, normalTime } from './time.js';

/** All of an event but what only its place in the log decides. */
export interface Draft {
  readonly stream: string;
  readonly type: string;
  readonly effectiveAt: string | undefined;
  /** The body up to effectiveAt, then the parts between the fields still open. */
  readonly parts: {
    readonly data: string;
    readonly id: string;
    readonly salt: string;
    readonly type: string;
  };
}

export interface Place {
  readonly pos: number;
  readonly version: number;
  /** Leaf hash, hexadecimal, of the stream's previous version. */
  readonly prev: string | null;
  /** Microseconds since 1970. */
  readonly recordedAt: number;
}

export interface Sealed {
  readonly pos: number;
  readonly stream: string;
  readonly version: number;
  readonly type: string;
  readonly recordedAt: string;
  readonly effectiveAt: string;
  readonly body: string;
  /** Hexadecimal. */
  readonly leaf: string;
}

/** Random bytes of a ledger; a played job file brings its own, so that two plays are the same. */
export interface Randomness {
  salt(): string;
  id(): string;
}

/** @throws TypeError or RangeError naming what is not plain JSON or not a time */
export function draft(
  request: AppendRequest,
  stream: string,
  event: NewEvent,
  random: Randomness,
): Draft {
  const { by, command, log } = request;
  const who = `{"person":${canonical(by.person)},"role":${canonical(by.role)}}`;
  const data = `{"by":${who},"command":${canonical(command.id)},"data":${canonical(event.data)}`;
  const type = `"stream":${canonical(stream)},"type":${canonical(event.type)}`;
  return {
    stream,
    type: event.type,
    effectiveAt: event.effectiveAt === undefined ? undefined : normalTime(event.effectiveAt),
    parts: {
      data: `${data},"effectiveAt":"`,
      id: `","id":${canonical(event.id ?? random.id())},"log":${canonical(log)},"pos":`,
      salt: `","salt":"${random.salt()}",`,
      type: `${type},"version":`,
    },
  };
}

/** Names in canonical order: by command data effectiveAt id log pos prev recordedAt salt stream type version. */
export function seal({ stream, type, effectiveAt, parts }: Draft, place: Place): Sealed {
  const { pos, version, prev } = place;
  const recordedAt = formatMicros(place.recordedAt);
  const effective = effectiveAt ?? recordedAt;
  const before = prev === null ? 'null' : `"${prev}"`;
  // Hashed as one piece with what comes before it, the text is whole; its body is a view of it.
  const hashed =
    `${LEAF}${parts.data}${effective}${parts.id}${pos},"prev":${before},"recordedAt":"${recordedAt}` +
    `${parts.salt}${parts.type}${version}}`;
  const leaf = hash('sha256', hashed, 'hex');
  const body = hashed.slice(LEAF.length);
  return { pos, stream, version, type, recordedAt, effectiveAt: effective, body, leaf };
}

export function readBody(body: string): Recorded {
  return JSON.parse(body) as Recorded;
}

const SALT_BYTES = 16;
const pool = Buffer.alloc(256 * SALT_BYTES);
let used = pool.length;

export const systemRandomness: Randomness = {
  id: () => randomUUID(),
  salt: () => {
    if (used === pool.length) {
      randomFillSync(pool);
      used = 0;
    }
    used += SALT_BYTES;
    return pool.toString('hex', used - SALT_BYTES, used);
  },
};
