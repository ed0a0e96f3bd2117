// A worker thread that runs one preview on a connection of its own, so that the service goes on
// answering meanwhile. It is ended from outside when the preview is cancelled.

import { parentPort, workerData } from 'node:worker_threads';
import type { ImpactScope } from '#jobs/contract';
import { companyPool, openPool } from '#ledger';
import type { Edition } from '#rules';
import { runPreview, type Going, type Outcome } from './run-preview.js';

export interface WorkerInput {
  readonly serviceUrl: string;
  readonly company: string;
  readonly scope: ImpactScope;
  readonly edition: Edition;
}
export type Heard =
  | ({ readonly is: 'going' } & Going)
  | ({ readonly is: 'done' } & Outcome)
  | { readonly is: 'failed'; readonly words: string };

const port = parentPort;
if (port === null) throw new Error('This file runs as a worker thread.');
const { serviceUrl, ...asked } = workerData as WorkerInput;
const connections = openPool({
  connectionString: serviceUrl,
  max: 1,
  application_name: 'gauge-preview',
});
const say = (heard: Heard): void => port.postMessage(heard);
try {
  const pool = companyPool(connections);
  const outcome = await runPreview({
    ...asked,
    pool,
    say: (going) => say({ is: 'going', ...going }),
  });
  say({ is: 'done', ...outcome });
} catch (error) {
  say({ is: 'failed', words: error instanceof Error ? error.message : String(error) });
} finally {
  await connections.end();
}
