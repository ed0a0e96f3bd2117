// What must not meet, and fastener metal by roof metal.

import { expect, test } from '@jest/globals';
import { fastenerSuits, incompatibilities, type FastenerMetal } from './compatibility.js';
import { INCOMPATIBILITIES } from './compatibility.table.js';

const severities = (...args: Parameters<typeof incompatibilities>): string[] =>
  incompatibilities(...args).map((each) => each.severity);

test('copper by contact and by run-off, on every coated or light metal', () => {
  for (const metal of ['galvanized', 'al-zn', 'zinc', 'aluminum'] as const) {
    expect(severities(metal, 'copper', 'contact')).toEqual(['refuse']);
    expect(severities(metal, 'copper', 'runoff')).toEqual(['refuse']);
  }
  expect(severities('copper', 'copper', 'contact')).toEqual([]);
  expect(severities('stainless', 'copper', 'runoff')).toEqual([]);
});

test('wet mortar attacks what bears aluminum; cured masonry does not', () => {
  expect(severities('al-zn', 'wet-mortar', 'contact')).toEqual(['refuse']);
  expect(severities('galvanized', 'wet-mortar', 'contact')).toEqual([]);
  expect(severities('al-zn', 'cured-masonry', 'contact')).toEqual([]);
});

test('treated lumber, lead, animals and fertilizer are refused', () => {
  expect(severities('galvanized', 'copper-treated-lumber', 'contact')).toEqual(['refuse']);
  expect(severities('al-zn', 'lead', 'runoff')).toEqual(['refuse']);
  expect(severities('al-zn', 'animal-confinement', 'air')).toEqual(['refuse']);
  expect(severities('zinc', 'fertilizer', 'contact')).toEqual(['refuse']);
});

test('every row can be met and says what to do', () => {
  for (const each of INCOMPATIBILITIES) {
    for (const metal of each.metals) {
      for (const meeting of each.meetings) {
        expect(incompatibilities(metal, each.neighbor, meeting)).toContain(each);
      }
    }
    expect(each.says.length).toBeGreaterThan(20);
  }
});

test('fastener metal by roof metal', () => {
  const suits = (roof: Parameters<typeof fastenerSuits>[1], support: 'aluminum' | 'other') =>
    (
      [
        'galvanized',
        'stainless-300',
        'stainless-other',
        'copper-alloy',
        'aluminum',
        'plain-steel',
      ] as readonly FastenerMetal[]
    ).filter((fastener) => fastenerSuits(fastener, roof, support).suits);
  expect(suits('al-zn', 'other')).toEqual(['galvanized', 'stainless-300', 'stainless-other']);
  expect(suits('galvanized', 'other')).toEqual(['galvanized', 'stainless-300', 'stainless-other']);
  expect(suits('copper', 'other')).toEqual(['stainless-300', 'copper-alloy']);
  expect(suits('aluminum', 'aluminum')).toEqual(['stainless-300', 'stainless-other', 'aluminum']);
  expect(suits('aluminum', 'other')).toEqual(['stainless-300', 'stainless-other']);
});
