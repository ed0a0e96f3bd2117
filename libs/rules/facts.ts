// What rules may read of a surface. Every key may be unknown (undefined): a rule that needs it
// then answers "not evaluated" and says what is missing. `libs/jobs` fills these from the record;
// a rule declares the keys it reads, and that declaration decides what a change puts up for
// re-check.

import type { GateFacts } from './gate-facts.js';
import type {
  Availability,
  ColorGroup,
  CondensationControl,
  Corrosivity,
  Enclosure,
  Family,
  FastenerMetal,
  InsideAir,
  Metal,
  MetallicCoating,
  OldRoof,
  PaintSystem,
  Priority,
  RiskCategory,
  Seam,
  SnowRetention,
  Substrate,
  SurfaceKind,
  Water,
} from './words.js';

export interface SurfaceFacts {
  // the surface and its building
  readonly kind?: SurfaceKind | undefined;
  readonly slope_per_12?: number | undefined;
  readonly longest_piece_ft?: number | undefined;
  readonly area_squares?: number | undefined;
  readonly reroof?: boolean | undefined;
  readonly residential?: boolean | undefined;
  readonly priorities?: readonly Priority[] | undefined;
  readonly mean_roof_height_ft?: number | undefined;
  readonly risk_category?: RiskCategory | undefined;
  readonly over_doors_or_walks?: boolean | undefined;

  // style
  readonly profile?: ProfileFacts | undefined;
  readonly lap_sealant?: boolean | undefined;
  /** The least slope that the promised weathertightness document accepts. */
  readonly warranty_least_slope_per_12?: number | undefined;

  // coating
  readonly metal?: Metal | undefined;
  readonly metallic_coating?: MetallicCoating | undefined;
  readonly paint_system?: PaintSystem | undefined;
  readonly color_group?: ColorGroup | undefined;
  /** Best standing of the chosen combination over all thicknesses of the catalogue edition. */
  readonly combination?: Availability | undefined;
  /** From the supplier's document for the chosen coating; undefined where it names none. */
  readonly warranty_water_distance_ft?: number | undefined;
  readonly finish_term_years?: number | undefined;
  readonly asked_term_years?: number | undefined;
  readonly weathertightness_asked?: boolean | undefined;
  readonly cool_roof_asked?: boolean | undefined;
  readonly reflectance_shown?: boolean | undefined;
  /** Least inside radius of brake-formed trim, in sheet thicknesses. */
  readonly trim_bend_radius_t?: number | undefined;

  // site
  readonly water?: Water | undefined;
  readonly water_distance_ft?: number | undefined;
  readonly corrosivity?: Corrosivity | undefined;
  readonly animals_or_fertilizer?: boolean | undefined;
  readonly copper_or_lead_above?: boolean | undefined;
  readonly treated_lumber_contact?: 'none' | 'separated' | 'bare' | undefined;
  readonly masonry_after_panels?: boolean | undefined;
  /** Reglet flashing set in wet mortar without a clear coat. */
  readonly reglet_bare_in_wet_mortar?: boolean | undefined;
  /** Back coat, ventilation, barrier and the supplier's letter, all on file. */
  readonly corrosive_inside_protected?: boolean | undefined;
  readonly deep_freeze_or_snow?: boolean | undefined;

  // hazards
  readonly wind_speed_mph?: number | undefined;
  readonly ground_snow_psf?: number | undefined;
  readonly design_stone_in?: number | undefined;
  readonly class_4_asked?: boolean | undefined;
  readonly enclosure?: Enclosure | undefined;
  readonly any_side_open?: boolean | undefined;
  readonly doors_open_in_storms?: boolean | undefined;
  /** Each hazard value with no source or date, by name. */
  readonly hazards_without_source?: readonly string[] | undefined;
  /** Why a calculation left its method's limits; empty where it did not or values were entered. */
  readonly outside_method?: readonly string[] | undefined;
  /** Whether pressures were entered from an engineer's document. */
  readonly pressures_by_engineer?: boolean | undefined;
  /** Figures used that are marked "edition text to be confirmed". */
  readonly unconfirmed_figures?: readonly string[] | undefined;
  readonly snow_retention?: SnowRetention | undefined;
  /** Demand over tested capacity of the snow retention; undefined where there is no test. */
  readonly snow_retention_utilization?: number | undefined;
  /** Whether the roof snow load was lessened as for an unobstructed slippery surface. */
  readonly unobstructed_slope_factor_used?: boolean | undefined;

  // substrate
  readonly substrate?: Substrate | undefined;
  readonly open_framing?: boolean | undefined;
  readonly deck_thickness_in?: number | undefined;
  readonly fastener_bite_in?: number | undefined;
  /** The worst measured spacing of supports along the panel. */
  readonly support_spacing_in?: number | undefined;
  readonly spacing_measured?: boolean | undefined;
  readonly inside_air?: InsideAir | undefined;
  readonly condensation_control?: CondensationControl | undefined;
  readonly underlayment?: string | undefined;
  /** Substrate facts that are only assumed or told, by name. */
  readonly substrate_not_measured?: readonly string[] | undefined;
  readonly removes_bracing_sheets?: boolean | undefined;
  readonly framing_added?: boolean | undefined;
  readonly shingle_layers?: number | undefined;
  readonly old_roof_left?: OldRoof | undefined;
  readonly framing_sound?: boolean | undefined;
  readonly clip_kind?: 'fixed' | 'floating' | undefined;
  readonly fastener_metal?: FastenerMetal | undefined;

  // the option under test (gauge stage only)
  readonly option?: OptionFacts | undefined;
  readonly zones?: readonly ZoneFacts[] | undefined;
  /** Lines along the run at which the panel is held fast; exactly one is right. */
  readonly fixed_lines?: number | undefined;
  /** The hail class of the exact assembly, 1 to 4; 0 where it has none. */
  readonly assembly_hail_class?: number | undefined;
  readonly dent_exclusion_shown?: boolean | undefined;
  readonly oil_canning_disclosed?: boolean | undefined;

  // sign-off and policy
  /** Who asked for an engineer though no rule does: office, owner, authority. */
  readonly sign_off_asked?: string | undefined;
  /** Whether somebody asked the authority having jurisdiction if this job needs a permit. */
  readonly permit_question_answered?: boolean | undefined;
  /** Whether the customer's written acknowledgment of the small-job path is attached. */
  readonly small_job_acknowledged?: boolean | undefined;
}

export interface ProfileFacts {
  readonly id: string;
  readonly name: string;
  readonly family: Family;
  readonly fastening: 'concealed' | 'exposed';
  readonly seam: Seam;
  readonly structural: boolean;
  readonly least_slope_per_12: number;
  readonly flat_width_in: number;
  readonly striated: boolean;
  readonly listed: boolean;
  /** Tested for leakage under static water head, with factory sealant in the seam. */
  readonly static_head_tested?: boolean | undefined;
}

export interface OptionFacts {
  /** "24", or undefined for aluminum and copper, which have no gauge. */
  readonly gauge?: string | undefined;
  /** Decimal base-metal thickness. */
  readonly thickness_in: number;
  readonly availability: Availability;
  readonly price_per_square_usd?: number | undefined;
  /** Price of the next thinner option in the same system, where the catalogue has one. */
  readonly thinner?:
    { readonly gauge?: string | undefined; readonly price_per_square_usd: number } | undefined;
}

/** One zone's demand against capacity for the option. A missing check has a reason in `missing`. */
export interface ZoneFacts {
  readonly zone: string;
  readonly panel?: { readonly utilization: number; readonly limit_state: string } | undefined;
  readonly attachment?: { readonly utilization: number; readonly limit_state: string } | undefined;
  readonly missing: readonly string[];
  /** True where the capacity is calculated, without a test or a chart. */
  readonly calculated_only: boolean;
}

/** All that a rule may be given: a surface's facts and, at the gates, those of the job. */
export type Facts = SurfaceFacts & GateFacts;
export type FactKey = keyof Facts;
