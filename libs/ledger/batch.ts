// Turns the requests that go together into one batch: positions, times, bodies, leaves, tree edge.

import { seal } from './envelope.js';
import type { Draft, Sealed } from './envelope.js';
import type { Appended } from './ledger.js';
import type { Batch, CommandRow, LogState, StreamHead } from './store.js';

/** A request with its bodies drafted. */
export interface Drafted {
  readonly command: { readonly id: string; readonly digest: string };
  readonly streams: readonly DraftedStream[];
  /** About as many as it will take. */
  readonly bytes: number;
  /** How many of them. */
  readonly events: number;
}

export interface DraftedStream {
  readonly stream: string;
  readonly expectedVersion: number;
  readonly drafts: readonly Draft[];
}

export interface SealedBatch {
  readonly batch: Batch;
  readonly heads: ReadonlyMap<string, StreamHead>;
}

/** Every request must fit its streams' heads; `now` is in microseconds since 1970. */
export function sealBatch(
  state: LogState,
  headOf: (stream: string) => StreamHead | undefined,
  requests: readonly Drafted[],
  now: number,
): SealedBatch {
  const frontier = state.frontier.copy();
  const events: Sealed[] = [];
  const heads = new Map<string, StreamHead>();
  let recordedAt = Math.max(now, state.lastAt + 1) - 1;
  const commands = requests.map(({ command, streams }): CommandRow => {
    const first = events.length;
    const versions: [string, number][] = [];
    for (const { stream, drafts } of streams) {
      let { version, leaf } = headOf(stream) ?? NEW_STREAM;
      for (const draft of drafts) {
        const sealed = seal(draft, {
          pos: state.pos + events.length + 1,
          version: ++version,
          prev: leaf === '' ? null : leaf,
          recordedAt: ++recordedAt,
        });
        events.push(sealed);
        frontier.append(Buffer.from(sealed.leaf, 'hex'));
        leaf = sealed.leaf;
      }
      heads.set(stream, { version, leaf });
      versions.push([stream, version]);
    }
    return { ...command, ...appended(events.slice(first), Object.fromEntries(versions)) };
  });
  const pos = state.pos + events.length;
  const after = { pos, lastAt: recordedAt, frontier, root: frontier.root() };
  return { batch: { seen: state.pos, after, events, commands }, heads };
}

export const NEW_STREAM: StreamHead = { version: 0, leaf: '' };

function appended(events: readonly Sealed[], versions: Record<string, number>): Appended {
  const positions = events.map((event) => event.pos);
  const last = events.at(-1) as Sealed;
  return {
    positions,
    first: positions[0] as number,
    last: last.pos,
    versions,
    recordedAt: last.recordedAt,
  };
}
