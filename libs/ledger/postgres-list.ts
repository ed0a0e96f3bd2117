// A list: a table kept from the log's events, and what keeping it needs.

import type pg from 'pg';
import type { Recorded } from './ledger.js';

/** One company's rows of one generation. */
export interface ListScope {
  readonly log: string;
  readonly generation: number;
}

export interface List {
  readonly name: string;
  /**
   * Brings the generation's rows forward by these events, which follow each other in the log. The
   * checkpoint moves in the same transaction, so every event has its effect exactly once. Best is
   * one fold in memory and one statement for all rows.
   */
  apply(events: readonly Recorded[], scope: ListScope, client: pg.ClientBase): Promise<void>;
  /** A text that is equal for two generations just when their rows are. */
  digest(scope: ListScope, client: pg.ClientBase): Promise<string>;
  /** Removes the generation's rows. */
  clear(scope: ListScope, client: pg.ClientBase): Promise<void>;
}

export interface ListState {
  readonly name: string;
  readonly generation: number;
  /** Position of the last event it has seen. */
  readonly pos: number;
  readonly live: boolean;
}

export interface RebuildOptions {
  /** Also swap when the new rows differ from the old ones, as after a change of the list. */
  readonly acceptDifference?: boolean;
  readonly onProgress?: (pos: number, head: number) => void;
}

export interface Rebuilt {
  readonly generation: number;
  readonly pos: number;
  /** Whether old and new rows have the same digest. */
  readonly equal: boolean;
  /** Whether the new generation is live now; the old rows are gone only if they were equal. */
  readonly swapped: boolean;
}

export interface Lists {
  /** Keeps the lists of this log up to date from now on. */
  follow(log: string): void;
  /** Something happened in the log, or in some log. */
  wake(log?: string): void;
  /** Brings all lists of the log to its present head. */
  catchUp(log: string): Promise<void>;
  /** The generation that readers use. */
  generation(log: string, list: string): Promise<number>;
  states(log: string): Promise<ListState[]>;
  rebuild(log: string, list: string, options?: RebuildOptions): Promise<Rebuilt>;
  /** Waits for work under way; then nothing more is done. */
  stop(): Promise<void>;
}
