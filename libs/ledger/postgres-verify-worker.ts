// A worker thread that reads and verifies ranges of a log for postgres-verify.ts.

import { parentPort, workerData } from 'node:worker_threads';
import { companyPool, openPool } from './postgres-pool.js';
import { createPostgresStore } from './postgres-store.js';
import { verifyLinks } from './verify-links.js';
import { verifyRange } from './verify-range.js';

export interface WorkerInput {
  readonly serviceUrl: string;
  readonly log: string;
}

export interface Job {
  readonly start: number;
  readonly count: number;
}

const { serviceUrl, log } = workerData as WorkerInput;
const pool = openPool({ connectionString: serviceUrl, max: 1 });
const store = createPostgresStore(companyPool(pool));
const port = parentPort;
if (port === null) throw new Error('This file runs as a worker thread.');

port.on('message', ({ start, count }: Job) => {
  // What goes wrong here ends the thread, and is the caller's fault to hear of.
  void store
    .readRows(log, start, count)
    .then((rows) => verifyLinks(store, log, verifyRange(log, start, rows, count)))
    .then((report) => port.postMessage(report));
});
