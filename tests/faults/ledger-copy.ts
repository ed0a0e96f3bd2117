// A logical copy of one database's ledger into another, row by row: what a dump and restore does.

import { newClient } from '#ledger';

const TABLES = ['log', 'event', 'command', 'checkpoint', 'time_stamp', 'issued', 'projection'];

/** As the owner of both; the target's tables are empty. */
export async function copyLedger(fromUrl: string, toUrl: string): Promise<void> {
  const from = newClient({ connectionString: fromUrl });
  const to = newClient({ connectionString: toUrl });
  await Promise.all([from.connect(), to.connect()]);
  try {
    for (const table of TABLES) {
      const { rows } = await from.query(`SELECT to_jsonb(t) AS row FROM ledger.${table} t`);
      await to.query(
        `INSERT INTO ledger.${table}
         SELECT (jsonb_populate_record(NULL::ledger.${table}, r)).*
         FROM jsonb_array_elements($1::jsonb) AS r`,
        [JSON.stringify(rows.map((each: { row: unknown }) => each.row))],
      );
    }
  } finally {
    await Promise.all([from.end(), to.end()]);
  }
}
