// Made rows and terms of the demonstration's catalogue, from its invented tables.

import { GROUPS, OFFERS, PRICES, SHEETS, TERMS, UPCHARGES } from './offers.table.js';
import { PROFILES } from './profiles.table.js';
import { amount } from './steps.js';
import { words } from './text-table.js';

export type Sheet = (typeof SHEETS)[number];

/** What a row says of its sheet: thickness and grade, and the gauge where the metal has one. */
export const sheetOf = ({ metal, gauge, thickness, grade }: Sheet) => ({
  metal,
  grade,
  thickness: amount(thickness, 'in'),
  ...(gauge === '' ? {} : { gauge }),
});

export function profileRow(id: string) {
  const row = PROFILES.find((each) => each.id === id);
  if (!row) throw new Error(`there is no profile ${id}`);
  return row;
}

function sheet(id: string): Sheet {
  const row = SHEETS.find((each) => each.id === id);
  if (!row) throw new Error(`there is no sheet ${id}`);
  return row;
}

/** Every sheet a profile is made in, each once, thinnest first. */
export function sheetsOf(profile: string): readonly Sheet[] {
  const ids = OFFERS.filter((row) => words(row.profiles).includes(profile)).flatMap((row) =>
    words(row.sheets),
  );
  return [...new Set(ids)].map(sheet).sort((a, b) => Number(a.thickness) - Number(b.thickness));
}

export function made() {
  return OFFERS.flatMap((offer) =>
    words(offer.profiles).flatMap((profile) => {
      const { widths, price: factor } = profileRow(profile);
      return words(widths).flatMap((width) =>
        words(offer.sheets).map((of) => madeRow(offer, profile, width, of, factor)),
      );
    }),
  );
}

function madeRow(
  offer: (typeof OFFERS)[number],
  profile: string,
  width: string,
  of: string,
  factor: string,
) {
  const flat = PRICES[offer.system]?.[of];
  if (flat === undefined) throw new Error(`${of} in ${offer.system} has no price`);
  const groups = GROUPS[offer.groups] ?? [];
  const upcharge = Math.max(...groups.map((group) => UPCHARGES[group] ?? 0));
  return {
    profile,
    width: amount(width, 'in'),
    ...sheetOf(sheet(of)),
    ...(sheet(of).gauge === '' ? {} : { gauge_table: 'msg' }),
    metallic_coating: offer.coating,
    paint_system: offer.system,
    color_groups: groups,
    status: offer.status,
    lead_days: Number(offer.days),
    price: amount(Math.round(flat * Number(factor)).toFixed(2), 'usd/square'),
    ...(offer.status === 'special-run' ? { least_order: amount(30, 'squares') } : {}),
    ...(upcharge > 0 ? { upcharge: amount(upcharge.toFixed(2), 'usd/square') } : {}),
  };
}

export function terms() {
  return TERMS.flatMap(({ metal, coatings, system, groups, ...term }) =>
    words(coatings).flatMap((metallic_coating) =>
      words(groups).map((color_group) => {
        const years = Number(term.years);
        return {
          metal,
          metallic_coating,
          paint_system: system,
          color_group,
          finish_years: years,
          ...(term.fade === '' ? {} : { fade: { limit: term.fade, scale: term.scale, years } }),
          ...(term.chalk === '' ? {} : { chalk: { least: term.chalk, years } }),
          water_distance: amount(term.water, 'ft'),
          document:
            system === 'bare'
              ? `Substrate term ${metal} ${metallic_coating} (invented)`
              : `Finish term ${system} (invented)`,
        };
      }),
    ),
  );
}
