// Starts the HTTP service on a database that is migrated already, and stops it without losing what
// was accepted.

import 'reflect-metadata';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { newClient } from '#ledger';
import { AppModule } from './app.module.js';
import { Settings } from './data/settings.js';
import { readBodies } from './http/bodies.js';
import { logRequests, makeLog } from './http/log.js';
import { OpenApiDocument } from './http/openapi.js';
import { securityHeaders, servePages } from './http/pages.js';

export { mailFrom, Settings, timeStampsFrom, verifyFrom } from './data/settings.js';

export interface Service {
  /** "http://127.0.0.1:4310" */
  readonly address: string;
  /** A part of the running service, for start and tests. */
  get<T>(part: new (...given: never[]) => T): T;
  /** Takes no more requests, lets those under way finish, then closes the database. */
  stop(): Promise<void>;
}

/** @throws Error with one sentence where the role may pass the walls, or the port is busy */
export async function startService(settings: Settings): Promise<Service> {
  await refusePowerfulRole(settings.serviceUrl);
  const log = makeLog(settings.logLevel);
  const app = await NestFactory.create<NestExpressApplication>(AppModule.with(settings, log), {
    bodyParser: false,
    // What goes wrong at the start is thrown, and what goes wrong later is in our own log.
    logger: false,
    abortOnError: false,
  });
  app.set('trust proxy', 'loopback');
  app.disable('x-powered-by');
  app.set('etag', false);
  app.use(securityHeaders);
  app.use(logRequests(log));
  app.use(servePages(settings.pages));
  app.use(noStore);
  app.use(readBodies);
  app.get(OpenApiDocument).of(app);
  await app.listen(settings.port, settings.host);
  const server = app.getHttpServer() as Server;
  // Longer than callers and proxies keep theirs, so that none sends into a closing connection.
  server.keepAliveTimeout = 75_000;
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://${settings.host}:${port}`,
    get: (part) => app.get(part, { strict: false }),
    stop: async () => {
      // A connection whose last answer is still under way becomes idle only after it.
      const idle = setInterval(() => server.closeIdleConnections(), 50);
      await app.close().finally(() => clearInterval(idle));
    },
  };
}

const noStore = (
  _: unknown,
  response: { setHeader(name: string, value: string): void },
  next: () => void,
) => {
  response.setHeader('Cache-Control', 'no-store');
  next();
};

/** The walls between companies hold only for a role that cannot pass them. */
async function refusePowerfulRole(serviceUrl: string): Promise<void> {
  const client = newClient({ connectionString: serviceUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ powerful: boolean; owns: boolean }>(
      `SELECT rolsuper OR rolbypassrls AS powerful,
              EXISTS (SELECT FROM pg_tables WHERE schemaname IN ('ledger', 'public')
                AND pg_has_role(tableowner, 'MEMBER')) AS owns
       FROM pg_roles WHERE rolname = current_user`,
    );
    const [role] = rows;
    if (!role || role.powerful || role.owns) {
      throw new Error(
        'DATABASE_SERVICE_URL names a role that owns the tables or may pass row-level security; ' +
          'use one that may not.',
      );
    }
  } finally {
    await client.end();
  }
}
