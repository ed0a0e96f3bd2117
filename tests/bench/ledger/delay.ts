// How long a list is behind a commit while little happens: one kept in this process, and one kept by
// another service that hears of the commit through the database.

import { setTimeout as sleep } from 'node:timers/promises';
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
import { quantile } from './measure.js';

const LOG = 'delay';
const COMMITS = 200;

/** A list as small as one can be: the last position. */
function lastSeen(name: string, onApplied: (pos: number) => void): List {
  return {
    name,
    apply: async (events, _, client) => {
      await client.query('UPDATE last_seen SET pos = $2 WHERE name = $1', [
        name,
        events.at(-1)?.pos,
      ]);
      onApplied(events.at(-1)?.pos ?? 0);
    },
    digest: () => Promise.resolve(''),
    clear: () => Promise.resolve(),
  };
}

/** One service: its ledger, its list, and what wakes it. */
function serve(serviceUrl: string, name: string) {
  const pool = openServicePool(serviceUrl, 4);
  const companies = companyPool(pool);
  const signals = createSignals();
  const ledger = createPostgresLedger({ pool: companies, signals });
  const onFault = (_: string, __: string, fault: unknown) => {
    throw fault;
  };
  const list = lastSeen(name, () => undefined);
  const lists = createLists({ ledger, pool: companies, lists: [list], signals, onFault });
  const wakeUp = startWakeUp({
    newClient: () => newClient({ connectionString: serviceUrl }),
    onWake: (log) => lists.wake(log),
    onFault: () => undefined,
  });
  ledger.onAppended((log) => wakeUp.announce(log));
  /** When the list's own checkpoint was committed with this position. */
  const reached = async (pos: number): Promise<number> => {
    while (signals.reached(LOG, name) < pos) await signals.nextAdvance(LOG, name, 1000);
    return performance.now();
  };
  const stop = async () => {
    await lists.stop();
    await wakeUp.stop();
    await pool.end();
  };
  return { ledger, lists, reached, stop };
}

/** p99 in milliseconds. */
export async function listDelay(
  ownerUrl: string,
  serviceUrl: string,
): Promise<{ here: number; elsewhere: number }> {
  const owner = newClient({ connectionString: ownerUrl });
  await owner.connect();
  await owner.query(`DROP TABLE IF EXISTS last_seen;
    CREATE TABLE last_seen (name text PRIMARY KEY, pos bigint NOT NULL);
    INSERT INTO last_seen VALUES ('here', 0), ('elsewhere', 0);
    GRANT ALL ON last_seen TO gauge_service`);
  await owner.end();
  const [here, elsewhere] = [serve(serviceUrl, 'here'), serve(serviceUrl, 'elsewhere')];
  await here.ledger.createLog(LOG);
  here.lists.follow(LOG);
  elsewhere.lists.follow(LOG);
  await sleep(500);
  const delays: { here: number; elsewhere: number }[] = [];
  for (let i = 0; i < COMMITS; i++) {
    const result = await here.ledger.append({
      log: LOG,
      command: { id: `delay-${i}`, digest: 'd' },
      by: { person: 'p', role: 'r' },
      streams: [{ stream: 's', expectedVersion: i, events: [{ type: 't/1', data: { i } }] }],
    });
    if (result.kind !== 'appended') throw new Error(result.kind);
    const committed = performance.now();
    const [a, b] = await Promise.all([here.reached(result.last), elsewhere.reached(result.last)]);
    delays.push({ here: a - committed, elsewhere: b - committed });
    await sleep(25);
  }
  await here.stop();
  await elsewhere.stop();
  return {
    here: quantile(
      delays.map((each) => each.here),
      0.99,
    ),
    elsewhere: quantile(
      delays.map((each) => each.elsewhere),
      0.99,
    ),
  };
}
