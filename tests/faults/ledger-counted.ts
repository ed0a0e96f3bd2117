// A list for the ledger's drills: how many events each stream has.

import type { List, Recorded } from '#ledger';

export const LOG = 'roofers';

export const COUNTED_TABLE = `
  CREATE TABLE counted (log_id text, generation int, stream text, n int, version int,
    PRIMARY KEY (log_id, generation, stream));
  GRANT ALL ON counted TO gauge_service`;

export const COUNTED: List = {
  name: 'counted',
  apply: async (events, { log, generation }, client) => {
    const counts = new Map<string, { n: number; version: number }>();
    for (const { stream, version } of events as readonly Recorded[]) {
      counts.set(stream, { n: (counts.get(stream)?.n ?? 0) + 1, version });
    }
    const all = [...counts.values()];
    await client.query(
      `INSERT INTO counted
       SELECT $1, $2, s, n, v FROM unnest($3::text[], $4::int[], $5::int[]) AS u (s, n, v)
       ON CONFLICT (log_id, generation, stream)
       DO UPDATE SET n = counted.n + excluded.n, version = excluded.version`,
      [log, generation, [...counts.keys()], all.map((c) => c.n), all.map((c) => c.version)],
    );
  },
  digest: async ({ log, generation }, client) => {
    const { rows } = await client.query<{ digest: string }>(
      `SELECT coalesce(string_agg(concat_ws(' ', stream, n, version), ',' ORDER BY stream), '')
         AS digest FROM counted WHERE log_id = $1 AND generation = $2`,
      [log, generation],
    );
    return rows[0]?.digest ?? '';
  },
  clear: async ({ log, generation }, client) => {
    await client.query('DELETE FROM counted WHERE log_id = $1 AND generation = $2', [
      log,
      generation,
    ]);
  },
};
