// What else decides a panel for a slope: the warranty's own minimum, metal shingles, which seams
// hold water back at low slopes, and what weathertightness cover accepts.

import { cite, COMMON_PRACTICE } from '#engineering';
import { recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { isSloped, notUnder } from './style.js';
import { aSurface } from './words.js';

const LOW_SLOPE = 3;

export const slopeByWarranty = rule({
  id: 'STYLE-05',
  version: 1,
  title: "Slope not under the warranty's minimum",
  stage: 'style',
  class: 'compatibility',
  severity: 'refuse',
  says:
    'Where weathertightness cover is asked for, the roof is not flatter than the least slope of ' +
    'the warranty document.',
  cites: [COMMON_PRACTICE],
  reads: ['slope_per_12', 'weathertightness_asked', 'warranty_least_slope_per_12'],
  settings: {},
  check: ({ slope_per_12, weathertightness_asked, warranty_least_slope_per_12 }) => {
    if (!weathertightness_asked) return notApplicable('no weathertightness cover is asked for');
    if (slope_per_12 === undefined || warranty_least_slope_per_12 === undefined) {
      return unknownOf({ slope_per_12, warranty_least_slope_per_12 });
    }
    return notUnder(
      slope_per_12,
      warranty_least_slope_per_12,
      'the least of the warranty document',
    );
  },
});

export const shingleSlope = rule({
  id: 'STYLE-06',
  version: 1,
  title: 'Metal shingles not under 3 in 12',
  stage: 'style',
  class: 'code',
  severity: 'refuse',
  says: 'Metal shingles are not laid on a slope under 3 in 12.',
  cites: [cite('ibc-2018', '1507.5.2')],
  reads: ['kind', 'profile', 'slope_per_12'],
  settings: {},
  check: ({ kind, profile, slope_per_12 }) => {
    if (kind === undefined || profile === undefined) return unknownOf({ kind, profile });
    if (profile.family !== 'metal-shingle') return notApplicable('not metal shingles');
    if (!isSloped(kind)) return notApplicable(`${aSurface(kind)} has no minimum slope`);
    if (slope_per_12 === undefined) return unknown('slope_per_12');
    return notUnder(slope_per_12, 3, 'the code minimum for metal shingles');
  },
});

export const waterSheddingSeam = rule({
  id: 'STYLE-07',
  version: 1,
  title: 'Snap-lock seams shed water, they do not hold it back',
  stage: 'style',
  class: 'guidance',
  severity: 'caution',
  says:
    'A snap-lock seam is for slopes of 3 in 12 and steeper, on a solid deck with underlayment; ' +
    'lower roofs take a mechanical seam.',
  cites: [COMMON_PRACTICE],
  reads: ['kind', 'profile', 'slope_per_12', 'open_framing'],
  settings: { least_slope_per_12: LOW_SLOPE },
  check: ({ kind, profile, slope_per_12, open_framing }, { least_slope_per_12 }) => {
    if (kind === undefined || profile === undefined) return unknownOf({ kind, profile });
    if (profile.seam !== 'snap-lock') return notApplicable('not a snap-lock seam');
    if (!isSloped(kind)) return notApplicable(`${aSurface(kind)} sheds no water by slope`);
    if (slope_per_12 === undefined) return unknown('slope_per_12');
    const slope = notUnder(
      slope_per_12,
      least_slope_per_12,
      'the usual least for a snap-lock seam',
    );
    if (slope.outcome === 'fail') return slope;
    if (open_framing === undefined) return unknown('open_framing');
    return open_framing ? fail('a snap-lock seam wants a solid deck with underlayment') : slope;
  },
});

export const sealedLowSlopeSeam = rule({
  id: 'STYLE-08',
  version: 1,
  title: 'Sealed and tested seams on low slopes',
  stage: 'style',
  class: 'guidance',
  severity: 'caution',
  says:
    'Under 3 in 12 a mechanically seamed panel with factory sealant in the seam, tested under ' +
    'static water head, is the sound choice.',
  cites: [cite('ufc-3-110-03', '4-3 and 4-10'), COMMON_PRACTICE],
  reads: ['kind', 'profile', 'slope_per_12'],
  settings: { low_slope_per_12: LOW_SLOPE },
  check: ({ kind, profile, slope_per_12 }, { low_slope_per_12 }) => {
    if (kind === undefined || profile === undefined) return unknownOf({ kind, profile });
    if (!isSloped(kind)) return notApplicable(`${aSurface(kind)} sheds no water by slope`);
    if (slope_per_12 === undefined) return unknown('slope_per_12');
    if (slope_per_12 >= low_slope_per_12) return notApplicable('not a low slope');
    if (profile.seam === 'mechanical' && profile.static_head_tested === undefined) {
      return unknown('static head test of the profile');
    }
    if (profile.seam === 'mechanical' && profile.static_head_tested) return pass();
    const figures = [
      recorded('slope', slope_per_12, 'in 12'),
      recorded('low slope under', low_slope_per_12, 'in 12'),
    ] as const;
    return fail(
      `${profile.name} at ${text(figures[0])}, under ${text(figures[1])}, is not a mechanical ` +
        'seam tested under static water head',
      figures,
    );
  },
});

export const coverOnExposedFasteners = rule({
  id: 'STYLE-09',
  version: 1,
  title: 'Weathertightness cover and exposed fasteners',
  stage: 'style',
  class: 'guidance',
  severity: 'caution',
  says:
    'Exposed fasteners pierce the sheet; where the owner asks for weathertightness cover, many ' +
    'warrantors accept only concealed fasteners.',
  cites: [cite('ufc-3-110-03', '4-1'), COMMON_PRACTICE],
  reads: ['profile', 'weathertightness_asked'],
  settings: {},
  check: ({ profile, weathertightness_asked }) => {
    if (!weathertightness_asked) return notApplicable('no weathertightness cover is asked for');
    if (profile === undefined) return unknown('profile');
    return profile.fastening === 'concealed'
      ? pass()
      : fail(`${profile.name} has exposed fasteners though weathertightness cover is asked for`);
  },
});

export const STYLE_ADVICE_RULES = [
  slopeByWarranty,
  shingleSlope,
  waterSheddingSeam,
  sealedLowSlopeSeam,
  coverOnExposedFasteners,
] as const;
