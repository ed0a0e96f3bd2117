// A running service on a fresh database, and a client that signs in as anybody: real HTTP on a port
// of its own.

import { afterAll, beforeAll } from '@jest/globals';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { v7 as uuid } from 'uuid';
import type { Role } from '#jobs/contract';
import { Companies } from '../apps/api/data/companies.js';
import { SignInLinks } from '../apps/api/people/sign-in-links.js';
import { PublishRules } from '../apps/api/rulebook/publish-rules.js';
import type { MailSettings, TimeStampSettings } from '../apps/api/data/settings.js';
import { Settings, startService, type Service } from '../apps/api/service.js';
import { freshDatabase, type TestDatabase } from './database.js';

export interface Answer<T = unknown> {
  readonly status: number;
  readonly headers: Headers;
  readonly body: T;
}

export interface Client {
  readonly person: { readonly id: string; readonly name: string };
  readonly csrf: string;
  readonly cookie: string;
  get<T>(path: string): Promise<Answer<T>>;
  send<T>(
    method: string,
    path: string,
    body?: unknown,
    headers?: Readonly<Record<string, string>>,
  ): Promise<Answer<T>>;
}

export interface Running {
  readonly service: Service;
  readonly database: TestDatabase;
  readonly address: string;
  /** Empty where the service signs nothing. */
  readonly keysFolder?: string;
}

export const settingsFor = (serviceUrl: string, port = 0): Settings =>
  new Settings({
    serviceUrl,
    host: '127.0.0.1',
    port,
    pages: path.resolve('.build/office'),
    logLevel: 'silent',
    version: 'test',
  });

export interface Extra {
  /** Signs checkpoints with a key of its own. */
  readonly keys?: boolean;
  readonly mail?: MailSettings;
  /** Read when the service starts. */
  readonly timeStamps?: () => TimeStampSettings;
}

/** Registers the hooks of one test file. */
export function withService({ keys = false, mail, timeStamps }: Extra = {}): Running {
  let database: TestDatabase | undefined;
  let service: Service | undefined;
  const keysFolder = keys ? mkdtempSync(path.join(tmpdir(), 'gauge-keys-')) : '';
  beforeAll(async () => {
    database = await freshDatabase();
    service = await startService(
      new Settings({
        ...settingsFor(database.serviceUrl),
        ...(keys ? { keysFolder } : {}),
        ...(mail ? { mail } : {}),
        ...(timeStamps ? { timeStamps: timeStamps() } : {}),
      }),
    );
  }, 120_000);
  afterAll(async () => {
    await service?.stop();
    await database?.drop();
    if (keys) rmSync(keysFolder, { recursive: true, force: true });
  });
  const ready = () => {
    if (!service || !database) throw new Error('The service is there only inside tests.');
    return { service, database };
  };
  return {
    keysFolder,
    get service() {
      return ready().service;
    },
    get database() {
      return ready().database;
    },
    get address() {
      return ready().service.address;
    },
  };
}

export interface NewPerson {
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}

/** A company with its people, its rules, and each of them signed in. */
export async function company<const N extends string>(
  { service, address }: Running,
  name: string,
  people: Readonly<Record<N, readonly Role[]>>,
): Promise<Readonly<Record<N, Client>> & { readonly id: string }> {
  const id = uuid();
  const { prisma } = service.get(Companies).of(id);
  await prisma.company.create({ data: { id, name } });
  await service.get(PublishRules).ofTheProduct(id, 'setup');
  const clients: Record<string, unknown> = { id };
  for (const [key, roles] of Object.entries(people) as [N, readonly Role[]][]) {
    const person = uuid();
    const email = `${key}.${id}@example.example`;
    await prisma.person.create({
      data: { companyId: id, id: person, name: key, email, roles: [...roles] },
    });
    clients[key] = await signInByLink(address, await service.get(SignInLinks).make(id, person));
  }
  return clients as Readonly<Record<N, Client>> & { readonly id: string };
}

export async function signInByLink(address: string, token: string): Promise<Client> {
  const answer = await call(address, 'POST', '/session/link', { token });
  if (answer.status !== 200) throw new Error(`signing in failed: ${JSON.stringify(answer.body)}`);
  return clientOf(address, answer);
}

export function clientOf(address: string, signedIn: Answer): Client {
  const { csrf, person } = signedIn.body as { csrf: string; person: { id: string; name: string } };
  const cookie = (signedIn.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const send: Client['send'] = (method, where, body, headers = {}) =>
    call(address, method, where, body, { cookie, 'x-csrf-token': csrf, ...headers });
  return { person, csrf, cookie, send, get: (where) => send('GET', where) };
}

export async function call<T = unknown>(
  address: string,
  method: string,
  where: string,
  body?: unknown,
  headers: Readonly<Record<string, string>> = {},
): Promise<Answer<T>> {
  const raw = typeof body === 'string' || body instanceof Uint8Array;
  const response = await fetch(`${address}/api${where}`, {
    method,
    headers: {
      ...(body === undefined || raw ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: raw ? (body as string) : JSON.stringify(body) }),
  });
  const text = await response.text();
  const json = (response.headers.get('content-type') ?? '').includes('json') && text !== '';
  return {
    status: response.status,
    headers: response.headers,
    body: (json ? JSON.parse(text) : text) as T,
  };
}
