// Appends per second of the ledger and its peers against the driver's own ceiling: one insert in one
// transaction, nothing else.

import type pg from 'pg';
import { newClient } from '#ledger';
import type { BenchDatabase } from './database.js';
import { loadEvents, streamLoad } from './events.js';
import { compare } from './measure.js';
import type { Row } from './measure.js';
import type { Ours } from './ours.js';
import type { Peer } from './peers.js';

export interface AppendCell {
  readonly events: number;
  readonly clients: number;
  readonly rows: readonly Row[];
}

export const CEILING = 'ceiling: one insert, one transaction';
export const OURS = 'the ledger';
const MOST_CLIENTS = 32;

export async function benchAppend(
  database: BenchDatabase,
  ours: Ours,
  peers: readonly Peer[],
  effort: { readonly rounds: number; readonly seconds: number },
): Promise<AppendCell[]> {
  const raw = await rawClients(await database.empty('bench_raw'));
  const owner = newClient({ connectionString: database.ownerUrl });
  await owner.connect();
  const cells: AppendCell[] = [];
  for (const events of [1, 5]) {
    for (const clients of [1, 8, MOST_CLIENTS]) {
      const variants = [
        { name: CEILING, step: (i: number) => insert(raw[i] as pg.Client, events) },
        { name: OURS, step: streamLoad(events, () => ours.append) },
        ...peers.map((peer) => ({ name: peer.name, step: streamLoad(events, () => peer.append) })),
      ];
      const beforeRound = () => owner.query('CHECKPOINT');
      const rows = await compare(variants, { clients, beforeRound, ...effort });
      cells.push({ events, clients, rows });
    }
  }
  await Promise.all([owner, ...raw].map((client) => client.end()));
  return cells;
}

async function rawClients(url: string): Promise<pg.Client[]> {
  const clients = Array.from({ length: MOST_CLIENTS }, () => newClient({ connectionString: url }));
  await Promise.all(clients.map((client) => client.connect()));
  await clients[0]?.query(
    'CREATE TABLE raw_event (id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, data jsonb NOT NULL)',
  );
  return clients;
}

function insert(client: pg.Client, count: number): Promise<unknown> {
  const places = Array.from({ length: count }, (_, i) => `($${i + 1})`).join(',');
  return client.query({
    name: `insert-${count}`,
    text: `INSERT INTO raw_event (data) VALUES ${places}`,
    values: loadEvents(count).map((event) => JSON.stringify(event.data)),
  });
}
