// Whether the coating is heavy enough, lasts as long as was asked for, and shows what a cool roof
// or a tight bend asks of it.

import { cite, COMMON_PRACTICE } from '#engineering';
import { measured, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { isSloped } from './style.js';
import { aSurface, label } from './words.js';

export const steelBySaltWater = rule({
  id: 'COAT-04',
  version: 1,
  title: 'Steel by salt water',
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says:
    "Painted steel within the warranty document's distance of breaking surf, and any steel that " +
    'near to a bay or brackish water: aluminum in PVDF, or a thicker film or clear coat, and the ' +
    "supplier's word in writing.",
  cites: [cite('ufgs-07412', 'note on coastal finishes'), cite('ufc-3-110-03', '4-2')],
  reads: ['metal', 'paint_system', 'water', 'water_distance_ft', 'warranty_water_distance_ft'],
  settings: {},
  check: ({ metal, paint_system, water, water_distance_ft, warranty_water_distance_ft }) => {
    if (metal === undefined || paint_system === undefined)
      return unknownOf({ metal, paint_system });
    if (metal !== 'steel') return notApplicable('not steel');
    if (water === undefined) return unknown('water');
    if (water === 'none') return notApplicable('no salt water was recorded');
    if (water === 'breaking-surf' && paint_system === 'bare') {
      return notApplicable('bare metal by breaking surf has its own rule');
    }
    if (water_distance_ft === undefined || warranty_water_distance_ft === undefined) {
      return unknownOf({ water_distance_ft, warranty_water_distance_ft });
    }
    const away = recorded('distance', water_distance_ft, 'ft');
    const least = recorded("warranty document's distance", warranty_water_distance_ft, 'ft');
    const left = measured(least, water_distance_ft - warranty_water_distance_ft, 'ft', 0);
    if (water_distance_ft > warranty_water_distance_ft) return pass(undefined, [away, least], left);
    return fail(
      `steel in ${label(paint_system)} ${text(away)} from ${label(water)}, within the ` +
        `${text(least)} of the warranty document`,
      [away, least],
      left,
    );
  },
});

export const bareAlZnMass = rule({
  id: 'COAT-05',
  version: 1,
  title: 'Bare Al-Zn is AZ55 or heavier',
  stage: 'coating',
  class: 'compatibility',
  severity: 'refuse',
  says: 'Mill-finish 55 % Al-Zn steel is AZ55 or heavier; AZ50 is for painted sheet.',
  cites: [cite('ufgs-07413', 'note on mill finish and factory color')],
  reads: ['metallic_coating', 'paint_system'],
  settings: {},
  check: ({ metallic_coating, paint_system }) => {
    if (metallic_coating === undefined || paint_system === undefined) {
      return unknownOf({ metallic_coating, paint_system });
    }
    if (!metallic_coating.startsWith('AZ')) return notApplicable('not 55 % Al-Zn');
    if (paint_system !== 'bare') return pass();
    return metallic_coating === 'AZ50' ? fail('bare AZ50 is lighter than AZ55') : pass();
  },
});

export const galvanizedRoofMass = rule({
  id: 'COAT-06',
  version: 1,
  title: 'A zinc-coated roof is G90 or heavier',
  stage: 'coating',
  class: 'code',
  severity: 'refuse',
  says: 'Steel roof panels are zinc-coated G90 or heavier, or 55 % Al-Zn coated.',
  cites: [cite('ibc-2018', 'Table 1507.4.3(1), from memory'), cite('ufgs-07412', 'sheet steel')],
  reads: ['kind', 'metal', 'metallic_coating'],
  settings: {},
  check: ({ kind, metal, metallic_coating }) => {
    if (kind === undefined || metal === undefined) return unknownOf({ kind, metal });
    if (metal !== 'steel' || !isSloped(kind)) return notApplicable('not a steel roof');
    if (metallic_coating === undefined) return unknown('metallic_coating');
    if (metallic_coating === 'none') return fail(`uncoated steel on ${aSurface(kind)}`);
    return metallic_coating === 'G60'
      ? fail(`G60 on ${aSurface(kind)} is lighter than G90`)
      : pass();
  },
});

export const termAsked = rule({
  id: 'COAT-07',
  version: 1,
  title: "The asked term is within the color's own term",
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says: 'No longer term is promised than the chalk and fade term of this color in its document.',
  cites: [COMMON_PRACTICE],
  reads: ['paint_system', 'asked_term_years', 'finish_term_years'],
  settings: {},
  check: ({ paint_system, asked_term_years, finish_term_years }) => {
    if (paint_system === undefined) return unknown('paint_system');
    if (paint_system === 'bare') return notApplicable('bare metal has no finish term');
    if (asked_term_years === undefined) return notApplicable('no term was asked for');
    if (finish_term_years === undefined) return unknown('finish_term_years');
    const asked = recorded('asked term', asked_term_years, 'years');
    const given = recorded("the color's own term", finish_term_years, 'years');
    const left = measured(given, finish_term_years - asked_term_years, 'years', 0);
    if (asked_term_years <= finish_term_years) return pass(undefined, [asked, given], left);
    return fail(
      `a term of ${text(asked)} was asked for; this color's own term is ${text(given)}`,
      [asked, given],
      left,
    );
  },
});

export const reflectance = rule({
  id: 'COAT-12',
  version: 1,
  title: 'Reflectance data where heat matters',
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says:
    'A dark color, bare metal (which emits little heat) or a roof in a cool-roof zone: ' +
    'reflectance data are shown to the customer.',
  cites: [cite('ufc-3-110-03', '4-1.2'), COMMON_PRACTICE],
  reads: ['kind', 'paint_system', 'color_group', 'cool_roof_asked', 'reflectance_shown'],
  settings: {},
  check: ({ kind, paint_system, color_group, cool_roof_asked, reflectance_shown }) => {
    if (kind === undefined || paint_system === undefined) return unknownOf({ kind, paint_system });
    if (!isSloped(kind)) return notApplicable('not a roof');
    const why =
      (cool_roof_asked && 'a cool roof is asked for') ||
      (paint_system === 'bare' && 'bare metal emits little heat') ||
      (color_group === 'dark' && 'a dark color takes up heat');
    if (!why) return notApplicable('no dark color, no bare metal, no cool roof asked for');
    if (reflectance_shown === undefined) return unknown('reflectance_shown');
    return reflectance_shown ? pass() : fail(`${why}, and no reflectance data were shown`);
  },
});

export const tightBends = rule({
  id: 'COAT-13',
  version: 1,
  title: 'Bends in Al-Zn are not tight',
  stage: 'coating',
  class: 'guidance',
  severity: 'caution',
  says: 'Brake-formed trim in 55 % Al-Zn has an inside radius of at least two thicknesses.',
  cites: [COMMON_PRACTICE],
  reads: ['metallic_coating', 'trim_bend_radius_t'],
  settings: { least_radius_t: 2 },
  check: ({ metallic_coating, trim_bend_radius_t }, { least_radius_t }) => {
    if (metallic_coating === undefined) return unknown('metallic_coating');
    if (!metallic_coating.startsWith('AZ')) return notApplicable('not 55 % Al-Zn');
    if (trim_bend_radius_t === undefined) return unknown('trim_bend_radius_t');
    const radius = recorded('inside radius', trim_bend_radius_t, 'thicknesses');
    const least = recorded('least radius', least_radius_t, 'thicknesses');
    const left = measured(least, trim_bend_radius_t - least_radius_t, least.u, 1);
    if (trim_bend_radius_t >= least_radius_t) return pass(undefined, [radius, least], left);
    return fail(
      `trim bent to an inside radius of ${text(radius)}, under ${text(least)}, cracks its coating`,
      [radius, least],
      left,
    );
  },
});

export const COATING_MASS_RULES = [
  steelBySaltWater,
  bareAlZnMass,
  galvanizedRoofMass,
  termAsked,
  reflectance,
  tightBends,
] as const;
