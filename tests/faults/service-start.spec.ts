// What `npm start` promises: ready with the demonstration, the same again at a second start, one
// clear sentence where it cannot be, and nothing lost whoever is killed.

import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from '@jest/globals';
import { build, startProduct, startRefused, type Product } from '../built.js';
import { call, clientOf, signInByLink } from '../service.js';

let folder: string;
const running = new Set<Product>();

beforeAll(async () => {
  await build();
  folder = newFolder();
}, 120_000);

afterEach(async () => {
  for (const product of running) await product.kill('SIGTERM');
  running.clear();
});
afterAll(() => {
  for (const made of folders) rmSync(made, { recursive: true, force: true });
});

const folders: string[] = [];
function newFolder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'gauge-start-'));
  chmodSync(made, 0o755);
  folders.push(made);
  return made;
}

async function start(...more: string[]): Promise<Product> {
  const product = await startProduct(['--data', folder, '--port', '0', ...more]);
  running.add(product);
  return product;
}

interface List {
  readonly rows: readonly { readonly number: string; readonly updated_at: string }[];
}

describe('with the demonstration', () => {
  let before: List;

  test('the first start prints a link for each of its people, good once', async () => {
    const { address, links } = await start();
    expect(Object.keys(links)).toHaveLength(7);
    const olive = await signInByLink(address, links['Olive'] ?? '');
    before = (await olive.get<List>('/jobs')).body;
    expect(before.rows).toHaveLength(3);
    const again = await call(address, 'POST', '/session/link', { token: links['Olive'] });
    expect(again.status).toBe(401);
  }, 150_000);

  test('the second start finds all as it was', async () => {
    const { address, links } = await start();
    const olive = await signInByLink(address, links['Olive'] ?? '');
    expect((await olive.get<List>('/jobs')).body).toEqual(before);
  }, 150_000);

  test('SIGINT and SIGTERM stop it with exit code 0', async () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const product = await start();
      running.delete(product);
      expect(await product.kill(signal)).toBe(0);
    }
  }, 150_000);

  test('after kill -9 of the service the next start recovers', async () => {
    const product = await start();
    running.delete(product);
    await product.kill('SIGKILL');
    const { address, links } = await start();
    const olive = await signInByLink(address, links['Olive'] ?? '');
    expect((await olive.get<List>('/jobs')).body).toEqual(before);
  }, 150_000);

  test('after kill -9 of the database it says so and ends; the next start has all', async () => {
    const product = await start();
    running.delete(product);
    const olive = await signInByLink(product.address, product.links['Olive'] ?? '');
    const party = async (kind: string) =>
      (await olive.send<{ id: string }>('POST', '/parties', { kind, details: { name: 'N' } })).body
        .id;
    const opened = await olive.send<{ id: string }>('POST', '/jobs', {
      name: 'Kept',
      site: { id: await party('site') },
      parties: { customer: { id: await party('person') } },
    });
    expect(opened.status).toBe(201);
    const ended = new Promise<number | null>((resolve) => product.process.once('exit', resolve));
    const pid = Number(
      readFileSync(path.join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0],
    );
    process.kill(pid, 'SIGKILL');
    expect(await ended).toBe(1);
    expect(product.output()).toContain('The database ended by itself');
    const { address, links } = await start();
    const again = await signInByLink(address, links['Olive'] ?? '');
    expect((await again.get(`/jobs/${opened.body.id}`)).status).toBe(200);
  }, 150_000);

  test('a folder in use and a busy port are one sentence and exit code 1', async () => {
    const product = await start();
    const inUse = await startRefused(['--data', folder, '--port', '0']);
    expect(inUse).toEqual({
      code: 1,
      said: expect.stringMatching(/^The folder .* is in use by process \d+\.$/),
    });
    const port = new URL(product.address).port;
    const busy = await startRefused(['--data', newFolder(), '--port', port]);
    expect(busy).toEqual({
      code: 1,
      said: `Port ${port} is in use by another program; choose another with --port.`,
    });
    expect((await call(product.address, 'GET', '/health')).status).toBe(200);
  }, 150_000);
});

describe('refused starts', () => {
  test.each([
    [
      'a folder that cannot be written',
      ['--data', '/sys/gauge'],
      {},
      /^The folder \/sys\/gauge cannot be written/,
    ],
    [
      'half of the addresses',
      [],
      { DATABASE_URL: 'postgres://a@127.0.0.1:1/x' },
      /^DATABASE_URL and DATABASE_SERVICE_URL are set together/,
    ],
    [
      'a database that is not there',
      [],
      {
        DATABASE_URL: 'postgres://a@127.0.0.1:1/x',
        DATABASE_SERVICE_URL: 'postgres://b@127.0.0.1:1/x',
      },
      /^The database cannot be brought up to date: .*127\.0\.0\.1:1/,
    ],
    ['a port that is none', ['--port', 'abc'], {}, /must be 0 to 65535/],
  ] as const)(
    '%s',
    async (_, args, env, sentence) => {
      const { code, said } = await startRefused(['--port', '0', ...args], env);
      expect(code).toBe(1);
      expect(said).toMatch(sentence);
      expect(said).not.toMatch(/^\s+at /m);
    },
    90_000,
  );

  test('a port held by something else', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as { port: number };
    const { code, said } = await startRefused(['--data', newFolder(), '--port', String(port)]);
    other.close();
    expect({ code, said }).toEqual({
      code: 1,
      said: `Port ${port} is in use by another program; choose another with --port.`,
    });
  }, 90_000);
});

test('--empty gives one link, which sets up the first administrator once', async () => {
  const args = ['--data', newFolder(), '--port', '0', '--empty'];
  const first = await startProduct(args);
  running.add(first);
  const [token] = Object.values(first.links);
  const body = {
    token,
    name: 'First',
    email: 'First@office.example',
    password: 'correct horse battery',
    company: 'A company',
  };
  const bad = await call(first.address, 'POST', '/setup', { ...body, password: 'short' });
  expect(bad.status).toBe(422);
  const done = await call<{ roles: string[] }>(first.address, 'POST', '/setup', body);
  expect(done.body).toMatchObject({ roles: ['administrator'], company: { name: 'A company' } });
  expect((await call(first.address, 'POST', '/setup', body)).status).toBe(401);
  expect(await first.kill('SIGTERM')).toBe(0);
  running.delete(first);
  const second = await startProduct(args);
  running.add(second);
  expect(second.links).toEqual({});
  const signedIn = await call(second.address, 'POST', '/session', {
    email: 'first@office.example',
    password: body.password,
  });
  const rules = await clientOf(second.address, signedIn).get<{ state: string }>(
    '/rulebook/current',
  );
  expect(rules.body.state).toBe('in force');
  const users = await clientOf(second.address, signedIn).get<{ users: unknown[] }>('/users');
  expect(users.body.users).toHaveLength(1);
}, 150_000);
