// Rebuild of a list over the whole log, exactly once, against the plain loop that does the same by
// hand: a page, a fold, one statement for rows and checkpoint.

import { companyPool, createLists, createSignals, newClient, openPool } from '#ledger';
import type { List, Recorded } from '#ledger';
import { LOG } from './ours.js';
import type { Ours } from './ours.js';

export const PAGE = 5000;

export interface RebuildRates {
  /** Events per second. */
  readonly raw: number;
  readonly ours: number;
  readonly events: number;
}

interface Tally {
  n: number;
  gauge: number;
  uplift: number;
}

export async function benchRebuild(
  ownerUrl: string,
  serviceUrl: string,
  ours: Ours,
): Promise<RebuildRates> {
  const owner = newClient({ connectionString: ownerUrl });
  await owner.connect();
  await owner.query(`
    DROP TABLE IF EXISTS tally, raw_tally, raw_checkpoint;
    CREATE TABLE tally (log_id text, generation int, stream text, n int, gauge int, uplift float8,
      PRIMARY KEY (log_id, generation, stream));
    CREATE TABLE raw_tally (stream text PRIMARY KEY, n int, gauge int, uplift float8);
    CREATE TABLE raw_checkpoint (id text PRIMARY KEY, pos bigint NOT NULL);
    GRANT ALL ON tally, raw_tally, raw_checkpoint TO gauge_service`);
  await owner.query('VACUUM ANALYZE ledger.event');
  const events = (await ours.ledger.head(LOG)).pos;
  const rates = { raw: await rawRebuild(serviceUrl), ours: await ourRebuild(serviceUrl, ours) };
  await owner.end();
  return { events, raw: events / rates.raw, ours: events / rates.ours };
}

function fold(events: readonly Recorded[]): Map<string, Tally> {
  const tallies = new Map<string, Tally>();
  for (const { stream, data } of events) {
    const { chosen, inputs } = data as { chosen: { gauge: number }; inputs: { uplift: number } };
    const tally = tallies.get(stream) ?? { n: 0, gauge: 0, uplift: 0 };
    tally.n++;
    tally.gauge = chosen.gauge;
    tally.uplift += inputs.uplift;
    tallies.set(stream, tally);
  }
  return tallies;
}

function columns(tallies: ReadonlyMap<string, Tally>): unknown[] {
  const all = [...tallies.values()];
  return [
    [...tallies.keys()],
    all.map((tally) => tally.n),
    all.map((tally) => tally.gauge),
    all.map((tally) => tally.uplift),
  ];
}

const ROWS = 'unnest($1::text[], $2::int[], $3::int[], $4::float8[]) AS u (s, n, g, f)';

/** Seconds. */
async function rawRebuild(serviceUrl: string): Promise<number> {
  const client = newClient({ connectionString: serviceUrl });
  await client.connect();
  await client.query("SELECT set_config('gauge.company', $1, false)", [LOG]);
  await client.query(`INSERT INTO raw_checkpoint VALUES ('list', 0)`);
  const start = performance.now();
  for (let pos = 0; ;) {
    const { rows } = await client.query<{ body: string }>(
      'SELECT body FROM ledger.event WHERE log_id = $1 AND pos > $2 ORDER BY pos LIMIT $3',
      [LOG, pos, PAGE],
    );
    if (rows.length === 0) break;
    const events = rows.map((row) => JSON.parse(row.body) as Recorded);
    const next = (events.at(-1) as Recorded).pos;
    await client.query(
      `WITH moved AS (UPDATE raw_checkpoint SET pos = $6 WHERE id = 'list' AND pos = $5 RETURNING 1)
       INSERT INTO raw_tally SELECT s, n, g, f FROM ${ROWS} WHERE EXISTS (SELECT FROM moved)
       ON CONFLICT (stream) DO UPDATE
       SET n = raw_tally.n + excluded.n, gauge = excluded.gauge, uplift = raw_tally.uplift + excluded.uplift`,
      [...columns(fold(events)), pos, next],
    );
    pos = next;
  }
  const seconds = (performance.now() - start) / 1000;
  await client.end();
  return seconds;
}

const tally: List = {
  name: 'tally',
  apply: async (events, { log, generation }, client) => {
    await client.query(
      `INSERT INTO tally SELECT $5, $6, s, n, g, f FROM ${ROWS}
       ON CONFLICT (log_id, generation, stream) DO UPDATE
       SET n = tally.n + excluded.n, gauge = excluded.gauge, uplift = tally.uplift + excluded.uplift`,
      [...columns(fold(events)), log, generation],
    );
  },
  digest: async ({ log, generation }, client) => {
    const { rows } = await client.query<{ digest: string }>(
      `SELECT md5(coalesce(string_agg(concat_ws(' ', stream, n, gauge, uplift), ',' ORDER BY stream), ''))
         AS digest FROM tally WHERE log_id = $1 AND generation = $2`,
      [log, generation],
    );
    return rows[0]?.digest ?? '';
  },
  clear: async ({ log, generation }, client) => {
    await client.query('DELETE FROM tally WHERE log_id = $1 AND generation = $2', [
      log,
      generation,
    ]);
  },
};

/** Seconds of catching up from nothing, page by page as a rebuild does. */
async function ourRebuild(serviceUrl: string, ours: Ours): Promise<number> {
  const service = openPool({ connectionString: serviceUrl, max: 4 });
  const onFault = (_: string, __: string, fault: unknown) => {
    throw fault;
  };
  const lists = createLists({
    ledger: ours.ledger,
    pool: companyPool(service),
    lists: [tally],
    signals: createSignals(),
    onFault,
    pageSize: PAGE,
  });
  const start = performance.now();
  await lists.catchUp(LOG);
  const seconds = (performance.now() - start) / 1000;
  const rebuilt = await lists.rebuild(LOG, tally.name);
  if (!rebuilt.equal) throw new Error('The rebuilt list differs from the kept one.');
  await lists.stop();
  await service.end();
  return seconds;
}
