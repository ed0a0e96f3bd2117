// The ledger under test, as the service uses it: service role, row-level security, hashes, root,
// command row, expected version.

import { companyPool, createPostgresLedger, openServicePool } from '#ledger';
import type { Ledger } from '#ledger';
import type { AppendTo } from './events.js';

export const LOG = 'bench';
let commands = 0;

export interface Ours {
  readonly ledger: Ledger;
  readonly append: AppendTo;
  close(): Promise<void>;
}

export async function openOurs(serviceUrl: string): Promise<Ours> {
  const service = openServicePool(serviceUrl, 4);
  const ledger = createPostgresLedger({ pool: companyPool(service) });
  await ledger.createLog(LOG);
  const append: AppendTo = async (stream, expectedVersion, events) => {
    const result = await ledger.append({
      log: LOG,
      command: { id: `command-${++commands}`, digest: 'sha256' },
      by: { person: 'person-7', role: 'estimator' },
      streams: [{ stream, expectedVersion, events }],
    });
    if (result.kind !== 'appended') throw new Error(result.kind);
  };
  return { ledger, append, close: () => service.end() };
}
