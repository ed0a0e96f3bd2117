// One job with one surface, opened over HTTP.

import type { Client } from '../service.js';

export async function openOne(client: Client, number?: string): Promise<string> {
  const party = async (kind: 'person' | 'site', name: string) =>
    (await client.send<{ id: string }>('POST', '/parties', { kind, details: { name } })).body.id;
  const opened = await client.send<{ id: string }>('POST', '/jobs', {
    ...(number === undefined ? {} : { number }),
    name: 'A roof',
    site: { id: await party('site', 'A site') },
    parties: { customer: { id: await party('person', 'A customer') } },
    buildings: [{ id: 'b1', name: 'House' }],
    surfaces: [{ id: 's1', building: 'b1', name: 'Roof', kind: 'roof' }],
  });
  if (opened.status !== 201) throw new Error(JSON.stringify(opened.body));
  return opened.body.id;
}
