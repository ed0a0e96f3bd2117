// Starts the worker thread of a preview, from the build or, where the sources run as they stand,
// from those.

import { Worker } from 'node:worker_threads';
import type { Heard, WorkerInput } from './preview-worker.js';

export interface Thread {
  stop(): Promise<unknown>;
}

const MEGABYTES = 400;
const built = !import.meta.url.endsWith('.ts');
const file = new URL(built ? './preview-worker.js' : './preview-worker.ts', import.meta.url);
const hooks = new URL('../../../.config/typescript.mjs', import.meta.url);

export function startThread(workerData: WorkerInput, hear: (heard: Heard) => void): Thread {
  const worker = new Worker(file, {
    workerData,
    execArgv: built ? [] : ['--conditions=gauge-source', '--import', hooks.href],
    resourceLimits: { maxOldGenerationSizeMb: MEGABYTES },
  });
  worker.on('message', hear);
  worker.on('error', (error) => hear({ is: 'failed', words: error.message }));
  worker.on('exit', (code) => {
    if (code !== 0) hear({ is: 'failed', words: 'It ended by itself.' });
  });
  return { stop: () => worker.terminate() };
}
