// The built pages: assets by content hash kept for a year, the page itself asked for each time;
// a path that is no file is the page's own.

import { existsSync } from 'node:fs';
import path from 'node:path';
import express, { type NextFunction, type Request, type Response } from 'express';

export function securityHeaders(_: Request, response: Response, next: NextFunction): void {
  response.setHeader(
    'Content-Security-Policy',
    [
      "default-src 'self'",
      "style-src 'self' 'unsafe-inline'",
      "img-src 'self' data: blob:",
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
    ].join('; '),
  );
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  response.setHeader('Cross-Origin-Opener-Policy', 'same-origin');
  response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
  next();
}

export function servePages(folder: string) {
  const page = path.join(folder, 'index.html');
  const files = express.static(folder, {
    index: false,
    redirect: false,
    setHeaders: (response, file) =>
      response.setHeader('Cache-Control', cachingOf(path.relative(folder, file))),
  });
  return (request: Request, response: Response, next: NextFunction): void => {
    if (request.path === '/api' || request.path.startsWith('/api/')) return next();
    if (request.method !== 'GET' && request.method !== 'HEAD') return next();
    const name = request.path.slice(1);
    if (path.extname(name) !== '' && sendCompressed(folder, name, request, response)) return;
    files(request, response, (error?: unknown) => {
      const isPage = path.extname(request.path) === '' && existsSync(page);
      if (error !== undefined || !isPage) return next(error);
      if (sendCompressed(folder, 'index.html', request, response)) return;
      response.setHeader('Cache-Control', cachingOf('index.html'));
      response.sendFile('index.html', { root: folder });
    });
  };
}

const cachingOf = (name: string): string =>
  name.startsWith('assets') ? 'public, max-age=31536000, immutable' : 'no-cache';

/** As the build compressed it, the smaller one first; false where there is none that the caller takes. */
function sendCompressed(
  folder: string,
  name: string,
  request: Request,
  response: Response,
): boolean {
  const there = ENCODINGS.filter(({ ending }) => existsSync(path.join(folder, name + ending)));
  if (there.length === 0) return false;
  response.vary('Accept-Encoding');
  const chosen = there.find(({ encoding }) => request.acceptsEncodings(encoding) !== false);
  if (!chosen) return false;
  response.type(path.extname(name));
  response.setHeader('Cache-Control', cachingOf(name));
  response.setHeader('Content-Encoding', chosen.encoding);
  response.sendFile(name + chosen.ending, {
    root: folder,
    cacheControl: false,
    acceptRanges: false,
  });
  return true;
}

const ENCODINGS = [
  { encoding: 'br', ending: '.br' },
  { encoding: 'gzip', ending: '.gz' },
] as const;
