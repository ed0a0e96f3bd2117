// A request made ready for a batch: everything that could be refused is refused here, before it waits
// with others whose batch it must not spoil.

import type { Drafted } from './batch.js';
import { draft } from './envelope.js';
import type { Draft, Randomness } from './envelope.js';
import type { AppendRequest, StreamAppend } from './ledger.js';

const MAX_BYTES = 64 * 1024 * 1024;

/** About the bytes of an envelope without its data. */
const EMPTY_ENVELOPE = 500;

/** @throws RangeError or TypeError for a request that no ledger could keep */
export function draftRequest(request: AppendRequest, random: Randomness): Drafted {
  const { command, streams, log } = request;
  checkName('log', log);
  checkName('command id', command.id);
  checkName('command digest', command.digest);
  if (streams.length === 0) throw new RangeError('a request names at least one stream');
  if (new Set(streams.map((each) => each.stream)).size < streams.length) {
    throw new RangeError('a request names each stream once');
  }
  let bytes = 0;
  let events = 0;
  const drafted = streams.map((each) => {
    const drafts = draftStream(request, each, random);
    for (const one of drafts) bytes += one.parts.data.length + EMPTY_ENVELOPE;
    events += drafts.length;
    return { stream: each.stream, expectedVersion: each.expectedVersion, drafts };
  });
  if (bytes > MAX_BYTES) throw new RangeError(`a request has at most ${MAX_BYTES} bytes`);
  return { command, streams: drafted, bytes, events };
}

function draftStream(request: AppendRequest, each: StreamAppend, random: Randomness): Draft[] {
  const { stream, expectedVersion, events } = each;
  checkName('stream', stream);
  if (events.length === 0) throw new RangeError(`no events for the stream ${stream}`);
  if (!Number.isSafeInteger(expectedVersion) || expectedVersion < 0) {
    throw new RangeError(`${expectedVersion} is not a version of the stream ${stream}`);
  }
  return events.map((event) => {
    checkName('event type', event.type);
    return draft(request, stream, event, random);
  });
}

/** Names are keys of indexes. */
function checkName(what: string, name: string): void {
  if (!/^[^\p{Cc}\p{Cs}]{1,200}$/u.test(name)) {
    throw new RangeError(`${what}: 1 to 200 characters, no control characters`);
  }
}
