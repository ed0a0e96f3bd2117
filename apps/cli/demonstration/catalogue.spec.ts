// The invented catalogue has the shape of a real one and passes the checks of a publication.

import { expect, test } from '@jest/globals';
import { Catalogue } from '#jobs/contract';
import { catalogueFaults } from '../../api/catalogue/catalogue-faults.js';
import { demonstrationCatalogue } from './catalogue.js';

test('every field is what the contract asks for', () => {
  const read = Catalogue.safeParse(demonstrationCatalogue());
  expect(read.error?.issues ?? []).toEqual([]);
});

test('charts, tests and names pass the checks of a publication', () => {
  expect(catalogueFaults(demonstrationCatalogue(), 0)).toEqual([]);
});

test('says everywhere that it is invented', () => {
  const { charts, assemblies, invented } = demonstrationCatalogue();
  expect(invented).toBe(true);
  for (const { source } of [...charts, ...assemblies]) {
    expect(source).toMatchObject({ invented: true, document: expect.stringContaining('invented') });
  }
});

test('no combination is offered without a price', () => {
  const free = demonstrationCatalogue().made.filter(({ price }) => Number(price.v) <= 0);
  expect(free).toEqual([]);
});
