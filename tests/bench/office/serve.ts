// The built service for a bench, in a process of its own: prints its address.

import path from 'node:path';

const built = path.resolve('.build/apps/api/service.js');
const { Settings, startService } = (await import(
  built
)) as typeof import('../../../apps/api/service.js');
const env = (name: string): string => {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is missing`);
  return value;
};
const service = await startService(
  new Settings({
    serviceUrl: env('GAUGE_SERVICE_URL'),
    keysFolder: env('GAUGE_KEYS'),
    host: '127.0.0.1',
    port: 0,
    pages: path.resolve('.build/office'),
    logLevel: 'error',
    version: 'bench',
  }),
);
process.stdout.write(`${service.address}\n`);
process.on('SIGTERM', () => void service.stop().then(() => process.exit(0)));
