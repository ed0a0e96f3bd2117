// A ledger in PostgreSQL; any number of processes may write to the same logs.

import type { CompanyPool } from './postgres-pool.js';
import { createLedger } from './create-ledger.js';
import type { LedgerOptions } from './create-ledger.js';
import type { Ledger } from './ledger.js';
import { createPostgresStore } from './postgres-store.js';

export interface PostgresLedgerOptions extends LedgerOptions {
  /** Connections as the service role; a log's id is its company's. */
  readonly pool: CompanyPool;
}

export function createPostgresLedger({ pool, ...options }: PostgresLedgerOptions): Ledger {
  return createLedger(createPostgresStore(pool), options);
}
