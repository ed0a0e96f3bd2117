// What a browser is given of the built pages: compressed where it takes that, kept where it may be kept.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import express from 'express';
import { servePages } from './pages.js';

const CODE = 'export const word = "the same word";\n'.repeat(40);
const PAGE = '<!doctype html><title>Pages</title>';
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-pages-'));
let server: Server;

beforeAll(async () => {
  mkdirSync(path.join(folder, 'assets'));
  const code = path.join(folder, 'assets', 'code-1234.js');
  writeFileSync(code, CODE);
  writeFileSync(`${code}.br`, brotliCompressSync(CODE));
  writeFileSync(`${code}.gz`, gzipSync(CODE));
  writeFileSync(path.join(folder, 'index.html'), PAGE);
  writeFileSync(path.join(folder, 'index.html.gz'), gzipSync(PAGE));
  const app = express();
  app.use(servePages(folder));
  server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  rmSync(folder, { recursive: true });
});

interface Got {
  readonly status: number | undefined;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

const get = (where: string, headers: Readonly<Record<string, string>> = {}): Promise<Got> =>
  new Promise((resolve, reject) => {
    const { port } = server.address() as AddressInfo;
    const asked = request({ port, path: where, headers, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode,
          headers: response.headers,
          body: Buffer.concat(parts),
        }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });

test('code goes out as small as the browser takes it, is kept for a year, and says so', async () => {
  const small = await get('/assets/code-1234.js', { 'accept-encoding': 'gzip, br' });
  expect(small.headers).toMatchObject({
    'content-encoding': 'br',
    'content-type': expect.stringMatching(/^text\/javascript/) as unknown,
    'cache-control': 'public, max-age=31536000, immutable',
    vary: 'Accept-Encoding',
  });
  expect(brotliDecompressSync(small.body).toString()).toBe(CODE);
  const other = await get('/assets/code-1234.js', { 'accept-encoding': 'gzip' });
  expect(other.headers['content-encoding']).toBe('gzip');
  expect(gunzipSync(other.body).toString()).toBe(CODE);
});

test('who takes nothing compressed gets it as it is', async () => {
  const takers: readonly Record<string, string>[] = [{}, { 'accept-encoding': 'identity' }];
  for (const headers of takers) {
    const plain = await get('/assets/code-1234.js', headers);
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.headers).toMatchObject({
      'cache-control': 'public, max-age=31536000, immutable',
      vary: 'Accept-Encoding',
    });
    expect(plain.body.toString()).toBe(CODE);
  }
});

test('the page is asked for each time and sent only where it changed, at every address', async () => {
  const takers: readonly Record<string, string>[] = [{ 'accept-encoding': 'gzip' }, {}];
  for (const headers of takers) {
    const page = await get('/jobs/some-job', headers);
    expect(page.headers).toMatchObject({
      'cache-control': 'no-cache',
      'content-type': expect.stringMatching(/^text\/html/) as unknown,
    });
    const text = headers['accept-encoding'] ? gunzipSync(page.body) : page.body;
    expect(text.toString()).toBe(PAGE);
    const again = await get('/', { ...headers, 'if-none-match': page.headers.etag ?? '' });
    expect(again.status).toBe(304);
  }
});

test('nothing outside the folder is given, compressed or not', async () => {
  const outside = path.join(folder, '..', `${path.basename(folder)}-beside.js.gz`);
  writeFileSync(outside, gzipSync('secret'));
  const found = await get(`/../${path.basename(outside, '.gz')}`, { 'accept-encoding': 'gzip' });
  rmSync(outside);
  expect(found.status).toBeGreaterThanOrEqual(400);
  expect(found.body.toString()).not.toContain('secret');
});
