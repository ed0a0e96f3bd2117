// The demonstration's catalogue, widened with copies of its profiles until it has 25: what a company
// with a full catalogue would ask of the same code.

import type { Catalogue } from '#jobs';
import { demonstrationCatalogue } from '../../apps/cli/demonstration/catalogue.js';

const PROFILES = 25;

export function fullCatalogue(): Catalogue {
  const one = demonstrationCatalogue();
  const copies = Math.ceil(PROFILES / one.profiles.length);
  const all = Array.from({ length: copies }, (_, i) => (i === 0 ? one : renamed(one, `-${i + 1}`)));
  return {
    ...one,
    profiles: all.flatMap(({ profiles }) => profiles),
    made: all.flatMap(({ made }) => made),
    charts: all.flatMap(({ charts }) => charts),
    assemblies: all.flatMap(({ assemblies }) => assemblies),
  };
}

function renamed(
  { profiles, made, charts, assemblies, ...rest }: Catalogue,
  suffix: string,
): Catalogue {
  const of = <T extends { readonly profile: string }>(each: T): T => ({
    ...each,
    profile: each.profile + suffix,
  });
  return {
    ...rest,
    profiles: profiles.map((each) => ({ ...each, id: each.id + suffix, name: each.name + suffix })),
    made: made.map(of),
    charts: charts.map((each) => ({ ...of(each), id: each.id + suffix })),
    assemblies: assemblies.map((each) => ({
      ...of(each),
      id: each.id + suffix,
      number: each.number + suffix,
    })),
  };
}
