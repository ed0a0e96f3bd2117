// Reads bodies: JSON strictly (a key given twice is refused), CSV as text, files as bytes; each
// with a limit.

import express, { type NextFunction, type Request, type Response } from 'express';
import { parseStrict } from '#ledger';
import { Problem } from '../problems.js';

const JSON_LIMIT = 8 * 1024 * 1024;
const FILE_LIMIT = 25 * 1024 * 1024;

const text = express.text({ type: ['application/json', 'text/csv'], limit: JSON_LIMIT });
const bytes = express.raw({ type: () => true, limit: FILE_LIMIT });
const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const workbook = express.raw({ type: WORKBOOK, limit: JSON_LIMIT });

export function readBodies(request: Request, response: Response, next: NextFunction): void {
  if (request.method === 'POST' && request.path === '/api/files') {
    bytes(request, response, next);
    return;
  }
  const hasBody =
    request.headers['transfer-encoding'] !== undefined ||
    Number(request.headers['content-length'] ?? 0) > 0;
  if (!hasBody) {
    next();
    return;
  }
  if (request.is(WORKBOOK)) {
    workbook(request, response, next);
    return;
  }
  if (!request.is('application/json') && !request.is('text/csv')) {
    next(new Problem('unsupported-media', 'Send application/json.'));
    return;
  }
  text(request, response, (error: unknown) => {
    next(error ?? parsed(request));
  });
}

function parsed(request: Request): Problem | undefined {
  if (!request.is('application/json')) return undefined;
  try {
    request.body = parseStrict(request.body as string);
    return undefined;
  } catch (error) {
    return new Problem('unreadable', error instanceof Error ? error.message : 'This is not JSON.');
  }
}
