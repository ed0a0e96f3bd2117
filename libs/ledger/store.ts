// What a store must do for the ledger; memory and PostgreSQL do it.

import type { Sealed } from './envelope.js';
import type { Appended } from './ledger.js';
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

export interface StoredEvent {
  readonly pos: number;
  readonly body: string;
}

export interface Store {
  createLog(log: string): Promise<void>;
  /** @throws Error when the log does not exist or cannot be seen */
  survey(log: string, streams: readonly string[], commands: readonly string[]): Promise<Survey>;
  /** Compares the head with `seen` and sets it, inserting all or nothing. */
  commit(log: string, batch: Batch): Promise<CommitOutcome>;
  /** Bodies in order of version. */
  readStream(log: string, stream: string, from: number, upTo: number): Promise<string[]>;
  /** In order of position. */
  readAll(log: string, after: number, limit: number): Promise<StoredEvent[]>;
  /** Position of a list's live generation; 0 when it has none. */
  listPosition(log: string, list: string): Promise<number>;
}
