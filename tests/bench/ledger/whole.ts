// Requirement 13: 100,000 entries of 1.6 kB verified whole, with two worker threads; how long, and the
// most memory that the process took meanwhile.

import { companyPool, createPostgresLedger, openServicePool, verifyInWorkers } from '#ledger';

const LOG = 'whole';
const ENTRIES = 100_000;
const AT_ONCE = 500;
/** With the envelope about 1,600 bytes of canonical JSON. */
const SAID = 'x'.repeat(1_195);

export async function verifyWhole(
  serviceUrl: string,
): Promise<{ seconds: number; megabytes: number }> {
  const pool = openServicePool(serviceUrl, 4);
  const ledger = createPostgresLedger({ pool: companyPool(pool), queueBytes: 64 * 1024 * 1024 });
  await ledger.createLog(LOG);
  for (let i = 0; i < ENTRIES / AT_ONCE; i++) {
    const result = await ledger.append({
      log: LOG,
      command: { id: `whole-${i}`, digest: 'd' },
      by: { person: 'person-7', role: 'estimator' },
      streams: [
        {
          stream: `whole-${i}`,
          expectedVersion: 0,
          events: Array.from({ length: AT_ONCE }, () => ({ type: 'said/1', data: { said: SAID } })),
        },
      ],
    });
    if (result.kind !== 'appended') throw new Error(result.kind);
  }
  const [entry] = await ledger.readAll(LOG, { after: ENTRIES - 1, limit: 1 });
  const bytes = Buffer.byteLength(JSON.stringify(entry));
  if (bytes < 1_550 || bytes > 1_650) throw new Error(`an entry has ${bytes} bytes`);
  let most = 0;
  const watch = setInterval(() => (most = Math.max(most, process.memoryUsage.rss())), 50);
  const start = performance.now();
  const report = await verifyInWorkers({ serviceUrl, log: LOG, checkpoints: [], workers: 2 });
  const seconds = (performance.now() - start) / 1000;
  clearInterval(watch);
  await pool.end();
  if (report.fault !== undefined || report.events !== ENTRIES) throw new Error('it does not hold');
  return { seconds, megabytes: Math.round(most / 1_000_000) };
}
