// Every fact that can be recorded: where it belongs, its kind and unit, and the words a page asks it
// with.

import {
  APPROVALS,
  CONDENSATION_CONTROLS,
  CORROSIVITIES,
  ENCLOSURES,
  FASTENER_METALS,
  INSIDE_AIR,
  OLD_ROOFS,
  RISK_CATEGORIES,
  SNOW_RETENTIONS,
  SUBSTRATES,
  WATERS,
} from '#rules';

/** `job` holds what the office settles: papers, money, limits; the others what is so on site. */
export type FactOn = 'job' | 'site' | 'building' | 'surface';

export type FactKind =
  | {
      readonly kind: 'amount';
      readonly unit: string;
      readonly least: number;
      readonly most: number;
    }
  | { readonly kind: 'choice'; readonly of: readonly string[] }
  | { readonly kind: 'flag' }
  | { readonly kind: 'text' }
  /** A date, YYYY-MM-DD. */
  | { readonly kind: 'day' }
  | { readonly kind: 'choices'; readonly of: readonly string[] }
  /** Support spacings, each one measured; the worst counts, never the average. */
  | {
      readonly kind: 'spacings';
      readonly unit: 'in';
      readonly least: number;
      readonly most: number;
    };

export type FactDefinition = FactKind & {
  readonly on: FactOn;
  readonly asks: string;
  readonly hint?: string;
};

const amount = (
  on: FactOn,
  unit: string,
  least: number,
  most: number,
  asks: string,
  hint?: string,
) => ({ kind: 'amount', on, unit, least, most, asks, ...(hint ? { hint } : {}) }) as const;
const choice = (on: FactOn, of: readonly string[], asks: string, hint?: string) =>
  ({ kind: 'choice', on, of, asks, ...(hint ? { hint } : {}) }) as const;
const flag = (on: FactOn, asks: string, hint?: string) =>
  ({ kind: 'flag', on, asks, ...(hint ? { hint } : {}) }) as const;
const text = (on: FactOn, asks: string) => ({ kind: 'text', on, asks }) as const;
const day = (on: FactOn, asks: string) => ({ kind: 'day', on, asks }) as const;

export const FACTS = {
  // job
  'proposal-accepted': flag('job', 'Has the customer accepted the proposal in writing?'),
  'deposit-agreed': amount('job', 'usd', 0, 10000000, 'Deposit agreed', '0 where none was agreed'),
  'deposit-received': amount('job', 'usd', 0, 10000000, 'Deposit received'),
  'quote-valid-until': day('job', 'Last day of the quote'),
  permit: choice('job', APPROVALS, 'Permit'),
  'association-approval': choice('job', APPROVALS, "Approval of the owners' association"),
  'truck-limit': amount('job', 'ft', 4, 120, 'Longest piece the truck brings'),
  'site-limit': amount('job', 'ft', 4, 250, 'Longest piece the site takes'),
  'handling-limit': amount('job', 'ft', 4, 250, 'Longest piece the crew lifts'),
  'promised-documents': {
    kind: 'choices',
    on: 'job',
    of: ['paint', 'substrate', 'weathertightness', 'workmanship'],
    asks: 'Warranty documents promised',
    hint: 'none is an answer too',
  },
  'terms-on-file': {
    kind: 'choices',
    on: 'job',
    of: ['paint', 'substrate', 'weathertightness', 'workmanship'],
    asks: "Warranty documents whose supplier's text is on file",
  },
  'weathertightness-approved': flag(
    'job',
    'Did the warrantor approve application and details for weathertightness?',
  ),
  'term-text-given': flag('job', 'Was the term text given to the customer before the sale?'),
  'consumer-product': flag(
    'job',
    'Is it a consumer product (a dwelling that is re-roofed counts)?',
  ),

  // site
  exposure: choice(
    'site',
    ['B', 'C', 'D'],
    'Exposure category',
    'B wooded or built-up, C open, D flat and unobstructed water',
  ),
  'wind-speed': amount(
    'site',
    'mph',
    85,
    250,
    'Basic wind speed',
    'strength level, for the risk category, from the authority',
  ),
  'topographic-factor': amount('site', 'Kzt', 1, 3, 'Topographic factor Kzt', '1 on level ground'),
  elevation: amount('site', 'ft', -300, 12000, 'Ground elevation above sea level'),
  'ground-snow': amount('site', 'psf', 0, 400, 'Ground snow load', 'from the authority or its map'),
  'ground-snow-basis': choice(
    'site',
    ['service-50yr', 'strength'],
    'Basis of the ground snow load',
  ),
  'winter-wind': amount('site', 'W2', 0.1, 1, 'Winter wind parameter W2'),
  'design-stone': amount('site', 'in', 0.25, 4, 'Design hailstone diameter'),
  'class-4-asked': flag('site', 'Does the insurer or owner ask for a class 4 hail rating?'),
  corrosivity: choice('site', CORROSIVITIES, 'Corrosivity of the surroundings'),
  water: choice('site', WATERS, 'Salt or brackish water nearby'),
  'water-distance': amount('site', 'ft', 0, 100000, 'Distance to that water'),
  'animals-or-fertilizer': flag(
    'site',
    'Animal confinement, fertilizer or chemicals under the panels?',
  ),
  'permit-asked': flag('site', 'Does the authority ask for a permit?'),
  'association-asked': flag('site', "Does an owners' association have to approve?"),

  // building
  'mean-roof-height': amount('building', 'ft', 1, 500, 'Mean roof height'),
  width: amount('building', 'ft', 4, 2000, 'Least horizontal dimension'),
  length: amount('building', 'ft', 4, 5000, 'Other horizontal dimension'),
  'roof-shape': choice('building', ['gable', 'hip', 'monoslope', 'flat', 'other'], 'Roof shape'),
  'roof-slope': amount(
    'building',
    'per-12',
    0,
    60,
    'Slope of the main roof (rise in 12)',
    'for walls: their wind zones depend on it',
  ),
  overhang: flag('building', 'Does the roof overhang the walls?'),
  'risk-category': choice('building', RISK_CATEGORIES, 'Risk category'),
  enclosure: choice('building', ENCLOSURES, 'Enclosure'),
  'any-side-open': flag('building', 'Is any side open?'),
  'doors-open-in-storms': flag('building', 'May large doors stand open in a storm?'),
  'inside-air': choice(
    'building',
    INSIDE_AIR,
    'Air inside',
    'humid counts for pools, wash bays, animals',
  ),
  residential: flag('building', 'Is it a dwelling?'),

  // surface
  slope: amount('surface', 'per-12', 0, 60, 'Slope (rise in 12)'),
  area: amount(
    'surface',
    'squares',
    0.1,
    10000,
    'Area in squares',
    'one square is 100 square feet',
  ),
  'longest-piece': amount('surface', 'ft', 0.5, 250, 'Longest panel, eave to ridge'),
  reroof: flag('surface', 'Is there an old roof to come off or stay below?'),
  'shingle-layers': amount('surface', 'layers', 0, 5, 'Layers of shingles staying below'),
  'over-doors-or-walks': flag('surface', 'Does it drain or slide over doors or walks?'),
  'copper-or-lead-above': flag('surface', 'Copper or lead above, touching or draining onto it?'),
  'treated-lumber-contact': choice(
    'surface',
    ['none', 'separated', 'bare'],
    'Contact with treated lumber',
  ),
  'reglet-bare-in-wet-mortar': flag('surface', 'Is a bare reglet flashing set into wet mortar?'),
  'corrosive-inside-protected': flag(
    'surface',
    'Is the underside protected against what is below (coat, ventilation, barrier)?',
  ),
  'cool-roof-asked': flag('surface', 'Is a cool roof asked for by code or owner?'),
  'reflectance-shown': flag('surface', 'Was the reflectance data shown?'),
  'trim-bend-radius': amount(
    'surface',
    't',
    0,
    20,
    'Inside bend radius of brake-formed trim, in sheet thicknesses',
  ),
  'snow-retention': choice('surface', SNOW_RETENTIONS, 'Snow retention'),
  'snow-retention-utilization': amount(
    'surface',
    'ratio',
    0,
    10,
    'Utilization of the snow retention by its own calculation',
  ),
  'old-roof-left': choice('surface', OLD_ROOFS, 'What stays below of the old roof'),
  'framing-sound': flag('surface', 'Was the framing looked at and found sound?'),
  'fastener-metal': choice('surface', FASTENER_METALS, 'Metal of the fasteners'),
  'fixed-lines': amount('surface', 'lines', 0, 10, 'Lines along which the panel is fixed'),
  'dent-exclusion-shown': flag('surface', 'Was the customer shown that hail dents are excluded?'),
  'oil-canning-disclosed': flag('surface', 'Was oil canning disclosed and signed for?'),
  'masonry-after-panels': flag('surface', 'Mortar, stucco or concrete work after the panels?'),
  'weathertightness-asked': flag('surface', 'Is a weathertightness warranty promised?'),
  'asked-term-years': amount('surface', 'years', 1, 60, 'Longest finish term the owner asks for'),
  substrate: choice('surface', SUBSTRATES, 'What the panels lie on'),
  'deck-thickness': amount('surface', 'in', 0.02, 6, 'Deck thickness'),
  'support-thickness': amount('surface', 'in', 0.02, 1, 'Steel thickness of purlins or girts'),
  'support-tensile-strength': amount(
    'surface',
    'ksi',
    30,
    120,
    'Tensile strength F_u of the purlins or girts',
  ),
  'wood-specific-gravity': amount(
    'surface',
    'G',
    0.3,
    0.75,
    'Specific gravity of the wood',
    'from the species, NDS table of assigned values',
  ),
  'fastener-bite': amount('surface', 'in', 0.02, 8, 'How deep the fastener bites'),
  'support-spacings': {
    kind: 'spacings',
    on: 'surface',
    unit: 'in',
    least: 3,
    most: 240,
    asks: 'Spacing of supports along the panel, each one measured',
    hint: 'one line each; name the zone where it differs',
  },
  'condensation-control': choice('surface', CONDENSATION_CONTROLS, 'Condensation control'),
  underlayment: text('surface', 'Underlayment'),
  'removes-bracing-sheets': flag('surface', 'Are sheets stripped that may brace the frame?'),
  'framing-added': flag('surface', 'Is framing added?'),
  'eave-to-ridge': amount('surface', 'ft', 0.5, 500, 'Eave to ridge, measured level'),
  'permit-question-answered': flag(
    'surface',
    'Has the permit question been put to the authority and answered?',
  ),
  'small-job-acknowledged': flag('surface', "Is the customer's written acknowledgment attached?"),
  'chip-accepted': flag('surface', 'Has the customer accepted a physical color chip?'),
  'mixed-finish-accepted': flag(
    'surface',
    'Did the customer sign for mixed finishes or suppliers on this plane?',
  ),
  'sign-off-asked': text('surface', 'Who asks for an engineer, though no rule does'),
} as const satisfies Record<string, FactDefinition>;
