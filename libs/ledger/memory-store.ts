// A store in memory: for tests, for played job files, and as the plain meaning of what a store does.

import type { Sealed } from './envelope.js';
import { EMPTY_ROOT, Frontier } from './merkle.js';
import type { CommandRow, LogState, Store, StreamHead } from './store.js';

interface MemoryLog {
  state: LogState;
  readonly events: Sealed[];
  readonly streams: Map<string, Sealed[]>;
  readonly commands: Map<string, CommandRow>;
}

export function createMemoryStore(): Store {
  const logs = new Map<string, MemoryLog>();
  const find = (log: string): MemoryLog => {
    const found = logs.get(log);
    if (found === undefined) throw new Error(`There is no log ${log}.`);
    return found;
  };
  return {
    createLog: async (log) => {
      if (!logs.has(log)) logs.set(log, emptyLog());
    },
    survey: async (log, streams, commands) => {
      const found = find(log);
      return {
        log: found.state,
        streams: pick(streams, (stream) => headOf(found.streams.get(stream))),
        commands: pick(commands, (command) => found.commands.get(command)),
      };
    },
    commit: async (log, batch) => {
      const found = find(log);
      if (found.state.pos !== batch.seen) return 'moved';
      const taken =
        batch.commands.some(({ id }) => found.commands.has(id)) ||
        batch.events.some(({ stream, version }) => found.streams.get(stream)?.[version - 1]);
      if (taken) return 'taken';
      for (const event of batch.events) {
        found.events.push(event);
        const stream = found.streams.get(event.stream) ?? [];
        stream.push(event);
        found.streams.set(event.stream, stream);
      }
      for (const command of batch.commands) found.commands.set(command.id, command);
      found.state = batch.after;
      return 'committed';
    },
    readStream: async (log, stream, from, upTo) =>
      (find(log).streams.get(stream) ?? []).slice(from - 1, upTo).map((event) => event.body),
    readAll: async (log, after, limit) => find(log).events.slice(after, after + limit),
    listPosition: async () => 0,
  };
}

function emptyLog(): MemoryLog {
  return {
    state: { pos: 0, lastAt: 0, frontier: new Frontier(), root: EMPTY_ROOT },
    events: [],
    streams: new Map(),
    commands: new Map(),
  };
}

function headOf(events: readonly Sealed[] | undefined): StreamHead | undefined {
  const last = events?.at(-1);
  return last && { version: last.version, leaf: last.leaf.toString('hex') };
}

function pick<T>(names: readonly string[], find: (name: string) => T | undefined): Map<string, T> {
  return new Map(
    names.flatMap((name) => {
      const found = find(name);
      return found === undefined ? [] : [[name, found] as const];
    }),
  );
}
