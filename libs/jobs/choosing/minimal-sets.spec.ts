// Duality: what keeps an outcome meets what changes it, and the other way round.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { hittingSets, minimalOnly } from './minimal-sets.js';

const sets = fc.array(
  fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), { minLength: 1, maxLength: 4 }),
  { maxLength: 6 },
);
const names = (family: readonly (readonly string[])[]): readonly string[] =>
  family.map((set) => [...set].sort().join('')).sort();

function bySize(family: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const all = Array.from({ length: 64 }, (_, mask) =>
    ['a', 'b', 'c', 'd', 'e', 'f'].filter((_each, i) => mask & (1 << i)),
  );
  const hits = (set: readonly string[]): boolean =>
    family.every((each) => each.some((key) => set.includes(key)));
  return all.filter(
    (set) => hits(set) && set.every((key) => !hits(set.filter((each) => each !== key))),
  );
}

describe('minimal hitting sets', () => {
  test('are those that brute force finds', () => {
    fc.assert(
      fc.property(sets, (family) => {
        expect(names(hittingSets(family, 1000) ?? [])).toEqual(names(bySize(family)));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  test('of their hitting sets are the minimal sets again', () => {
    fc.assert(
      fc.property(sets, (family) => {
        const back = hittingSets(hittingSets(family, 1000) ?? [], 1000) ?? [];
        expect(names(back)).toEqual(names(minimalOnly(family, (each) => each)));
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test('of nothing is the empty set; of too many there is no answer', () => {
    expect(hittingSets([], 1)).toEqual([[]]);
    expect(
      hittingSets(
        [
          ['a', 'b'],
          ['c', 'd'],
        ],
        3,
      ),
    ).toBeUndefined();
  });
});

test('of two sets with the same keys the first stays', () => {
  const two = [
    { keys: ['b', 'a'], n: 1 },
    { keys: ['a', 'b'], n: 2 },
    { keys: ['a', 'b', 'c'], n: 3 },
  ];
  expect(minimalOnly(two, ({ keys }) => keys).map(({ n }) => n)).toEqual([1]);
});
