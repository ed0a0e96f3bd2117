import { createLedger } from './create-ledger.js';
import { ledgerSuite } from '../../tests/ledger-suite.js';
import { createMemoryStore } from './memory-store.js';

ledgerSuite(() => {
  const store = createMemoryStore();
  return { ledger: (options) => createLedger(store, options) };
});
