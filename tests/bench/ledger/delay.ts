// How long a list is behind a commit while little happens: one kept in this process, and one kept by
// another service that hears of the commit through the database.

import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { newClient } from '#ledger';
import { LOG, now, serve } from './delay-service.js';
import { quantile } from './measure.js';

/** The first ones find cold code and connections. */
const COLD = 20;
const COMMITS = COLD + 200;

/** p99 in milliseconds. */
export interface Delay {
  readonly here: number;
  readonly elsewhere: number;
  /** Of one update in one transaction by the driver: what disk and server take themselves. */
  readonly update: number;
}

export async function listDelay(ownerUrl: string, serviceUrl: string): Promise<Delay> {
  const owner = newClient({ connectionString: ownerUrl });
  await owner.connect();
  await owner.query(`DROP TABLE IF EXISTS last_seen;
    CREATE TABLE last_seen (name text PRIMARY KEY, pos bigint NOT NULL);
    INSERT INTO last_seen VALUES ('here', 0), ('elsewhere', 0);
    INSERT INTO last_seen VALUES ('plain', 0);
    GRANT ALL ON last_seen TO gauge_service`);
  const here = serve(serviceUrl, 'here');
  await here.ledger.createLog(LOG);
  const other = new Worker(new URL('./delay-service.ts', import.meta.url), {
    workerData: { serviceUrl, name: 'elsewhere', upTo: COMMITS },
  });
  const ended = once(other, 'exit');
  await once(other, 'message');
  const elsewhere = new Map<number, number>();
  other.on('message', ([pos, at]: [number, number]) => elsewhere.set(pos, at));
  here.lists.follow(LOG);
  await sleep(500);
  const committed: number[] = [];
  const delays: number[] = [];
  const updates: number[] = [];
  for (let i = 0; i < COMMITS; i++) {
    const result = await here.ledger.append({
      log: LOG,
      command: { id: `delay-${i}`, digest: 'd' },
      by: { person: 'p', role: 'r' },
      streams: [{ stream: 's', expectedVersion: i, events: [{ type: 't/1', data: { i } }] }],
    });
    if (result.kind !== 'appended') throw new Error(result.kind);
    committed.push(now());
    delays.push((await here.reached(result.last)) - (committed[i] as number));
    await sleep(25);
    const start = now();
    await owner.query({ ...SET_PLAIN, values: [i] });
    updates.push(now() - start);
    await sleep(25);
  }
  await owner.end();
  await ended;
  await here.stop();
  const there = committed.map((at, i) => (elsewhere.get(i + 1) as number) - at);
  const p99 = (all: readonly number[]) => quantile(all.slice(COLD), 0.99);
  return { here: p99(delays), elsewhere: p99(there), update: p99(updates) };
}

const SET_PLAIN = { name: 'plain', text: `UPDATE last_seen SET pos = $1 WHERE name = 'plain'` };
