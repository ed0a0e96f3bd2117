// What of a catalogue edition concerns one profile: the same answers from shorter lists.

import type { Catalogue } from '../contract/catalogue.js';

const known = new WeakMap<Catalogue, Map<string, Catalogue>>();

/** Rows, charts and tests of the profile alone; profiles, fasteners and terms stay whole. */
export function catalogueOf(catalogue: Catalogue, profile: string): Catalogue {
  const own = known.get(catalogue) ?? new Map<string, Catalogue>();
  known.set(catalogue, own);
  const found = own.get(profile) ?? {
    ...catalogue,
    made: catalogue.made.filter((each) => each.profile === profile),
    charts: catalogue.charts.filter((each) => each.profile === profile),
    assemblies: catalogue.assemblies.filter((each) => each.profile === profile),
  };
  own.set(profile, found);
  return found;
}
