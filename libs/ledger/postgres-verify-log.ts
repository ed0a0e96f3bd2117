// Verifies a log in PostgreSQL beside the work of this process: one worker thread does all of it, tells
// how far it is, and can be followed by another from there.

import type { Checkpoint } from './checkpoint.js';
import { startWorker } from './start-worker.js';
import type { LogReport } from './ledger.js';
import type { VerifyProgress } from './verify-log.js';

export interface VerifyTask {
  readonly serviceUrl: string;
  readonly log: string;
  readonly checkpoints: readonly Checkpoint[];
  readonly from?: VerifyProgress;
}

export interface WholeReport extends LogReport {
  /** What is wrong with a time-stamp that is kept. */
  readonly timeStamps: string | undefined;
}

export type Heard = { readonly progress: VerifyProgress } | { readonly report: WholeReport };

export interface VerifyRun {
  /** Rejects when the thread ends early, by a fault or because it was stopped. */
  readonly report: Promise<WholeReport>;
  stop(): Promise<void>;
}

export function verifyInWorker(
  task: VerifyTask,
  onProgress: (progress: VerifyProgress) => void,
): VerifyRun {
  const worker = startWorker('postgres-verify-log-worker', task);
  const report = new Promise<WholeReport>((resolve, reject) => {
    worker.on('message', (heard: Heard) => {
      if ('report' in heard) resolve({ ...heard.report, root: Buffer.from(heard.report.root) });
      else onProgress(readProgress(heard.progress));
    });
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`The verification ended early (${code}).`)));
  });
  report.catch(() => undefined);
  return {
    report,
    stop: async () => {
      await worker.terminate();
    },
  };
}

/** Bytes come through a thread's port as plain arrays of bytes. */
export function revived(task: VerifyTask): VerifyTask {
  const { from } = task;
  return {
    ...task,
    checkpoints: task.checkpoints.map((each) => ({ ...each, root: Buffer.from(each.root) })),
    ...(from === undefined ? {} : { from: readProgress(from) }),
  };
}

const readProgress = (progress: VerifyProgress): VerifyProgress => ({
  ...progress,
  frontier: Buffer.from(progress.frontier),
});
