// npm run bench:ledger -- [--rounds N] [--seconds S]: the ledger against the driver's ceiling and
// against peers, in one run on one server with its durability as it comes. Ends with the goals.

import { parseArgs } from 'node:util';
import { verifyInWorkers } from '#ledger';
import { benchAppend } from './append.js';
import { hashingCost } from './cost.js';
import { listDelay } from './delay.js';
import { startBenchDatabase } from './database.js';
import { loadEvents } from './events.js';
import { goalLine, goals } from './goals.js';
import type { Measured } from './goals.js';
import type { Row } from './measure.js';
import { LOG, openOurs } from './ours.js';
import type { Ours } from './ours.js';
import { openPeers } from './peers.js';
import { benchRead } from './read.js';
import { benchRebuild } from './rebuild.js';
import { verifyWhole } from './whole.js';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '4' },
    seconds: { type: 'string', default: '0.7' },
  },
});
const effort = { rounds: Number(values.rounds), seconds: Number(values.seconds) };
const MOST_CLIENTS = 32;
const say = (line: string) => process.stdout.write(`${line}\n`);

const database = await startBenchDatabase();
const ours = await openOurs(database.serviceUrl);
const peers = await openPeers(database.empty, MOST_CLIENTS, say);
try {
  const append = await benchAppend(database, ours, peers, effort);
  for (const { events, clients, rows } of append) show(`${events} at ${clients}`, rows);
  await grow(ours, 50_000);
  const read = await benchRead(database.serviceUrl, ours, effort);
  show('read', read);
  const rebuild = await benchRebuild(database.ownerUrl, database.serviceUrl, ours);
  say(
    `rebuild of ${rebuild.events}: ${perSecond(rebuild.ours)}, plain loop ${perSecond(rebuild.raw)}`,
  );
  const verify = { one: await verifyRate(1), workers: await verifyRate(2) };
  const whole = await verifyWhole(database.serviceUrl);
  say(`verify 100,000 of 1.6 kB: ${whole.seconds.toFixed(1)} s, ${whole.megabytes} MB`);
  const delay = await listDelay(database.ownerUrl, database.serviceUrl);
  say(
    `commit to list, p99: ${delay.here.toFixed(2)} ms here, ${delay.elsewhere.toFixed(2)} ms elsewhere; ` +
      `one update by the driver ${delay.update.toFixed(2)} ms`,
  );
  const measured: Measured = {
    append,
    read,
    rebuild,
    verify,
    cost: hashingCost(),
    whole,
    delay,
  };
  say(`\n${''.padEnd(36)} ${['measured', 'must', 'aim'].map((w) => w.padStart(8)).join(' ')}`);
  for (const goal of goals(measured)) say(goalLine(goal));
} finally {
  await Promise.all(peers.map((peer) => peer.close().catch(() => undefined)));
  await ours.close();
  await database.stop();
}
process.exit(0);

function show(cell: string, rows: readonly Row[]): void {
  for (const { name, rate, ratio, p50, p99 } of rows) {
    const times = `p50 ${p50.toFixed(2)} p99 ${p99.toFixed(2)} ms`;
    say(`${cell.padEnd(8)} ${name.padEnd(40)} ${perSecond(rate)}  x${ratio.toFixed(2)}  ${times}`);
  }
}

function perSecond(rate: number): string {
  return `${Math.round(rate)}/s`.padStart(9);
}

/** Streams of fifty until the log has so many events. */
async function grow({ ledger, append }: Ours, size: number): Promise<void> {
  for (let { pos } = await ledger.head(LOG), n = 0; pos < size; pos += 50 * 20, n++) {
    await Promise.all(
      Array.from({ length: 20 }, (_, i) => append(`grown-${n}-${i}`, 0, loadEvents(50))),
    );
  }
}

/** Events per second: one thread in this process, or worker threads. */
async function verifyRate(workers: number): Promise<number> {
  const { serviceUrl } = database;
  const start = performance.now();
  const report =
    workers === 1
      ? await ours.ledger.verify(LOG, [])
      : await verifyInWorkers({ serviceUrl, log: LOG, checkpoints: [], workers });
  if (report.fault !== undefined) throw new Error(report.fault.says);
  const rate = report.events / ((performance.now() - start) / 1000);
  say(`verify with ${workers}: ${perSecond(rate)}`);
  return rate;
}
