// Which paint system, color group and metal suit this surface and its surroundings.

import { COMMON_PRACTICE } from '#engineering';
import { measured, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { aSurface, label, type Availability, type ColorGroup, type SurfaceKind } from './words.js';

const SHELTERED: readonly SurfaceKind[] = ['liner', 'interior'];
const QUICK_TO_FADE: readonly ColorGroup[] = ['bright', 'dark', 'metallic'];

export const combinationIsMade = rule({
  id: 'COAT-01',
  version: 1,
  title: 'The combination is made',
  stage: 'coating',
  class: 'availability',
  severity: 'refuse',
  says:
    'Profile, metal, paint system and color group must stand together in the catalogue edition, ' +
    'in stock or as a special run, in at least one thickness.',
  cites: [COMMON_PRACTICE],
  reads: ['combination'],
  settings: {},
  check: ({ combination }) => {
    if (combination === undefined) return unknown('combination');
    const why = notToBeHad(combination);
    return why === undefined ? pass(label(combination)) : fail(`this combination is ${why}`);
  },
});

export const fadesSooner = rule({
  id: 'COAT-02',
  version: 1,
  title: 'Bright, dark and metallic colors fade sooner in SMP and polyester',
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says:
    'Bright, dark and metallic color groups fade visibly sooner in SMP and polyester; ' +
    'PVDF holds them; white and earth tones are at home in either. The color has its own ' +
    'fade term: it is printed and the owner signs.',
  cites: [COMMON_PRACTICE],
  reads: ['kind', 'paint_system', 'color_group'],
  settings: {},
  check: ({ kind, paint_system, color_group }) => {
    if (kind === undefined || paint_system === undefined) return unknownOf({ kind, paint_system });
    if (SHELTERED.includes(kind)) return notApplicable(`${aSurface(kind)} sees no sun`);
    if (paint_system === 'bare') return notApplicable('bare metal has no paint to fade');
    if (paint_system === 'PVDF') return pass();
    if (color_group === undefined) return unknown('color_group');
    if (!QUICK_TO_FADE.includes(color_group)) return pass();
    return fail(
      `a ${label(color_group)} color in ${paint_system} fades visibly sooner; PVDF holds it. ` +
        'Its own fade term is printed and the owner signs',
    );
  },
});

export const bareMetalByTheSea = rule({
  id: 'COAT-03',
  version: 1,
  title: 'Bare zinc or Al-Zn not by breaking salt water',
  stage: 'coating',
  class: 'compatibility',
  severity: 'refuse',
  says:
    "Bare zinc-coated or 55 % Al-Zn steel does not stand within the warranty document's distance " +
    'of breaking salt water.',
  cites: [COMMON_PRACTICE],
  reads: ['metal', 'paint_system', 'water', 'water_distance_ft', 'warranty_water_distance_ft'],
  settings: {},
  check: ({ metal, paint_system, water, water_distance_ft, warranty_water_distance_ft }) => {
    if (metal === undefined || paint_system === undefined)
      return unknownOf({ metal, paint_system });
    if (metal !== 'steel' || paint_system !== 'bare') return notApplicable('not bare coated steel');
    if (water === undefined) return unknown('water');
    if (water !== 'breaking-surf') return notApplicable('no breaking salt water was recorded');
    if (water_distance_ft === undefined) return unknown('water_distance_ft');
    if (warranty_water_distance_ft === undefined) return unknown('warranty_water_distance_ft');
    const away = recorded('distance to breaking surf', water_distance_ft, 'ft');
    const least = recorded("warranty document's distance", warranty_water_distance_ft, 'ft');
    const left = measured(least, water_distance_ft - warranty_water_distance_ft, 'ft', 0);
    if (water_distance_ft > warranty_water_distance_ft) return pass(undefined, [away, least], left);
    return fail(
      `bare metal ${text(away)} from breaking surf lies within the ${text(least)} of the ` +
        'warranty document',
      [away, least],
      left,
    );
  },
});

export const COATING_RULES = [combinationIsMade, fadesSooner, bareMetalByTheSea] as const;

/** Why a standing cannot be ordered; undefined where it can. */
export function notToBeHad(standing: Availability): string | undefined {
  if (standing === 'not-made') return 'not made';
  if (standing === 'not-stocked') return 'made, but neither stocked nor run for this office';
  return undefined;
}
