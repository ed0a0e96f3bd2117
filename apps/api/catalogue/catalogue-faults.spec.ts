// A drafted catalogue edition is refused with every name that leads nowhere.

import { expect, test } from '@jest/globals';
import { demonstrationCatalogue } from '../../cli/demonstration/catalogue.js';
import { catalogueFaults } from './catalogue-faults.js';

const pointers = (
  change: (draft: ReturnType<typeof demonstrationCatalogue>) => object,
  newest = 0,
) =>
  catalogueFaults({ ...demonstrationCatalogue(), ...change(demonstrationCatalogue()) }, newest).map(
    ({ pointer }) => pointer,
  );

test('the next edition follows the newest', () => {
  expect(pointers(() => ({ edition: 2 }))).toEqual(['/edition']);
  expect(pointers(() => ({ edition: 2 }), 1)).toEqual([]);
});

test('rows of a profile that is not there are named', () => {
  const found = pointers(({ profiles }) => ({
    profiles: profiles.filter(({ id }) => id !== 'flush-12'),
  }));
  expect(found.length).toBeGreaterThan(1);
  expect(found.every((each) => each.endsWith('/profile'))).toBe(true);
});

test('a fastener that is not there, and a missing safety factor', () => {
  const found = pointers(({ assemblies }) => ({
    assemblies: assemblies
      .slice(0, 1)
      .map((each) => ({ ...each, fastener: 'nail', basis: 'ultimate' as const })),
  }));
  expect(found).toEqual(['/assemblies/0/fastener', '/assemblies/0/safety_factor']);
});

test('ids that stand twice', () => {
  const last = demonstrationCatalogue().fasteners.length;
  expect(pointers(({ fasteners }) => ({ fasteners: [...fasteners, fasteners[0]] }))).toEqual([
    `/fasteners/${last}/id`,
  ]);
});
