// Finding jobs in the list: by words in number, name, client and site, and by the first letters of a
// number or name; never in another company.

import { beforeAll, expect, test } from '@jest/globals';
import { company, withService, type Client } from '../service.js';

const running = withService();
let ours: Client;
let theirs: Client;

async function open(client: Client, name: string, number: string, customer: string, site: string) {
  const party = async (kind: string, of: string) => ({
    id: (await client.send<{ id: string }>('POST', '/parties', { kind, details: { name: of } }))
      .body.id,
  });
  const answer = await client.send('POST', '/jobs', {
    name,
    number,
    site: await party('site', site),
    parties: { customer: await party('person', customer) },
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
}

beforeAll(async () => {
  ours = (await company(running, 'Ours', { office: ['office'] })).office;
  theirs = (await company(running, 'Theirs', { office: ['office'] })).office;
  await open(ours, 'Barn at the 100% bend', 'A-1', 'Marlow household', 'Sandpiper Lane');
  await open(ours, 'Shed_roof', 'B-2', 'Hollow Creek Farm', 'Marlow Road');
  await open(theirs, 'Barn of somebody else', 'A-1', 'Marlow of another office', 'Elsewhere');
}, 60_000);

const found = async (words: string): Promise<readonly string[]> => {
  const { body } = await ours.get<{ total: number; rows: { number: string }[] }>(
    `/jobs?sort=number&find=${encodeURIComponent(words)}`,
  );
  expect(body.total).toBe(body.rows.length);
  return body.rows.map(({ number }) => number);
};

test.each([
  ['in the name, in any case', 'BARN', ['A-1']],
  ['in the number', 'b-2', ['B-2']],
  ['in the name of client or site', 'marlow', ['A-1', 'B-2']],
  ['with signs that mean something in a pattern', '100%', ['A-1']],
  ['where such a sign would match anything', 'd_r', ['B-2']],
  ['with a sign that stands nowhere', '%%%', []],
  ['of one letter that a name begins with', 's', ['B-2']],
  ['of two letters that a number begins with', 'A-', ['A-1']],
  ['of two letters from the middle', 'om', []],
  ['that stand nowhere here', 'somebody else', []],
])('words %s: %s', async (_, words, numbers) => {
  expect(await found(words)).toEqual(numbers);
});
