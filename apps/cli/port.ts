// Asks for the port before anything is started, so that a busy one costs nothing.

import { createServer } from 'node:net';
import { StartRefused } from './server-files.js';

/** @throws StartRefused where the port cannot be listened on */
export function refuseBusyPort(host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', ({ code, message }: NodeJS.ErrnoException) => {
      const why =
        code === 'EADDRINUSE'
          ? `Port ${port} is in use by another program; choose another with --port.`
          : `Port ${port} of ${host} cannot be used: ${message}.`;
      reject(new StartRefused(why));
    });
    probe.listen(port, host, () => probe.close(() => resolve()));
  });
}
