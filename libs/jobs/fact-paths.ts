// Which paths of the record each fact of the rules is made from: what decides, through the rules' own
// declarations, what a change reopens.

import type { FactKey } from '#rules';
import { contentPath, factPath, type FactName, type Path } from './contract/fact-dictionary.js';
import type { Surface } from './job.js';

export type Where = Pick<Surface, 'id' | 'building' | 'kind'>;

const site = (fact: FactName) => () => [factPath('site', null, fact)];
const building = (fact: FactName) => (w: Where) => [factPath('building', w.building, fact)];
const surface =
  (...facts: FactName[]) =>
  (w: Where) =>
    facts.map((fact) => factPath('surface', w.id, fact));
const content =
  (stage: string, ...fields: string[]) =>
  (w: Where) =>
    fields.map((f) => contentPath(w.id, stage, f));
const nowhere = () => [];

/** The kind of a surface, which stands from its first day. */
export const kindPath = (surface_: string): Path => `surface/${surface_}/kind`;
const how = (paths: (w: Where) => readonly Path[]) => (w: Where) =>
  paths(w).map((path) => `${path}#how`);

export const SUBSTRATE_FACTS = [
  'substrate',
  'deck-thickness',
  'support-thickness',
  'wood-specific-gravity',
  'fastener-bite',
  'support-spacings',
  'condensation-control',
  'underlayment',
] as const satisfies readonly FactName[];

const coating = content('coating', 'metal', 'metallic_coating', 'paint_system', 'color_group');

/** Fact key → the paths it is made from. Keys given by the evaluation itself come from nowhere. */
export const PATHS: Readonly<Partial<Record<FactKey, (where: Where) => readonly Path[]>>> = {
  kind: (w) => [kindPath(w.id)],
  slope_per_12: surface('slope'),
  longest_piece_ft: surface('longest-piece'),
  area_squares: surface('area'),
  reroof: surface('reroof'),
  residential: building('residential'),
  priorities: () => ['job/priorities'],
  mean_roof_height_ft: building('mean-roof-height'),
  risk_category: building('risk-category'),
  over_doors_or_walks: surface('over-doors-or-walks'),
  profile: content('style', 'profile', 'width'),
  lap_sealant: content('style', 'lap_sealant'),
  metal: content('coating', 'metal'),
  metallic_coating: content('coating', 'metallic_coating'),
  paint_system: content('coating', 'paint_system'),
  color_group: content('coating', 'color_group'),
  combination: (w) => [...coating(w), ...content('style', 'profile', 'width')(w)],
  warranty_water_distance_ft: coating,
  finish_term_years: coating,
  asked_term_years: surface('asked-term-years'),
  weathertightness_asked: surface('weathertightness-asked'),
  water: site('water'),
  water_distance_ft: site('water-distance'),
  corrosivity: site('corrosivity'),
  animals_or_fertilizer: site('animals-or-fertilizer'),
  copper_or_lead_above: surface('copper-or-lead-above'),
  treated_lumber_contact: surface('treated-lumber-contact'),
  masonry_after_panels: surface('masonry-after-panels'),
  reglet_bare_in_wet_mortar: surface('reglet-bare-in-wet-mortar'),
  corrosive_inside_protected: surface('corrosive-inside-protected'),
  cool_roof_asked: surface('cool-roof-asked'),
  reflectance_shown: surface('reflectance-shown'),
  trim_bend_radius_t: surface('trim-bend-radius'),
  snow_retention: surface('snow-retention'),
  snow_retention_utilization: surface('snow-retention-utilization'),
  old_roof_left: surface('old-roof-left'),
  framing_sound: surface('framing-sound'),
  fastener_metal: surface('fastener-metal'),
  fixed_lines: surface('fixed-lines'),
  dent_exclusion_shown: surface('dent-exclusion-shown'),
  oil_canning_disclosed: surface('oil-canning-disclosed'),
  warranty_least_slope_per_12: content('style', 'profile'),
  unobstructed_slope_factor_used: content('hazards', 'snow'),
  clip_kind: content('gauge', 'attachment'),
  assembly_hail_class: nowhere,
  option: nowhere,
  zones: nowhere,
  wind_speed_mph: site('wind-speed'),
  ground_snow_psf: site('ground-snow'),
  deep_freeze_or_snow: site('ground-snow'),
  design_stone_in: site('design-stone'),
  class_4_asked: site('class-4-asked'),
  enclosure: building('enclosure'),
  any_side_open: building('any-side-open'),
  doors_open_in_storms: building('doors-open-in-storms'),
  hazards_without_source: content('hazards', 'wind', 'snow'),
  outside_method: content('hazards', 'wind', 'snow'),
  pressures_by_engineer: content('hazards', 'wind', 'snow'),
  unconfirmed_figures: content('hazards', 'wind', 'snow'),
  substrate: surface('substrate'),
  open_framing: surface('substrate'),
  deck_thickness_in: surface('deck-thickness'),
  fastener_bite_in: surface('fastener-bite'),
  support_spacing_in: surface('support-spacings'),
  spacing_measured: how(surface('support-spacings')),
  inside_air: building('inside-air'),
  condensation_control: surface('condensation-control'),
  underlayment: surface('underlayment'),
  substrate_not_measured: how(surface(...SUBSTRATE_FACTS)),
  removes_bracing_sheets: surface('removes-bracing-sheets'),
  framing_added: surface('framing-added'),
  shingle_layers: surface('shingle-layers'),
  sign_off_asked: surface('sign-off-asked'),
  permit_question_answered: surface('permit-question-answered'),
  small_job_acknowledged: surface('small-job-acknowledged'),
};

/** Paths read by these fact keys of a surface, each once. */
export function pathsOf(keys: readonly string[], where: Where): readonly Path[] {
  return [...new Set(keys.flatMap((key) => PATHS[key as FactKey]?.(where) ?? []))];
}
