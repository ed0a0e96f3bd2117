// A reader of the catalogue sees a profile's charts beside the calculation, as the library gives it.

import { beforeAll, expect, test } from '@jest/globals';
import { compareLoads } from '#jobs';
import type { LoadComparison } from '#jobs/contract';
import { demonstrationCatalogue } from '../../apps/cli/demonstration/catalogue.js';
import { call, company, withService, type Client } from '../service.js';

const running = withService();
const AT = '/catalogue/editions/1/profiles';
let people: Readonly<Record<'standards' | 'crew' | 'others', Client>>;

beforeAll(async () => {
  const ours = await company(running, 'Comparers', {
    standards: ['standards-manager'],
    crew: ['crew-lead'],
  });
  const theirs = await company(running, 'Others', { others: ['standards-manager'] });
  people = { standards: ours.standards, crew: ours.crew, others: theirs.others };
  const catalogue = demonstrationCatalogue();
  const answer = await ours.standards.send('POST', '/catalogue/editions', {
    catalogue,
    reason: 'the first',
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
}, 60_000);

test.each(['standards', 'crew'] as const)('%s gets the comparison', async (who) => {
  const answer = await people[who].get<LoadComparison>(`${AT}/deep-36/loads`);
  expect(answer.status).toBe(200);
  expect(answer.body).toEqual(compareLoads(demonstrationCatalogue(), 'deep-36'));
  expect(answer.body.sheets.some(({ not_calculated }) => not_calculated.length === 0)).toBe(true);
  expect(answer.body.cautions.join(' ')).toMatch(/licensed engineer/);
});

test('a standing seam has none, and says no number', async () => {
  const { body } = await people.standards.get<LoadComparison>(`${AT}/mech-24/loads`);
  expect(body.sheets).toEqual([]);
});

test('what is not there is not found, another company’s edition too; a stranger is refused', async () => {
  expect((await people.standards.get(`${AT}/no-such/loads`)).status).toBe(404);
  expect((await people.standards.get('/catalogue/editions/9/profiles/deep-36/loads')).status).toBe(
    404,
  );
  expect((await people.others.get(`${AT}/deep-36/loads`)).status).toBe(404);
  expect((await call(running.address, 'GET', `${AT}/deep-36/loads`)).status).toBe(401);
});
