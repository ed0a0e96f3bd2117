// Parts of a catalogue from tables: read and checked whole, into a draft of the next edition. A
// sheet replaces the rows of the profiles or fasteners it names; others keep theirs. Nothing is
// recorded here: a person publishes the draft with a reason.

import type { Catalogue, LoadChart } from '../contract/catalogue.js';
import { chartNotes } from './chart-checks.js';
import { placedChartFaults, rowFaults, type Incoming } from './check-rows.js';
import type { Line, Part, Sheet, SheetFault } from './parts.js';
import { priced } from './prices.js';
import { readLines } from './read-lines.js';
import {
  fastenerRows,
  fastenerTestRows,
  productFaults,
  profileRows,
  widthFaults,
  withProducts,
} from './read-products.js';
import { assemblyRows, chartRows, madeRows, type Placed } from './read-rows.js';
import { termFaults, termRows, withTerms } from './read-terms.js';

export interface ImportEdition {
  readonly edition: number;
  readonly in_force_from: string;
  readonly summary: string;
}
export interface PartChange {
  readonly part: Part;
  readonly profile: string;
  readonly before: number;
  readonly after: number;
}
export type CatalogueImport =
  | { readonly ok: false; readonly faults: readonly SheetFault[] }
  | {
      readonly ok: true;
      readonly draft: Catalogue;
      readonly changes: readonly PartChange[];
      /** What is unusual and may be right all the same. */
      readonly notes: readonly string[];
    };

export function importCatalogue(
  sheets: readonly Sheet[],
  current: Catalogue,
  next: ImportEdition,
): CatalogueImport {
  const twice = sheets.filter(
    ({ part }, i) => sheets.findIndex((each) => each.part === part) !== i,
  );
  if (twice.length > 0)
    return refuse(
      twice.map(({ part }) => ({
        sheet: part,
        row: 1,
        column: '',
        message: 'this sheet stands twice',
      })),
    );
  const read = new Map(sheets.map((sheet) => [sheet.part, readLines(sheet)]));
  const faults = [...read.values()].flatMap((each) => each.faults);
  if (faults.length > 0) return refuse(faults);
  const lines = (part: Part): readonly Line[] => read.get(part)?.lines ?? [];
  return drafted(lines, current, next);
}

function drafted(
  lines: (part: Part) => readonly Line[],
  current: Catalogue,
  next: ImportEdition,
): CatalogueImport {
  const [profiles, fasteners, tests] = [
    profileRows(lines('profiles')),
    fastenerRows(lines('fasteners')),
    fastenerTestRows(lines('fastener-tests')),
  ];
  const [charts, made, assemblies] = [
    chartRows(lines('charts')),
    madeRows(lines('made')),
    assemblyRows(lines('assemblies')),
  ];
  const terms = termRows(lines('terms'));
  const read = [profiles, fasteners, tests, charts, made, assemblies, terms];
  const products = withProducts(current, profiles.items, fasteners.items, tests.items);
  const known = { ...current, ...products, terms: withTerms(current.terms, terms.items) };
  const named = new Set([
    ...current.fasteners.map(({ id }) => id),
    ...lines('fasteners').map(({ cells }) => cells['fastener'] ?? ''),
  ]);
  const incoming: Incoming = {
    charts: charts.items,
    made: made.items,
    assemblies: assemblies.items,
  };
  const merged = { ...known, ...next, ...replaced(current, incoming) };
  const list = priced(merged.made, lines('prices'));
  const faults = [
    ...read.flatMap((each) => each.faults),
    ...productFaults(profiles.items, fasteners.items, lines('fastener-tests'), named),
    ...termFaults(terms.items),
    ...widthFaults(profiles.items, [...merged.made, ...merged.charts, ...merged.assemblies]),
    ...rowFaults(incoming, known),
    ...list.faults,
  ];
  if (faults.length > 0) return refuse(faults);
  const draft: Catalogue = { ...merged, made: [...list.made] };
  const joined = [
    ...productChanges('profiles', profiles.items, current.profiles),
    ...productChanges('fasteners', fasteners.items, current.fasteners),
  ];
  return {
    ok: true,
    draft,
    changes: [...joined, ...changesOf(incoming, lines('prices'), current)],
    notes: chartNotes(draft.charts),
  };
}

const productChanges = (
  part: 'profiles' | 'fasteners',
  placed: readonly Placed<{ readonly id: string }>[],
  before: readonly { readonly id: string }[],
): readonly PartChange[] =>
  placed.map(({ item }) => ({
    part,
    profile: item.id,
    before: before.some(({ id }) => id === item.id) ? 1 : 0,
    after: 1,
  }));

/** Charts by themselves, checked against each other but not against a catalogue. */
export function importCharts(
  rows: Sheet['rows'],
):
  | { readonly ok: true; readonly charts: readonly LoadChart[] }
  | { readonly ok: false; readonly faults: readonly SheetFault[] } {
  const { lines, faults } = readLines({ part: 'charts', rows });
  if (faults.length > 0) return { ok: false, faults };
  const read = chartRows(lines);
  const wrong = [...read.faults, ...placedChartFaults(read.items)];
  return wrong.length > 0
    ? { ok: false, faults: wrong }
    : { ok: true, charts: read.items.map(({ item }) => item) };
}

const refuse = (faults: readonly SheetFault[]): CatalogueImport => ({ ok: false, faults });

type Parted = Pick<Catalogue, 'charts' | 'made' | 'assemblies'>;

function replaced(current: Catalogue, incoming: Incoming): Parted {
  const part = <T extends { readonly profile: string }>(
    before: readonly T[],
    placed: readonly { readonly item: T }[],
  ): T[] => {
    const named = new Set(placed.map(({ item }) => item.profile));
    return [
      ...before.filter(({ profile }) => !named.has(profile)),
      ...placed.map(({ item }) => item),
    ];
  };
  return {
    charts: part(current.charts, incoming.charts),
    made: part(current.made, incoming.made),
    assemblies: part(current.assemblies, incoming.assemblies),
  };
}

function changesOf(
  incoming: Incoming,
  prices: readonly Line[],
  current: Catalogue,
): readonly PartChange[] {
  const count = (rows: readonly { readonly profile: string }[], profile: string) =>
    rows.filter((row) => row.profile === profile).length;
  const of = (part: 'charts' | 'made' | 'assemblies'): readonly PartChange[] => {
    const rows = incoming[part].map(({ item }) => item);
    return [...new Set(rows.map(({ profile }) => profile))].map((profile) => ({
      part,
      profile,
      before: count(current[part], profile),
      after: count(rows, profile),
    }));
  };
  const priceRows = prices.map(({ cells }) => ({ profile: cells['profile'] ?? '' }));
  const pricedProfiles = [...new Set(priceRows.map(({ profile }) => profile))];
  return [
    ...of('charts'),
    ...of('made'),
    ...of('assemblies'),
    ...pricedProfiles.map((profile): PartChange => ({
      part: 'prices',
      profile,
      before: count(priceRows, profile),
      after: count(priceRows, profile),
    })),
  ];
}
