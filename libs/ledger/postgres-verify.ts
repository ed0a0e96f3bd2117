// Verifies a log in PostgreSQL with worker threads: they read and hash, this thread joins.

import type { Worker } from 'node:worker_threads';
import type { Checkpoint } from './checkpoint.js';
import { companyPool, openPool } from './postgres-pool.js';
import { createPostgresStore } from './postgres-store.js';
import { startWorker } from './start-worker.js';
import { beyondHead, joinRanges } from './verify-log.js';
import type { LogReport } from './ledger.js';
import type { RangeReport } from './verify-range.js';
import type { Job, WorkerInput } from './postgres-verify-worker.js';

export interface VerifyOptions extends WorkerInput {
  readonly checkpoints: readonly Checkpoint[];
  readonly workers: number;
  /** Entries verified so far, and of how many. */
  readonly onProgress?: (done: number, of: number) => void;
}

const RANGE = 5000;

export async function verifyInWorkers(options: VerifyOptions): Promise<LogReport> {
  const { serviceUrl, log, checkpoints } = options;
  const pool = openPool({ connectionString: serviceUrl, max: 1 });
  const store = createPostgresStore(companyPool(pool));
  const input: WorkerInput = { serviceUrl, log };
  const workers = Array.from({ length: options.workers }, () =>
    startWorker('postgres-verify-worker', input),
  );
  try {
    const state = await store.readHead(log);
    const report = await joinRanges(state, ranges(workers, state.pos), checkpoints, {
      onProgress: ({ size }) => options.onProgress?.(size, state.pos),
    });
    if (report.fault !== undefined) return report;
    return { ...report, fault: await beyondHead(store, log, state) };
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
    await pool.end();
  }
}

/** Every worker has one range in hand and one waiting; reports come in the log's order. */
async function* ranges(workers: readonly Worker[], size: number): AsyncGenerator<RangeReport> {
  const jobs = Array.from({ length: Math.ceil(size / RANGE) }, (_, i) => {
    const start = i * RANGE;
    return { start, count: Math.min(RANGE, size - start) };
  });
  const running: Promise<RangeReport>[] = [];
  const startNext = () => {
    const job = jobs.shift();
    if (job === undefined) return;
    const worker = workers[(job.start / RANGE) % workers.length] as Worker;
    const report = send(worker, job);
    report.catch(() => undefined);
    running.push(report);
  };
  for (let i = 0; i < workers.length * 2; i++) startNext();
  for (let next = running.shift(); next !== undefined; next = running.shift()) {
    const report = await next;
    startNext();
    yield report;
  }
}

function send(worker: Worker, job: Job): Promise<RangeReport> {
  return new Promise((resolve, reject) => {
    const hear = (report: RangeReport) => {
      if (report.start !== job.start) return;
      worker.off('message', hear);
      worker.off('error', reject);
      resolve(report);
    };
    worker.on('message', hear);
    worker.on('error', reject);
    worker.postMessage(job);
  });
}
