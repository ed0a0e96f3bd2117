// What a ledger offers: append, read, follow, prove. Business "no" is a value, a fault is thrown.

import type { Checkpoint } from './checkpoint.js';
import type { Hash } from './merkle.js';
import type { TimeStamp } from './time-stamp.js';

export interface NewEvent {
  /** With its version: "measured/1". */
  readonly type: string;
  /** Plain JSON; the ledger never looks inside. */
  readonly data: unknown;
  /** When it was true, if not now: RFC 3339, UTC. */
  readonly effectiveAt?: string;
  readonly id?: string;
}

/** Who did it. */
export interface By {
  readonly person: string;
  readonly role: string;
}

/** An event as it is kept for ever; its canonical JSON is what is hashed. */
export interface Recorded {
  readonly log: string;
  /** 1, 2, 3, … in the log, without a gap. */
  readonly pos: number;
  readonly stream: string;
  /** 1, 2, 3, … in the stream. */
  readonly version: number;
  /** Leaf hash of the stream's previous version, hexadecimal; null for the first. */
  readonly prev: string | null;
  readonly id: string;
  readonly type: string;
  /** Strictly rising in a log. */
  readonly recordedAt: string;
  readonly effectiveAt: string;
  readonly by: By;
  /** Id of the command that made it. */
  readonly command: string;
  /** 16 random bytes, hexadecimal: nobody guesses an event from its hash. */
  readonly salt: string;
  readonly data: unknown;
}

export interface AppendRequest {
  readonly log: string;
  /** The same id with the same digest is answered again, with another digest refused. */
  readonly command: { readonly id: string; readonly digest: string };
  readonly by: By;
  /** All or nothing. */
  readonly streams: readonly StreamAppend[];
}

export interface StreamAppend {
  readonly stream: string;
  /** The stream's version before; 0 for a new one. */
  readonly expectedVersion: number;
  readonly events: readonly NewEvent[];
}

export interface Appended {
  readonly positions: readonly number[];
  readonly first: number;
  readonly last: number;
  /** Each stream's version afterwards. */
  readonly versions: Readonly<Record<string, number>>;
  /** Of the last event. */
  readonly recordedAt: string;
}

export type AppendResult =
  | ({ readonly kind: 'appended' } & Appended)
  | ({ readonly kind: 'repeated' } & Appended)
  | { readonly kind: 'wrong-version'; readonly stream: string; readonly actual: number }
  | { readonly kind: 'command-reused' }
  | { readonly kind: 'queue-full' };

export interface ReadOptions {
  /** First version wanted. */
  readonly from?: number;
  /** Last version wanted. */
  readonly upTo?: number;
  /** What was known by one time about what was true by the other. */
  readonly asOf?: { readonly recordedAt?: string; readonly effectiveAt?: string };
}

export interface Head {
  /** Position of the last event; 0 for an empty log. */
  readonly pos: number;
  readonly root: Hash;
  /** Empty for an empty log. */
  readonly lastAt: string;
}

export interface KeptCheckpoint {
  readonly size: number;
  readonly root: Hash;
  /** The signed note. */
  readonly note: string;
}

/** Of the checkpoint of this size. */
export interface KeptTimeStamp extends TimeStamp {
  readonly size: number;
}

export interface Issued {
  readonly mediaType: string;
  /** Undefined after erasure. */
  readonly bytes: Buffer | undefined;
  readonly issuedAt: string;
  readonly erasedAt: string | undefined;
}

export interface Fault {
  /** The first position that is wrong. */
  readonly pos: number;
  readonly says: string;
}

export interface LogReport {
  /** Entries found good before the first fault. */
  readonly events: number;
  /** Of those entries. */
  readonly root: Hash;
  /** Checkpoints whose root was met, and the size of the largest of them; 0 for none. */
  readonly checkpoints: number;
  readonly lastMet: number;
  readonly fault: Fault | undefined;
}

export interface Ledger {
  /** Does nothing when the log is there. */
  createLog(log: string): Promise<void>;
  append(request: AppendRequest): Promise<AppendResult>;
  /** Empty for an unknown stream. */
  readStream(log: string, stream: string, options?: ReadOptions): Promise<Recorded[]>;
  /** @throws Error at a hole: an alarm, never a wait */
  readAll(
    log: string,
    page: { readonly after: number; readonly limit: number },
  ): Promise<Recorded[]>;
  head(log: string): Promise<Head>;
  /** Where the list stands, as soon as it has passed `pos`, and after `ms` milliseconds at the latest. */
  waitFor(log: string, list: string, pos: number, ms: number): Promise<number>;
  /** Calls back after each commit of this process; gives the way to stop it. */
  onAppended(listener: (log: string, pos: number) => void): () => void;
  /** Leaf hashes of start ≤ pos - 1 < end. */
  leaves(log: string, start: number, end: number): Promise<Hash[]>;
  /** Signed checkpoints, in order of size; `keepCheckpoint` does nothing for a size that is there. */
  checkpoints(log: string): Promise<KeptCheckpoint[]>;
  lastCheckpoint(log: string): Promise<KeptCheckpoint | undefined>;
  keepCheckpoint(log: string, checkpoint: KeptCheckpoint): Promise<void>;
  /** Of checkpoints of at least `from` entries, in order; `keepTimeStamp` does nothing for a size that is there. */
  timeStamps(log: string, from?: number, most?: number): Promise<KeptTimeStamp[]>;
  lastTimeStamp(log: string): Promise<KeptTimeStamp | undefined>;
  keepTimeStamp(log: string, stamp: KeptTimeStamp): Promise<void>;
  /** Keeps the bytes of an issued document; gives their SHA-256, hexadecimal. */
  keepIssued(log: string, bytes: Uint8Array, mediaType: string): Promise<string>;
  issued(log: string, digest: string): Promise<Issued | undefined>;
  /** Removes the bytes, because a person in them was erased; that there were some stays known. */
  eraseIssued(log: string, digest: string): Promise<void>;
  /** Verifies the whole log; checkpoints from outside find what its owner could recompute. */
  verify(log: string, checkpoints: readonly Checkpoint[]): Promise<LogReport>;
  /** Lets what was accepted finish. */
  close(): Promise<void>;
}
