// The service's own log: what was asked and how it went; never a body, a token or a query.

import type { NextFunction, Request, Response } from 'express';
import { pino, type Logger } from 'pino';
import type { SignedIn } from './signed-in.js';

/** The log as Nest hands it out. */
export abstract class Log {
  abstract error(what: object, words: string): void;
  abstract info(what: object, words: string): void;
}

export function makeLog(level: string): Logger {
  return pino({
    level,
    base: null,
    redact: ['req.headers', 'password', 'token', 'err.config', 'err.parameters'],
  });
}

export function logRequests(log: Log) {
  return (
    request: Request & { signedIn?: SignedIn },
    response: Response,
    next: NextFunction,
  ): void => {
    const began = performance.now();
    response.on('finish', () => {
      if (!request.path.startsWith('/api/')) return;
      log.info(
        {
          method: request.method,
          path: withoutSecrets(request.path),
          status: response.statusCode,
          ms: Math.round(performance.now() - began),
          person: request.signedIn?.person.id,
        },
        'request',
      );
    });
    next();
  };
}

const withoutSecrets = (path: string) => path.replace(/[A-Za-z0-9_-]{40,}/g, '…');
