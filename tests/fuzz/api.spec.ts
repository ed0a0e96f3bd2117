// Every operation of the OpenAPI document against generated and hostile input: never a fault of the
// service, no status that the document does not name, and every body as its schema says.

import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { ROLES } from '#jobs/contract';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { startService, type Service } from '../../apps/api/service.js';
import { freshDatabase, type TestDatabase } from '../database.js';
import { call, company, settingsFor, type Client } from '../service.js';
import { fromSchema, perhapsHostile, type Components, type Schema } from './from-schema.js';
import { openOne } from './open-one.js';

interface Parameter {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly schema?: Schema;
}
interface Operation {
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: {
    readonly content: Readonly<Record<string, { readonly schema: Schema }>>;
  };
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema?: Schema }>> }>
  >;
}
interface Document {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Components };
}

const RUNS = Number(process.env['FUZZ_RUNS'] ?? 6);
const SEED = Number(process.env['FUZZ_SEED'] ?? 20261125);

let database: TestDatabase;
let service: Service;
let client: Client;
let companyId: string;
let document: Document;
let job: string;
const ajv = new Ajv2020({ strict: false, validateFormats: false });

beforeAll(async () => {
  database = await freshDatabase();
  service = await startService(settingsFor(database.serviceUrl));
  const people = await company({ service, database, address: service.address }, 'Fuzz', {
    all: [...ROLES],
  });
  companyId = people.id;
  client = people.all;
  job = await openOne(client);
  document = (await call<Document>(service.address, 'GET', '/openapi.json')).body;
  ajv.addSchema({ $id: 'doc', components: document.components });
}, 120_000);

afterAll(async () => {
  await service.stop();
  await database.drop();
});

/** What would end the session that all the other requests need. */
const LEFT_OUT = [
  'delete /api/session',
  'post /api/session',
  'post /api/session/link',
  'post /api/setup',
];

describe('every operation', () => {
  test('answers as its document says, whatever it is sent', async () => {
    const all = Object.entries(document.paths).flatMap(([path, operations]) =>
      Object.entries(operations).map(([method, operation]) => ({ path, method, operation })),
    );
    expect(all.length).toBeGreaterThan(30);
    const found: string[] = [];
    for (const { path, method, operation } of all) {
      const key = `${method} ${path}`;
      if (LEFT_OUT.includes(key)) continue;
      const property = fc.asyncProperty(requests(path, operation), async (request) => {
        const answer = await client.send(
          method.toUpperCase(),
          request.path,
          request.body,
          request.headers,
        );
        check(key, operation, answer);
      });
      const run = await fc.check(property, { numRuns: RUNS, seed: SEED });
      if (run.failed)
        found.push(
          `${key}: ${String(run.errorInstance)} from ${JSON.stringify(run.counterexample)}`,
        );
    }
    expect(found).toEqual([]);
  }, 600_000);

  test('and afterwards the lists have come to the head of the record', async () => {
    const { ledger, lists } = service.get(Ledgers);
    const head = await ledger.head(companyId);
    expect(await ledger.waitFor(companyId, 'jobs', head.pos, 10_000)).toBe(head.pos);
    const rebuilt = await lists.rebuild(companyId, 'jobs');
    expect(rebuilt.equal).toBe(true);
  });
});

describe('doors for anyone', () => {
  test.each(['/session', '/session/link', '/setup'])(
    'POST %s answers as its document says',
    async (where) => {
      const operation = document.paths[`/api${where}`]?.['post'] as Operation;
      await fc.assert(
        fc.asyncProperty(requests(`/api${where}`, operation), async ({ body }) => {
          const answer = await call(service.address, 'POST', where, body);
          check(`post ${where}`, operation, answer);
        }),
        { numRuns: 8, seed: SEED },
      );
    },
    60_000,
  );
});

function requests(path: string, operation: Operation) {
  const { schemas } = document.components;
  const parameters = Object.fromEntries(
    (operation.parameters ?? []).map((each) => [`${each.in} ${each.name}`, parameter(each)]),
  );
  const json = operation.requestBody?.content['application/json'];
  const other =
    operation.requestBody && !json ? Object.keys(operation.requestBody.content)[0] : undefined;
  const bodies = json
    ? perhapsHostile(fromSchema(json.schema, schemas))
    : other
      ? fc.string({ maxLength: 200 })
      : fc.constant(undefined);
  return fc.record({ given: fc.record(parameters), body: bodies }).map(({ given, body }) => {
    const value = (where: string, name: string) =>
      String((given as Readonly<Record<string, unknown>>)[`${where} ${name}`] ?? '');
    const query = (operation.parameters ?? [])
      .filter((each) => each.in === 'query' && value('query', each.name) !== '')
      .map(({ name }) => `${name}=${encodeURIComponent(value('query', name))}`)
      .join('&');
    const filled = path
      .replace('/api', '')
      .replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(value('path', name)) || 'x');
    const headers = Object.fromEntries(
      (operation.parameters ?? [])
        .filter(
          (each) =>
            each.in === 'header' &&
            each.name !== 'X-CSRF-Token' &&
            value('header', each.name) !== '',
        )
        .map(({ name }) => [name.toLowerCase(), value('header', name)]),
    );
    return {
      path: filled + (query && `?${query}`),
      headers: {
        ...headers,
        ...(other ? { 'content-type': other } : json ? { 'content-type': 'application/json' } : {}),
      },
      body: body === undefined || other ? body : JSON.stringify(body),
    };
  });
}

function parameter({ name, in: where, schema }: Parameter): fc.Arbitrary<unknown> {
  if (where === 'header') {
    return name === 'If-Match'
      ? fc.constantFrom('"3"', '"1"', '"99"', 'x', '')
      : fc.constantFrom('', 'a-key', ' ', 'x'.repeat(300), '%41');
  }
  const sane =
    name === 'id' ? fc.constant(job) : fromSchema(schema ?? {}, document.components.schemas);
  return fc.oneof(
    { weight: 3, arbitrary: sane },
    { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 20 }) },
  );
}

function check(
  key: string,
  operation: Operation,
  answer: { status: number; headers: Headers; body: unknown },
): void {
  const said = `${key} answered ${answer.status}: ${JSON.stringify(answer.body).slice(0, 600)}`;
  if (answer.status >= 500) throw new Error(said);
  const documented = operation.responses[String(answer.status)];
  if (!documented) throw new Error(`${said}, which the document does not name`);
  const type = (answer.headers.get('content-type') ?? '').split(';')[0] ?? '';
  const schema = documented.content?.[type]?.schema;
  if (!type.includes('json') || !schema) return;
  if (!ajv.validate(within(schema), answer.body))
    throw new Error(`${said}, not as its schema says: ${ajv.errorsText()}`);
}

/** References lead into the document. */
const within = (schema: Schema): Schema =>
  JSON.parse(JSON.stringify(schema).replaceAll('"#/components/', '"doc#/components/')) as Schema;
