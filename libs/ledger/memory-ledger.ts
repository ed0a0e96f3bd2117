// A ledger in memory, gone with the process.

import { createLedger } from './create-ledger.js';
import type { LedgerOptions } from './create-ledger.js';
import type { Ledger } from './ledger.js';
import { createMemoryStore } from './memory-store.js';

export function createMemoryLedger(options: LedgerOptions = {}): Ledger {
  return createLedger(createMemoryStore(), options);
}
