// `npm test`: every suite, and one line at the end that says how it went.

import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const folder = mkdtempSync(path.join(tmpdir(), 'gauge-results-'));
const results = path.join(folder, 'results.json');
const args = [
  path.join('node_modules', 'jest', 'bin', 'jest.js'),
  '--json',
  `--outputFile=${results}`,
  ...process.argv.slice(2),
];
const options = `${process.env.NODE_OPTIONS ?? ''} --experimental-vm-modules --no-warnings`.trim();
const child = spawn(process.execPath, args, {
  // With --json the report itself goes to standard output; the readable one to standard error.
  stdio: ['inherit', 'ignore', 'inherit'],
  env: { ...process.env, NODE_OPTIONS: options },
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));

child.on('exit', (code, signal) => {
  const report = existsSync(results) ? JSON.parse(readFileSync(results, 'utf8')) : undefined;
  rmSync(folder, { recursive: true, force: true });
  const passed = report?.numPassedTests ?? 0;
  // A suite that could not even run counts as one failure.
  const failed = report ? report.numFailedTests + report.numRuntimeErrorTestSuites : 1;
  const skipped = report ? report.numPendingTests + report.numTodoTests : 0;
  console.log(`Tests: ${passed} passed, ${failed} failed, ${skipped} skipped`);
  process.exitCode = signal === null && failed === 0 ? (code ?? 1) : 1;
});
