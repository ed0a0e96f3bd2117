// The invented catalogue has the shape of a real one and passes the checks of a publication.

import { expect, test } from '@jest/globals';
import { Catalogue } from '#jobs/contract';
import { FAMILIES } from '#rules';
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

const catalogue = demonstrationCatalogue();
const concealed = new Set(
  catalogue.profiles.filter(({ fastening }) => fastening === 'concealed').map(({ id }) => id),
);
const same = (...of: readonly unknown[]) => JSON.stringify(of);
function grouped<T>(all: readonly T[], key: (each: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const each of all) groups.set(key(each), [...(groups.get(key(each)) ?? []), each]);
  return [...groups.values()];
}

test('has profiles of every family, and only steel has a gauge', () => {
  expect(catalogue.profiles.length).toBeGreaterThanOrEqual(26);
  expect(new Set(catalogue.profiles.map(({ family }) => family))).toEqual(new Set(FAMILIES));
  for (const row of [...catalogue.made, ...catalogue.charts])
    expect(row.gauge !== undefined).toBe(row.metal === 'steel');
});

test('every sheet of a concealed panel has a test, and every sheet of a screwed one a chart', () => {
  const capacities = new Set(
    [...catalogue.assemblies, ...catalogue.charts].map((each) =>
      same(each.profile, each.width.v, each.metal, each.thickness.v, 'number' in each),
    ),
  );
  for (const row of catalogue.made) {
    const { profile, width, metal, thickness } = row;
    expect(capacities).toContain(
      same(profile, width.v, metal, thickness.v, concealed.has(profile)),
    );
  }
});

test('a heavier sheet is tested at the spacings of the lighter one, and holds no less', () => {
  const ladders = grouped(
    catalogue.assemblies,
    ({ profile, width, metal, fastener, substrates, attachment_spacing }) =>
      same(profile, width.v, metal, fastener, substrates, attachment_spacing.v),
  );
  for (const ladder of ladders) {
    const sheets = new Set(
      catalogue.made
        .filter(
          ({ profile, metal }) => profile === ladder[0]?.profile && metal === ladder[0]?.metal,
        )
        .map(({ thickness }) => thickness.v),
    );
    expect(new Set(ladder.map(({ thickness }) => thickness.v))).toEqual(sheets);
    const byThickness = [...ladder].sort((a, b) => Number(a.thickness.v) - Number(b.thickness.v));
    const uplift = byThickness.map(({ outward }) => Number(outward.v));
    expect(uplift).toEqual([...uplift].sort((a, b) => a - b));
  }
});

test('closer clips hold more', () => {
  const rows = grouped(
    catalogue.assemblies,
    ({ profile, width, metal, fastener, thickness, substrates }) =>
      same(profile, width.v, metal, fastener, thickness.v, substrates),
  );
  for (const row of rows) {
    const bySpacing = [...row].sort(
      (a, b) => Number(b.attachment_spacing.v) - Number(a.attachment_spacing.v),
    );
    const uplift = bySpacing.map(({ outward }) => Number(outward.v));
    expect(uplift.length).toBeGreaterThan(1);
    expect(new Set(uplift).size).toBe(uplift.length);
    expect(uplift).toEqual([...uplift].sort((a, b) => a - b));
  }
});

test('24 gauge costs 20 to 40 % more than 26 in the same system', () => {
  const steps = catalogue.made
    .filter(({ gauge }) => gauge === '26')
    .flatMap((thin) =>
      catalogue.made
        .filter(
          (row) =>
            row.gauge === '24' &&
            row.profile === thin.profile &&
            row.width.v === thin.width.v &&
            row.paint_system === thin.paint_system &&
            row.metallic_coating === thin.metallic_coating &&
            !row.upcharge,
        )
        .map(({ price }) => Number(price.v) / Number(thin.price.v) - 1),
    );
  expect(steps.length).toBeGreaterThan(10);
  for (const step of steps) expect(step).toBeGreaterThan(0.2);
  for (const step of steps) expect(step).toBeLessThan(0.4);
});

test('some tests have expired, some soon do, a few carry a hail class', () => {
  const expiries = catalogue.assemblies.map(({ expires = '' }) => expires);
  expect(expiries.filter((day) => day < '2026-11-25').length).toBeGreaterThan(0);
  expect(expiries.filter((day) => day > '2026-11-25' && day < '2027-06-30').length).toBeGreaterThan(
    0,
  );
  const classed = catalogue.assemblies.filter(({ hail_class }) => hail_class !== undefined);
  expect(classed.length).toBeGreaterThan(5);
  expect(classed.length).toBeLessThan(catalogue.assemblies.length / 2);
});

test('every color group that is made has a term', () => {
  const has = new Set(
    catalogue.terms.map((each) =>
      same(each.metal, each.metallic_coating, each.paint_system, each.color_group),
    ),
  );
  for (const row of catalogue.made) {
    for (const group of row.color_groups)
      expect(has).toContain(same(row.metal, row.metallic_coating, row.paint_system, group));
  }
});
