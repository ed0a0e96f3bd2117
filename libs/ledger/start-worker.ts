// Starts a worker thread of this library: the compiled file beside this one, or, where the library runs
// from its source, that source under the project's own loader.

import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';

export function startWorker(name: string, workerData: unknown): Worker {
  const compiled = new URL(`./${name}.js`, import.meta.url);
  if (existsSync(compiled)) return new Worker(compiled, { workerData });
  const loader = new URL('../../.config/typescript.mjs', import.meta.url).href;
  const execArgv = ['--no-warnings', '--import', loader];
  return new Worker(new URL(`./${name}.ts`, import.meta.url), { workerData, execArgv });
}
