// Verifies a log with worker threads, as the nightly verification does, and prints the report.

import { verifyInWorkers } from '#ledger';

const input = JSON.parse(process.argv[2] ?? '{}') as { serviceUrl: string; log: string };
const start = performance.now();
const report = await verifyInWorkers({ ...input, checkpoints: [], workers: 2 });
const seconds = (performance.now() - start) / 1000;
process.stdout.write(JSON.stringify({ events: report.events, fault: report.fault, seconds }));
