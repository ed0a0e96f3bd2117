// Reads of one stream of fifty events, and the driver's own ceiling: the same bodies by the same
// index, parsed.

import { newClient } from '#ledger';
import { compare } from './measure.js';
import type { Row } from './measure.js';
import { STREAM_LENGTH } from './events.js';
import { LOG } from './ours.js';
import type { Ours } from './ours.js';

export const RAW_READ = 'the driver, same rows';
export const OUR_READ = 'the ledger, fifty events';

export async function benchRead(
  serviceUrl: string,
  ours: Ours,
  effort: { readonly rounds: number; readonly seconds: number },
): Promise<Row[]> {
  const raw = newClient({ connectionString: serviceUrl });
  await raw.connect();
  await raw.query("SELECT set_config('gauge.company', $1, false)", [LOG]);
  const full = await raw.query<{ stream_id: string }>(
    'SELECT stream_id FROM ledger.event WHERE log_id = $1 AND version = $2 LIMIT 500',
    [LOG, STREAM_LENGTH],
  );
  const streams = full.rows.map((row) => row.stream_id);
  let turn = 0;
  const next = () => streams[turn++ % streams.length] as string;
  const rows = await compare(
    [
      {
        name: RAW_READ,
        step: async () => {
          const { rows: found } = await raw.query<{ body: string }>({
            name: 'bench-read',
            text: `SELECT body FROM ledger.event WHERE log_id = $1 AND stream_id = $2 ORDER BY version`,
            values: [LOG, next()],
          });
          return found.map((row) => JSON.parse(row.body) as unknown);
        },
      },
      { name: OUR_READ, step: () => ours.ledger.readStream(LOG, next()) },
    ],
    { clients: 1, ...effort },
  );
  await raw.end();
  return rows;
}
