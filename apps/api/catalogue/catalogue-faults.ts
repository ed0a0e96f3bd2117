// What is wrong with a drafted catalogue edition: names that lead nowhere or stand twice, and
// charts that cannot be.

import { chartFaults } from '#jobs';
import type { Catalogue } from '#jobs/contract';
import type { Fault } from '../problems.js';

export function catalogueFaults(catalogue: Catalogue, newest: number): readonly Fault[] {
  const { profiles, made, charts, assemblies, fasteners, edition } = catalogue;
  const profileIds = new Set(profiles.map(({ id }) => id));
  const fastenerIds = new Set(fasteners.map(({ id }) => id));
  const unknownProfile = (list: string, rows: readonly { readonly profile: string }[]) =>
    rows.flatMap(({ profile }, i) =>
      profileIds.has(profile)
        ? []
        : [{ pointer: `/${list}/${i}/profile`, message: `there is no profile ${profile}` }],
    );
  return [
    ...(edition === newest + 1
      ? []
      : [{ pointer: '/edition', message: `must be ${newest + 1}, the next one` }]),
    ...twice('profiles', profiles),
    ...twice('charts', charts),
    ...twice('assemblies', assemblies),
    ...twice('fasteners', fasteners),
    ...unknownProfile('made', made),
    ...unknownProfile('charts', charts),
    ...unknownProfile('assemblies', assemblies),
    ...assemblies.flatMap(({ fastener, basis, safety_factor }, i) => [
      ...(fastenerIds.has(fastener)
        ? []
        : [{ pointer: `/assemblies/${i}/fastener`, message: `there is no fastener ${fastener}` }]),
      ...(basis === 'ASD' || safety_factor !== undefined
        ? []
        : [
            {
              pointer: `/assemblies/${i}/safety_factor`,
              message: 'is needed where the basis is ultimate',
            },
          ]),
    ]),
    ...chartFaults(charts).map(({ chart, row, column, message }) => {
      const at = charts.findIndex(({ id }) => id === chart);
      return { pointer: `/charts/${at}/rows/${row}/${column.replace(/_(psf|in)$/, '')}`, message };
    }),
  ];
}

const twice = (list: string, rows: readonly { readonly id: string }[]): readonly Fault[] =>
  rows.flatMap(({ id }, i) =>
    rows.findIndex((each) => each.id === id) === i
      ? []
      : [{ pointer: `/${list}/${i}/id`, message: `${id} stands twice` }],
  );
