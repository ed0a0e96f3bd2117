// A store in memory: for tests, for played job files, and as the plain meaning of what a store does.

import type { Sealed } from './envelope.js';
import type { Issued, KeptCheckpoint, KeptTimeStamp } from './ledger.js';
import { EMPTY_ROOT, Frontier } from './merkle.js';
import type {
  Batch,
  CommandRow,
  CommitOutcome,
  LogState,
  Store,
  StreamHead,
  Survey,
} from './store.js';
import { formatMicros, parseMicros } from './time.js';

interface MemoryLog {
  state: LogState;
  readonly events: Sealed[];
  readonly streams: Map<string, Sealed[]>;
  readonly commands: Map<string, CommandRow>;
  readonly checkpoints: KeptCheckpoint[];
  readonly timeStamps: KeptTimeStamp[];
  readonly issued: Map<string, Issued>;
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
    survey: async (log, streams, commands) => survey(find(log), streams, commands),
    write: (log, work) =>
      work({
        survey: async (streams, commands) => survey(find(log), streams, commands),
        commit: async (batch) => commit(find(log), batch),
      }),
    readStream: async (log, stream, from, upTo) =>
      (find(log).streams.get(stream) ?? []).slice(from - 1, upTo).map((event) => event.body),
    readAll: async (log, after, limit) => find(log).events.slice(after, after + limit),
    listPosition: async () => 0,
    readLeaves: async (log, start, end) =>
      find(log)
        .events.slice(start, end)
        .map((e) => Buffer.from(e.leaf, 'hex')),
    readHead: async (log) => {
      const { state } = find(log);
      return { ...state, frontier: state.frontier.encode() };
    },
    readRows: async (log, after, limit) =>
      find(log)
        .events.slice(after, after + limit)
        .map((event) => ({
          ...event,
          recordedAt: parseMicros(event.recordedAt),
          effectiveAt: parseMicros(event.effectiveAt),
          leaf: Buffer.from(event.leaf, 'hex'),
        })),
    readLinks: async (log, wanted, upTo) =>
      wanted.flatMap(({ stream, version }) => {
        const found = find(log).streams.get(stream)?.[version - 1];
        if (found === undefined || found.pos > upTo) return [];
        return [{ stream, version, leaf: found.leaf }];
      }),
    ...documents(find),
  };
}

function survey(log: MemoryLog, streams: readonly string[], commands: readonly string[]): Survey {
  return {
    log: log.state,
    streams: pick(streams, (stream) => headOf(log.streams.get(stream))),
    commands: pick(commands, (command) => log.commands.get(command)),
  };
}

function commit(log: MemoryLog, batch: Batch): CommitOutcome {
  if (log.state.pos !== batch.seen) return 'moved';
  const taken =
    batch.commands.some(({ id }) => log.commands.has(id)) ||
    batch.events.some(({ stream, version }) => log.streams.get(stream)?.[version - 1]);
  if (taken) return 'taken';
  for (const event of batch.events) {
    log.events.push(event);
    const stream = log.streams.get(event.stream) ?? [];
    stream.push(event);
    log.streams.set(event.stream, stream);
  }
  for (const command of batch.commands) log.commands.set(command.id, command);
  log.state = batch.after;
  return 'committed';
}

type Documents = Pick<
  Store,
  | 'keepCheckpoint'
  | 'checkpoints'
  | 'lastCheckpoint'
  | 'keepTimeStamp'
  | 'timeStamps'
  | 'lastTimeStamp'
  | 'keepIssued'
  | 'issued'
  | 'eraseIssued'
>;

function documents(find: (log: string) => MemoryLog): Documents {
  return {
    keepCheckpoint: async (log, checkpoint) => {
      const { checkpoints } = find(log);
      if (checkpoints.some(({ size }) => size === checkpoint.size)) return;
      checkpoints.push(checkpoint);
      checkpoints.sort((a, b) => a.size - b.size);
    },
    checkpoints: async (log) => [...find(log).checkpoints],
    lastCheckpoint: async (log) => find(log).checkpoints.at(-1),
    keepTimeStamp: async (log, stamp) => {
      const { timeStamps } = find(log);
      if (timeStamps.some(({ size }) => size === stamp.size)) return;
      timeStamps.push(stamp);
      timeStamps.sort((a, b) => a.size - b.size);
    },
    timeStamps: async (log, from, most) =>
      find(log)
        .timeStamps.filter(({ size }) => size >= from)
        .slice(0, most),
    lastTimeStamp: async (log) => find(log).timeStamps.at(-1),
    keepIssued: async (log, digest, mediaType, bytes) => {
      const { issued } = find(log);
      const key = digest.toString('hex');
      if (issued.has(key)) return;
      issued.set(key, { mediaType, bytes, issuedAt: now(), erasedAt: undefined });
    },
    issued: async (log, digest) => find(log).issued.get(digest.toString('hex')),
    eraseIssued: async (log, digest) => {
      const key = digest.toString('hex');
      const found = find(log).issued.get(key);
      if (found) find(log).issued.set(key, { ...found, bytes: undefined, erasedAt: now() });
    },
  };
}

const now = (): string => formatMicros(Date.now() * 1000);

function emptyLog(): MemoryLog {
  return {
    state: { pos: 0, lastAt: 0, frontier: new Frontier(), root: EMPTY_ROOT },
    events: [],
    streams: new Map(),
    commands: new Map(),
    checkpoints: [],
    timeStamps: [],
    issued: new Map(),
  };
}

function headOf(events: readonly Sealed[] | undefined): StreamHead | undefined {
  const last = events?.at(-1);
  return last && { version: last.version, leaf: last.leaf };
}

function pick<T>(names: readonly string[], find: (name: string) => T | undefined): Map<string, T> {
  return new Map(
    names.flatMap((name) => {
      const found = find(name);
      return found === undefined ? [] : [[name, found] as const];
    }),
  );
}
