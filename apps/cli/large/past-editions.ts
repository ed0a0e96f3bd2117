// The editions that were in force over the nine years: the rulebook grew, prices rose. Invented.

import type { Catalogue } from '#jobs/contract';
import { EDITION_1, EDITION_2, type Edition } from '#rules';
import { demonstrationCatalogue } from '../demonstration/catalogue.js';

const LATER = ['GAUGE-12', 'GAUGE-13'];

/** Oldest first. */
export const PAST_RULES: readonly Edition[] = [
  {
    ...EDITION_1,
    number: 1,
    in_force_from: '2017-12-01',
    summary: 'The starting rules, before anybody looked at prices (invented history).',
    entries: EDITION_1.entries.filter(({ rule }) => !LATER.includes(rule)),
  },
  {
    ...EDITION_1,
    number: 2,
    in_force_from: '2020-03-01',
    summary: 'Usual ranges and the price step join (invented history).',
  },
  {
    ...EDITION_1,
    number: 3,
    in_force_from: '2023-05-01',
    summary:
      'After two hard winters: heavy snow from 30 psf, high wind from 120 mph (invented history).',
    entries: EDITION_1.entries.map((entry) =>
      entry.rule === 'GAUGE-08'
        ? { ...entry, settings: { ...entry.settings, high_wind_mph: 120, heavy_snow_psf: 30 } }
        : entry,
    ),
  },
  { ...EDITION_2, number: 4 },
];

const STEPS = [
  ['2017-12-01', 0.62],
  ['2020-02-01', 0.68],
  ['2022-03-01', 0.86],
  ['2024-03-01', 0.94],
  ['2026-01-05', 1],
] as const;

/** The chart of this profile is another one from this edition on: the old one promised more. */
export const REPLACED = { profile: 'rib-36', in_edition: 4, promised: 1.06 } as const;

/** Oldest first: the same profiles, each time at its own prices; one chart was replaced. */
export const pastCatalogues = (): readonly Catalogue[] =>
  STEPS.map(([in_force_from, share], i) => {
    const today = demonstrationCatalogue();
    return {
      ...today,
      edition: i + 1,
      in_force_from,
      summary: `Edition ${i + 1}, invented for the demonstration: no number here is of a real product.`,
      charts: i + 1 < REPLACED.in_edition ? today.charts.map(before) : today.charts,
      made: today.made.map((row) => ({
        ...row,
        price: { ...row.price, v: (Number(row.price.v) * share).toFixed(2) },
      })),
    };
  });

type Chart = Catalogue['charts'][number];

function before(chart: Chart): Chart {
  if (chart.profile !== REPLACED.profile) return chart;
  const more = <A extends { readonly v: string }>(amount: A): A => ({
    ...amount,
    v: (Number(amount.v) * REPLACED.promised).toFixed(1),
  });
  return {
    ...chart,
    rows: chart.rows.map(({ inward, outward, deflection, ...row }) => ({
      ...row,
      inward: more(inward),
      outward: more(outward),
      ...(deflection === undefined ? {} : { deflection: more(deflection) }),
    })),
    source: { ...chart.source, edition: 'first, replaced in 2024', date: '2017-11-01' },
  };
}
