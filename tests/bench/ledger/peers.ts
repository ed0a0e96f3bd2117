// Other event stores, called through their public interface only, as their documentation shows. They
// are no dependencies: install them in a folder of their own and name it in LEDGER_PEERS,
//   npm install --prefix FOLDER @event-driven-io/emmett@0.42.0 \
//     @event-driven-io/emmett-postgresql@0.42.0 @castore/core@2.4.2 \
//     @castore/event-storage-adapter-postgres@2.4.2

import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { openPool } from '#ledger';
import type { AppendTo } from './events.js';

export interface Peer {
  readonly name: string;
  readonly append: AppendTo;
  close(): Promise<void>;
}

type Load = (name: string) => Promise<Record<string, never>>;
type OpenPeer = (load: Load, url: string, clients: number) => Promise<Peer>;

/** The peers that are installed; says which are not. */
export async function openPeers(
  empty: (name: string) => Promise<string>,
  clients: number,
  say: (sentence: string) => void,
): Promise<Peer[]> {
  const folder = process.env['LEDGER_PEERS'];
  if (folder === undefined) {
    say('No peers: LEDGER_PEERS names no folder.');
    return [];
  }
  const require = createRequire(path.resolve(folder, 'package.json'));
  const load: Load = async (name) =>
    (await import(pathToFileURL(require.resolve(name)).href)) as Record<string, never>;
  const peers: Peer[] = [];
  for (const [name, open] of Object.entries(PEERS)) {
    try {
      peers.push(await open(load, await empty(`bench_${name}`), clients));
    } catch (error) {
      say(`Peer ${name} is left out: ${(error as Error).message}`);
    }
  }
  return peers;
}

const PEERS: Record<string, OpenPeer> = {
  emmett: async (load, url, clients) => {
    const { getPostgreSQLEventStore } = await load('@event-driven-io/emmett-postgresql');
    const { STREAM_DOES_NOT_EXIST } = await load('@event-driven-io/emmett');
    const open = getPostgreSQLEventStore as unknown as (url: string, options?: object) => Emmett;
    const maker = open(url);
    await maker.schema.migrate();
    await maker.close();
    const pool = openPool({ connectionString: url, max: clients });
    const options = { schema: { autoMigration: 'None' }, connectionOptions: { pool } };
    const store = open(url, options);
    return {
      name: 'emmett-postgresql 0.42.0',
      append: (stream, version, events) =>
        store.appendToStream(stream, events, {
          expectedStreamVersion: version === 0 ? STREAM_DOES_NOT_EXIST : BigInt(version),
        }),
      close: async () => {
        await store.close();
        await pool.end().catch(() => undefined);
      },
    };
  },
  castore: async (load, url, clients) => {
    const { PostgresEventStorageAdapter } = await load('@castore/event-storage-adapter-postgres');
    const { GroupedEvent } = await load('@castore/core');
    const Adapter = PostgresEventStorageAdapter as unknown as CastoreAdapterClass;
    const Grouped = GroupedEvent as unknown as new (options: object) => { context: object };
    const connectionString = `${url}?max=${clients}`;
    const aggregateId = { type: 'VARCHAR', length: 64 };
    await Adapter.createEventTable({ connectionString, aggregateId });
    const adapter = new Adapter({ connectionString });
    const context = { eventStoreId: 'BENCH' };
    return {
      name: 'castore postgres adapter 2.4.2',
      append: (stream, version, events) => {
        const details = events.map(({ type, data: payload }, i) => {
          return { aggregateId: stream, version: version + 1 + i, type, payload, metadata: {} };
        });
        if (details.length === 1) return adapter.pushEvent(details[0] as object, context);
        const timestamp = new Date().toISOString();
        const group = details.map((each) => {
          const event = { ...each, timestamp };
          return Object.assign(new Grouped({ event, eventStorageAdapter: adapter }), { context });
        });
        return adapter.pushEventGroup({}, ...group);
      },
      close: async () => {
        await adapter._sql?.end({ timeout: 2 });
      },
    };
  },
};

interface Emmett {
  readonly schema: { migrate(): Promise<unknown> };
  appendToStream(stream: string, events: object[], options: object): Promise<unknown>;
  close(): Promise<void>;
}

interface CastoreAdapter {
  readonly _sql?: { end(options: object): Promise<void> };
  pushEvent(event: object, context: object): Promise<unknown>;
  pushEventGroup(options: object, ...events: object[]): Promise<unknown>;
}

interface CastoreAdapterClass {
  new (options: object): CastoreAdapter;
  createEventTable(options: object): Promise<unknown>;
}
