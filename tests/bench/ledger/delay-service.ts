// One service with the smallest list there can be, in a thread of its own where it stands for another
// process: what its list has seen, and when, in milliseconds since 1970.

import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import {
  companyPool,
  createLists,
  createPostgresLedger,
  createSignals,
  newClient,
  openServicePool,
  startWakeUp,
} from '#ledger';
import type { List } from '#ledger';

export const LOG = 'delay';

export const now = (): number => performance.timeOrigin + performance.now();

/** The last position and nothing else. */
function lastSeen(name: string): List {
  return {
    name,
    apply: async (events, _, client) => {
      const values = [name, events.at(-1)?.pos];
      await client.query({
        name: 'last-seen',
        text: 'UPDATE last_seen SET pos = $2 WHERE name = $1',
        values,
      });
    },
    digest: () => Promise.resolve(''),
    clear: () => Promise.resolve(),
  };
}

/** Its ledger, its list, and what wakes it. */
export function serve(serviceUrl: string, name: string) {
  const pool = openServicePool(serviceUrl, 4);
  const companies = companyPool(pool);
  const signals = createSignals();
  const ledger = createPostgresLedger({ pool: companies, signals });
  const onFault = (_: string, __: string, fault: unknown) => {
    throw fault;
  };
  const lists = createLists({
    ledger,
    pool: companies,
    lists: [lastSeen(name)],
    signals,
    onFault,
  });
  const wakeUp = startWakeUp({
    newClient: () => newClient({ connectionString: serviceUrl }),
    onWake: (log) => lists.wake(log),
    onFault: () => undefined,
  });
  ledger.onAppended((log) => wakeUp.announce(log));
  /** When the list's own checkpoint was committed with this position. */
  const reached = async (pos: number): Promise<number> => {
    while (signals.reached(LOG, name) < pos) await signals.nextAdvance(LOG, name, 1000);
    return now();
  };
  const stop = async () => {
    await lists.stop();
    await wakeUp.stop();
    await pool.end();
  };
  return { ledger, lists, reached, stop };
}

if (!isMainThread && parentPort) {
  const port = parentPort;
  const { serviceUrl, name, upTo } = workerData as {
    readonly serviceUrl: string;
    readonly name: string;
    readonly upTo: number;
  };
  const service = serve(serviceUrl, name);
  service.lists.follow(LOG);
  port.postMessage('ready');
  for (let pos = 1; pos <= upTo; pos++) port.postMessage([pos, await service.reached(pos)]);
  await service.stop();
}
