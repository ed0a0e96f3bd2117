// Runs the service alone, on the database of DATABASE_SERVICE_URL. `npm start` does more: it starts
// the database, migrates it and fills it the first time.

import path from 'node:path';
import { mailFrom, Settings, startService, timeStampsFrom, verifyFrom } from './service.js';

const {
  DATABASE_SERVICE_URL: serviceUrl,
  KEYS_FOLDER: keysFolder,
  PORT = '4310',
  LOG_LEVEL = 'info',
} = process.env;
if (serviceUrl === undefined) {
  console.error('DATABASE_SERVICE_URL is not set.');
  process.exit(1);
}
const service = await startService(
  new Settings({
    serviceUrl,
    host: '127.0.0.1',
    port: Number(PORT),
    pages: path.resolve('.build/office'),
    logLevel: LOG_LEVEL,
    version: '0.1.0',
    ...(keysFolder === undefined ? {} : { keysFolder }),
    ...verifyFrom(process.env),
    ...mailFrom(process.env),
    ...timeStampsFrom(process.env),
  }),
);
console.log(service.address);
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => void service.stop().then(() => process.exit(0)));
}
