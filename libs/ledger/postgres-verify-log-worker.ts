// The worker thread of postgres-verify-log.ts: reads, hashes and joins a whole log, one range at a time.

import { parentPort, workerData } from 'node:worker_threads';
import { companyPool, openPool } from './postgres-pool.js';
import { createPostgresStore } from './postgres-store.js';
import { verifyLog } from './verify-log.js';
import { revived } from './postgres-verify-log.js';
import type { Heard, VerifyTask } from './postgres-verify-log.js';
import { timeStampFault } from './verify-time-stamps.js';

const task = revived(workerData as VerifyTask);
const port = parentPort;
if (port === null) throw new Error('This file runs as a worker thread.');
const pool = openPool({
  connectionString: task.serviceUrl,
  max: 2,
  application_name: 'ledger verification',
});
const store = createPostgresStore(companyPool(pool));
const tell = (heard: Heard): void => port.postMessage(heard);
const report = await verifyLog(store, task.log, task.checkpoints, {
  ...(task.from === undefined ? {} : { from: task.from }),
  onProgress: (progress) => tell({ progress }),
});
const timeStamps = report.fault ? undefined : await timeStampFault(store, task.log);
tell({ report: { ...report, timeStamps } });
await pool.end();
