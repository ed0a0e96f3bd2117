// What a store must do for the ledger; memory and PostgreSQL do it.

import type { Sealed } from './envelope.js';
import type { Appended, Issued, KeptCheckpoint, KeptTimeStamp } from './ledger.js';
import type { Frontier, Hash } from './merkle.js';

export interface LogState {
  readonly pos: number;
  /** Microseconds since 1970; 0 for an empty log. */
  readonly lastAt: number;
  readonly frontier: Frontier;
  readonly root: Hash;
}

export interface StreamHead {
  readonly version: number;
  /** Hexadecimal. */
  readonly leaf: string;
}

/** An accepted command. */
export interface CommandRow extends Appended {
  readonly id: string;
  readonly digest: string;
}

/** Read in one snapshot, so that a "no" given from it rests on the current head. */
export interface Survey {
  readonly log: LogState;
  readonly streams: ReadonlyMap<string, StreamHead>;
  readonly commands: ReadonlyMap<string, CommandRow>;
}

export interface Batch {
  readonly seen: number;
  readonly after: LogState;
  readonly events: readonly Sealed[];
  readonly commands: readonly CommandRow[];
}

/** moved: another writer was first. taken: a stream's version or a command's id is there already. */
export type CommitOutcome = 'committed' | 'moved' | 'taken';

export interface Writer {
  survey(streams: readonly string[], commands: readonly string[]): Promise<Survey>;
  /** Compares the head with `seen` and sets it, inserting all or nothing. */
  commit(batch: Batch): Promise<CommitOutcome>;
}

export interface StoredEvent {
  readonly pos: number;
  readonly body: string;
}

export interface StoredLink extends StreamHead {
  readonly stream: string;
}

export interface Store {
  createLog(log: string): Promise<void>;
  /** @throws Error when the log does not exist or cannot be seen */
  survey(log: string, streams: readonly string[], commands: readonly string[]): Promise<Survey>;
  /** Lends a writer; its calls are carried out in the order in which they are made. */
  write<T>(log: string, work: (writer: Writer) => Promise<T>): Promise<T>;
  /** Bodies in order of version. */
  readStream(log: string, stream: string, from: number, upTo: number): Promise<string[]>;
  /** In order of position. */
  readAll(log: string, after: number, limit: number): Promise<StoredEvent[]>;
  /** Position of a list's live generation; 0 when it has none. */
  listPosition(log: string, list: string): Promise<number>;
  /** Leaf hashes of start ≤ pos - 1 < end, in order; fewer when the log is shorter. */
  readLeaves(log: string, start: number, end: number): Promise<Hash[]>;
  readHead(log: string): Promise<HeadRow>;
  /** Events with their copied columns, in order of position. */
  readRows(log: string, after: number, limit: number): Promise<EventRow[]>;
  /** Does nothing when one of this size is there. */
  /** Of these versions, those at or before a position. */
  readLinks(
    log: string,
    wanted: readonly { readonly stream: string; readonly version: number }[],
    upTo: number,
  ): Promise<StoredLink[]>;
  keepCheckpoint(log: string, checkpoint: KeptCheckpoint): Promise<void>;
  /** In order of size. */
  checkpoints(log: string): Promise<KeptCheckpoint[]>;
  lastCheckpoint(log: string): Promise<KeptCheckpoint | undefined>;
  keepTimeStamp(log: string, stamp: KeptTimeStamp): Promise<void>;
  /** In order of size. */
  timeStamps(log: string, from: number, most?: number): Promise<KeptTimeStamp[]>;
  lastTimeStamp(log: string): Promise<KeptTimeStamp | undefined>;
  keepIssued(log: string, digest: Hash, mediaType: string, bytes: Buffer): Promise<void>;
  issued(log: string, digest: Hash): Promise<Issued | undefined>;
  eraseIssued(log: string, digest: Hash): Promise<void>;
}

/** The head as it lies there, to be compared with the entries. */
export interface HeadRow {
  readonly pos: number;
  /** Microseconds since 1970; 0 for an empty log. */
  readonly lastAt: number;
  readonly frontier: Buffer;
  readonly root: Hash;
}

/** A row as it lies there, to be compared with its body. */
export interface EventRow {
  readonly pos: number;
  readonly stream: string;
  readonly version: number;
  readonly type: string;
  /** Microseconds since 1970. */
  readonly recordedAt: number;
  readonly effectiveAt: number;
  readonly body: string;
  readonly leaf: Hash;
}
