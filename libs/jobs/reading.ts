// From a job's record to the facts that rules read. Each fact key names the paths it comes from, so
// that what a stage read, and what a change reopens, follows from the rules' own declarations.

import { isOpenFraming, type FactKey, type How, type Substrate, type SurfaceFacts } from '#rules';
import type { HazardsContent } from './contract/events.js';
import { contentPath, factPath, type Spacing } from './contract/fact-dictionary.js';
import type { Catalogue, Profile } from './contract/catalogue.js';
import { PATHS, SUBSTRATE_FACTS, type Where } from './fact-paths.js';
import type { Lookup } from './lookup.js';

export function surfaceFacts(at: Lookup, where: Where, catalogue: Catalogue): SurfaceFacts {
  const fact = reader(at, where);
  return {
    kind: where.kind,
    ...fromFacts(fact, at, where),
    ...fromStages(at, where, catalogue),
    ...substrateFacts(fact, at, where),
  };
}

type Reader = ReturnType<typeof reader>;
function reader(at: Lookup, where: Where) {
  const read = (key: FactKey): unknown => {
    const path = PATHS[key]?.(where)[0];
    return path === undefined ? undefined : (at(path) ?? undefined);
  };
  return {
    number: (key: FactKey): number | undefined => {
      const value = read(key) as { v: string } | undefined;
      return value === undefined ? undefined : Number(value.v);
    },
    value: <T>(key: FactKey): T | undefined => read(key) as T | undefined,
  };
}

function fromFacts(fact: Reader, at: Lookup, where: Where): SurfaceFacts {
  return {
    slope_per_12: fact.number('slope_per_12'),
    longest_piece_ft: fact.number('longest_piece_ft'),
    area_squares: fact.number('area_squares'),
    reroof: fact.value('reroof'),
    residential: fact.value('residential'),
    priorities: at('job/priorities') as SurfaceFacts['priorities'],
    mean_roof_height_ft: fact.number('mean_roof_height_ft'),
    risk_category: fact.value('risk_category'),
    over_doors_or_walks: fact.value('over_doors_or_walks'),
    asked_term_years: fact.number('asked_term_years'),
    weathertightness_asked: fact.value('weathertightness_asked'),
    water: fact.value('water'),
    water_distance_ft: fact.number('water_distance_ft'),
    corrosivity: fact.value('corrosivity'),
    animals_or_fertilizer: fact.value('animals_or_fertilizer'),
    copper_or_lead_above: fact.value('copper_or_lead_above'),
    treated_lumber_contact: fact.value('treated_lumber_contact'),
    masonry_after_panels: fact.value('masonry_after_panels'),
    reglet_bare_in_wet_mortar: fact.value('reglet_bare_in_wet_mortar'),
    corrosive_inside_protected: fact.value('corrosive_inside_protected'),
    cool_roof_asked: fact.value('cool_roof_asked'),
    reflectance_shown: fact.value('reflectance_shown'),
    trim_bend_radius_t: fact.number('trim_bend_radius_t'),
    snow_retention: fact.value('snow_retention'),
    snow_retention_utilization: fact.number('snow_retention_utilization'),
    old_roof_left: fact.value('old_roof_left'),
    framing_sound: fact.value('framing_sound'),
    fastener_metal: fact.value('fastener_metal'),
    fixed_lines: fact.number('fixed_lines'),
    dent_exclusion_shown: fact.value('dent_exclusion_shown'),
    oil_canning_disclosed: fact.value('oil_canning_disclosed'),
    wind_speed_mph: fact.number('wind_speed_mph'),
    ground_snow_psf: fact.number('ground_snow_psf'),
    deep_freeze_or_snow: snowy(fact.number('ground_snow_psf')),
    design_stone_in: fact.number('design_stone_in'),
    class_4_asked: fact.value('class_4_asked'),
    enclosure: fact.value('enclosure'),
    any_side_open: fact.value('any_side_open'),
    doors_open_in_storms: fact.value('doors_open_in_storms'),
    removes_bracing_sheets: fact.value('removes_bracing_sheets'),
    framing_added: fact.value('framing_added'),
    shingle_layers: fact.number('shingle_layers'),
    sign_off_asked: fact.value('sign_off_asked'),
    permit_question_answered: fact.value('permit_question_answered'),
    small_job_acknowledged: fact.value('small_job_acknowledged'),
    inside_air:
      (at(factPath('building', where.building, 'inside-air')) as SurfaceFacts['inside_air']) ??
      undefined,
  };
}

const snowy = (ground: number | undefined): boolean | undefined =>
  ground === undefined ? undefined : ground > 0;

function fromStages(at: Lookup, where: Where, catalogue: Catalogue): SurfaceFacts {
  const from = <T>(stage: string, field: string): T | undefined =>
    (at(contentPath(where.id, stage, field)) ?? undefined) as T | undefined;
  const profile = catalogue.profiles.find(({ id }) => id === from<string>('style', 'profile'));
  const chosen = {
    metal: from<NonNullable<SurfaceFacts['metal']>>('coating', 'metal'),
    metallic_coating: from<NonNullable<SurfaceFacts['metallic_coating']>>(
      'coating',
      'metallic_coating',
    ),
    paint_system: from<NonNullable<SurfaceFacts['paint_system']>>('coating', 'paint_system'),
    color_group: from<NonNullable<SurfaceFacts['color_group']>>('coating', 'color_group'),
  };
  return {
    ...chosen,
    profile: profile && profileFacts(profile),
    lap_sealant: from('style', 'lap_sealant'),
    ...productFacts(catalogue, profile, from<string>('style', 'width'), chosen),
    ...hazardFacts(
      from<HazardsContent['wind']>('hazards', 'wind'),
      from<HazardsContent['snow']>('hazards', 'snow'),
    ),
  };
}

/** What the catalogue edition says of a profile in a coating: how it is had, and the supplier's terms. */
export function productFacts(
  catalogue: Catalogue,
  profile: Profile | undefined,
  width: string | undefined,
  chosen: Chosen,
): SurfaceFacts {
  const term = catalogue.terms.find(
    (t) =>
      t.metal === chosen.metal &&
      t.metallic_coating === chosen.metallic_coating &&
      t.paint_system === chosen.paint_system &&
      t.color_group === chosen.color_group,
  );
  return {
    warranty_least_slope_per_12:
      profile?.warranty_least_slope && Number(profile.warranty_least_slope.v),
    combination:
      profile && chosen.metal ? combination(catalogue, profile.id, width, chosen) : undefined,
    warranty_water_distance_ft: term?.water_distance && Number(term.water_distance.v),
    finish_term_years: term?.finish_years,
  };
}
type Chosen = Pick<SurfaceFacts, 'metal' | 'metallic_coating' | 'paint_system' | 'color_group'>;

export function profileFacts(profile: Profile): NonNullable<SurfaceFacts['profile']> {
  return {
    id: profile.id,
    name: profile.name,
    family: profile.family,
    fastening: profile.fastening,
    seam: profile.seam,
    structural: profile.structural,
    least_slope_per_12: Number(profile.least_slope.v),
    flat_width_in: Number(profile.flat_width.v),
    striated: profile.striated,
    listed: true,
  };
}

/** The best standing that any thickness of this combination has; no row means it is not made. */
function combination(
  catalogue: Catalogue,
  profile: string,
  width: string | undefined,
  chosen: Chosen,
): SurfaceFacts['combination'] {
  const standing = catalogue.made
    .filter(
      (row) =>
        row.profile === profile &&
        row.width.v === width &&
        row.metal === chosen.metal &&
        row.metallic_coating === chosen.metallic_coating &&
        row.paint_system === chosen.paint_system &&
        row.color_groups.some((group) => group === chosen.color_group),
    )
    .map(({ status }) => status);
  return (
    (['stock', 'special-run', 'not-stocked'] as const).find((best) => standing.includes(best)) ??
    'not-made'
  );
}

function hazardFacts(
  wind: HazardsContent['wind'] | undefined,
  snow: HazardsContent['snow'] | undefined,
): SurfaceFacts {
  if (!wind || !snow) return {};
  const loads = [wind, snow].filter(({ method }) => method !== 'not-applicable');
  return {
    hazards_without_source: [
      ...(wind.source === '' ? ['wind'] : []),
      ...(snow.source === '' ? ['snow'] : []),
    ],
    outside_method: [...wind.outside, ...snow.outside],
    pressures_by_engineer: loads.length > 0 && loads.every(({ by_engineer }) => by_engineer),
    unconfirmed_figures: [...wind.unconfirmed, ...snow.unconfirmed],
    unobstructed_slope_factor_used: snow.slippery,
  };
}

const FIRM: readonly How[] = ['measured', 'document'];

function substrateFacts(fact: Reader, at: Lookup, where: Where): SurfaceFacts {
  const substrate = fact.value<Substrate>('substrate');
  const spacings = at(factPath('surface', where.id, 'support-spacings')) as
    readonly Spacing[] | null;
  const loose = SUBSTRATE_FACTS.filter((name) => {
    const known = at(`${factPath('surface', where.id, name)}#how`) as How | null;
    return known !== null && !FIRM.includes(known);
  });
  const spacingHow = at(`${factPath('surface', where.id, 'support-spacings')}#how`) as How | null;
  return {
    substrate,
    open_framing: substrate === undefined ? undefined : isOpenFraming(substrate),
    deck_thickness_in: fact.number('deck_thickness_in'),
    fastener_bite_in: fact.number('fastener_bite_in'),
    support_spacing_in: spacings ? Math.max(...spacings.map(({ v }) => Number(v))) : undefined,
    spacing_measured: spacings ? FIRM.includes(spacingHow ?? 'assumed') : undefined,
    condensation_control: fact.value('condensation_control'),
    underlayment: fact.value('underlayment'),
    substrate_not_measured: loose,
  };
}
