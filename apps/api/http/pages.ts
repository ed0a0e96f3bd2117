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
    setHeaders: (response, file) => {
      const hashed = path.relative(folder, file).startsWith('assets');
      response.setHeader(
        'Cache-Control',
        hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
      );
    },
  });
  return (request: Request, response: Response, next: NextFunction): void => {
    if (request.path === '/api' || request.path.startsWith('/api/')) return next();
    if (request.method !== 'GET' && request.method !== 'HEAD') return next();
    files(request, response, (error?: unknown) => {
      const isPage = path.extname(request.path) === '' && existsSync(page);
      if (error !== undefined || !isPage) return next(error);
      response.setHeader('Cache-Control', 'no-cache');
      response.sendFile('index.html', { root: folder });
    });
  };
}
