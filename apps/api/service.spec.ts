// The service answers, signs people in, and opens a job.

import { expect, test } from '@jest/globals';
import { company, call, withService } from '../../tests/service.js';

const running = withService();

test('health and the OpenAPI document are there for anyone', async () => {
  expect((await call(running.address, 'GET', '/health')).body).toEqual({
    ok: true,
    version: 'test',
    lists: [],
    verification: null,
    time_stamp: null,
    clock: null,
  });
  const document = (
    await call<{ openapi: string; paths: object }>(running.address, 'GET', '/openapi.json')
  ).body;
  expect(document.openapi).toBe('3.1.0');
  expect(Object.keys(document.paths).length).toBeGreaterThan(20);
});

test('a job is opened, listed and read', async () => {
  const { office } = await company(running, 'One', { office: ['office'] });
  const person = (kind: string, name: string) =>
    office.send<{ id: string }>('POST', '/parties', { kind, details: { name } });
  const customer = (await person('person', 'A. Customer')).body.id;
  const site = (await person('site', 'A site')).body.id;
  const opened = await office.send<{ id: string; number: string }>('POST', '/jobs', {
    name: 'A barn',
    site: { id: site },
    parties: { customer: { id: customer } },
    buildings: [{ id: 'b1', name: 'Barn' }],
    surfaces: [{ id: 's1', building: 'b1', name: 'Roof', kind: 'roof' }],
  });
  expect(opened.body).toMatchObject({ version: 3, name: 'A barn' });
  expect(opened.status).toBe(201);
  expect(opened.headers.get('etag')).toBe('"3"');
  const list = await office.get<{ total: number; rows: object[] }>('/jobs?find=customer');
  expect(list.body).toMatchObject({
    total: 1,
    rows: [{ number: opened.body.number, customer: 'A. Customer', site: 'A site' }],
  });
});
