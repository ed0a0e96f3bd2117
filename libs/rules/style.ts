// Which panel may go on this surface at all: slope by code and by the profile's own listing, and
// what may span open framing.

import { cite, COMMON_PRACTICE } from '#engineering';
import type { ProfileFacts } from './facts.js';
import { measured, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf, type Verdict } from './rule.js';
import { aSurface, type SurfaceKind } from './words.js';

/** Surfaces that shed water by their slope. */
const SLOPED: readonly SurfaceKind[] = ['roof', 'mansard', 'canopy'];
export const isSloped = (kind: SurfaceKind): boolean => SLOPED.includes(kind);

export const slopeByCode = rule({
  id: 'STYLE-01',
  version: 1,
  title: 'Slope not under the code minimum',
  stage: 'style',
  class: 'code',
  severity: 'refuse',
  says:
    'A roof may not be flatter than 3 in 12 with lapped panels without sealant, 1/2 in 12 with ' +
    'sealed laps, 1/4 in 12 with standing seam. Lap sealant then goes on the order.',
  cites: [cite('ibc-2018', '1507.4.2'), cite('irc-2018', 'R905.10.2')],
  reads: ['kind', 'slope_per_12', 'profile', 'lap_sealant'],
  settings: {},
  check: ({ kind, slope_per_12, profile, lap_sealant }) => {
    if (kind === undefined || profile === undefined) return unknownOf({ kind, profile });
    if (!isSloped(kind)) return notApplicable(`${aSurface(kind)} has no minimum slope`);
    if (profile.family === 'metal-shingle')
      return notApplicable('metal shingles have their own rule');
    if (slope_per_12 === undefined) return unknown('slope_per_12');
    if (profile.family === 'standing-seam') {
      return notUnder(slope_per_12, 0.25, 'the code minimum for standing seam');
    }
    const sealed = notUnder(
      slope_per_12,
      0.5,
      'the code minimum for lapped panels with lap sealant',
    );
    if (slope_per_12 >= 3) return pass();
    if (sealed.outcome === 'fail') return sealed;
    if (lap_sealant === undefined) return unknown('lap_sealant');
    return lap_sealant
      ? pass('lap sealant is needed at this slope and goes on the order')
      : notUnder(slope_per_12, 3, 'the code minimum for lapped panels without lap sealant');
  },
});

export const slopeByListing = rule({
  id: 'STYLE-02',
  version: 1,
  title: "Slope not under the profile's listing",
  stage: 'style',
  class: 'availability',
  severity: 'refuse',
  says: 'A profile is not laid flatter than the least slope of its own listing.',
  cites: [COMMON_PRACTICE],
  reads: ['kind', 'slope_per_12', 'profile'],
  settings: {},
  check: ({ kind, slope_per_12, profile }) => {
    if (kind === undefined || profile === undefined) return unknownOf({ kind, profile });
    if (!isSloped(kind)) return notApplicable(`${aSurface(kind)} has no minimum slope`);
    if (slope_per_12 === undefined) return unknown('slope_per_12');
    return notUnder(
      slope_per_12,
      profile.least_slope_per_12,
      `the listed least slope of ${profile.name}`,
    );
  },
});

export const spansOnlyIfStructural = rule({
  id: 'STYLE-03',
  version: 1,
  title: 'A non-structural profile does not span',
  stage: 'style',
  class: 'compatibility',
  severity: 'refuse',
  says: 'Only structural profiles span open framing; all others need a solid deck.',
  cites: [cite('ufc-3-110-03', '4-1'), COMMON_PRACTICE],
  reads: ['profile', 'open_framing'],
  settings: {},
  check: ({ profile, open_framing }) => {
    if (profile === undefined) return unknown('profile');
    if (profile.structural) return pass();
    if (open_framing === undefined) return unknown('open_framing');
    return open_framing ? fail(nonStructural(profile)) : pass();
  },
});

export const inTheCatalogue = rule({
  id: 'STYLE-04',
  version: 1,
  title: 'The profile stands in the catalogue',
  stage: 'style',
  class: 'availability',
  severity: 'refuse',
  says: 'Only a profile of the catalogue edition in force can be chosen.',
  cites: [COMMON_PRACTICE],
  reads: ['profile'],
  settings: {},
  check: ({ profile }) => {
    if (profile === undefined) return unknown('profile');
    return profile.listed
      ? pass()
      : fail(`${profile.name} does not stand in this catalogue edition`);
  },
});

export const STYLE_RULES = [
  slopeByCode,
  slopeByListing,
  spansOnlyIfStructural,
  inTheCatalogue,
] as const;

const nonStructural = (profile: ProfileFacts): string =>
  `${profile.name} is not a structural profile and may not span open framing`;

/** Fails where a slope is under its least, with both numbers; a slope is printed as recorded. */
export function notUnder(slope: number, least: number, whatLeast: string): Verdict {
  const figures = [
    recorded('slope', slope, 'in 12'),
    recorded('least slope', least, 'in 12'),
  ] as const;
  const left = measured(figures[1], slope - least, 'in 12', 3);
  if (slope >= least) return pass(undefined, figures, left);
  return fail(
    `a slope of ${text(figures[0])} is under ${text(figures[1])}, ${whatLeast}`,
    figures,
    left,
  );
}
