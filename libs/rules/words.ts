// The trade's words as lists, so that a list and its type cannot part. What a page shows for a
// word is in `LABELS`.

export const SURFACE_KINDS = [
  'roof',
  'wall',
  'soffit',
  'fascia',
  'mansard',
  'canopy',
  'liner',
  'interior',
] as const;
export type SurfaceKind = (typeof SURFACE_KINDS)[number];

export const STAGES = ['style', 'coating', 'hazards', 'substrate', 'gauge', 'sign-off'] as const;
export type Stage = (typeof STAGES)[number];

/** Where rules are asked: the six stages, then the gates of the job. */
export const GATES = [...STAGES, 'order', 'delivery', 'warranty', 'claim'] as const;
export type Gate = (typeof GATES)[number];

export const FAMILIES = [
  'standing-seam',
  'flush-wall',
  'corrugated',
  'ribbed',
  'deep-rib',
  'metal-shingle',
] as const;
export type Family = (typeof FAMILIES)[number];

export const SEAMS = ['snap-lock', 'mechanical', 'screw-down'] as const;
export type Seam = (typeof SEAMS)[number];

export const METALS = ['steel', 'aluminum', 'copper'] as const;
export type Metal = (typeof METALS)[number];

export const METALLIC_COATINGS = ['AZ50', 'AZ55', 'AZ60', 'G60', 'G90', 'G115', 'none'] as const;
export type MetallicCoating = (typeof METALLIC_COATINGS)[number];

export const PAINT_SYSTEMS = ['PVDF', 'SMP', 'polyester', 'bare'] as const;
export type PaintSystem = (typeof PAINT_SYSTEMS)[number];

export const COLOR_GROUPS = [
  'white',
  'light',
  'earth-tone',
  'bright',
  'dark',
  'metallic',
  'textured',
  'print',
  'mill',
] as const;
export type ColorGroup = (typeof COLOR_GROUPS)[number];

export const SOLID_SUBSTRATES = [
  'plywood',
  'osb',
  'tight-boards',
  'steel-deck',
  'insulated-deck',
  'one-shingle-layer',
] as const;
export const OPEN_SUBSTRATES = [
  'purlins',
  'girts',
  'joists',
  'spaced-boards',
  'battens',
  'sub-purlins',
] as const;
export const SUBSTRATES = [...SOLID_SUBSTRATES, ...OPEN_SUBSTRATES] as const;
export type Substrate = (typeof SUBSTRATES)[number];
export const isOpenFraming = (substrate: Substrate): boolean =>
  (OPEN_SUBSTRATES as readonly string[]).includes(substrate);

export const ENCLOSURES = ['enclosed', 'partially-enclosed', 'partially-open', 'open'] as const;
export type Enclosure = (typeof ENCLOSURES)[number];

export const INSIDE_AIR = ['unheated', 'heated', 'humid'] as const;
export type InsideAir = (typeof INSIDE_AIR)[number];

export const CONDENSATION_CONTROLS = [
  'none',
  'blanket-with-retarder',
  'absorbing-fleece',
  'vented-deck',
] as const;
export type CondensationControl = (typeof CONDENSATION_CONTROLS)[number];

export const WATERS = ['none', 'breaking-surf', 'bay', 'brackish'] as const;
export type Water = (typeof WATERS)[number];

export const CORROSIVITIES = ['C1', 'C2', 'C3', 'C4', 'C5', 'CX'] as const;
export type Corrosivity = (typeof CORROSIVITIES)[number];

export const RISK_CATEGORIES = ['I', 'II', 'III', 'IV'] as const;
export type RiskCategory = (typeof RISK_CATEGORIES)[number];

export const PRIORITIES = [
  'long-life',
  'best-appearance',
  'value',
  'dent-resistance',
  'quick-delivery',
  'low-weight',
] as const;
export type Priority = (typeof PRIORITIES)[number];

export const AVAILABILITIES = ['stock', 'special-run', 'not-stocked', 'not-made'] as const;
export type Availability = (typeof AVAILABILITIES)[number];

export const SNOW_RETENTIONS = ['none', 'clamped', 'pierced'] as const;
export type SnowRetention = (typeof SNOW_RETENTIONS)[number];

/** What stays of the old roof under a new one. */
export const OLD_ROOFS = ['none', 'sound', 'wet-or-rotten', 'slate-or-tile'] as const;
export type OldRoof = (typeof OLD_ROOFS)[number];

export const FASTENER_METALS = ['galvanized', 'stainless', 'aluminum', 'copper-alloy'] as const;
export type FastenerMetal = (typeof FASTENER_METALS)[number];

export const APPROVALS = ['not-asked', 'pending', 'granted', 'denied'] as const;
export type Approval = (typeof APPROVALS)[number];

export const WARRANTY_TITLES = ['limited', 'full'] as const;
export type WarrantyTitle = (typeof WARRANTY_TITLES)[number];

/** How a fact is known, weakest first. An order may not rest on an assumption. */
export const HOWS = ['assumed', 'told', 'measured', 'document'] as const;
export type How = (typeof HOWS)[number];

export const ROLES = [
  'office',
  'project-manager',
  'crew-lead',
  'engineer',
  'warranty-reviewer',
  'standards-manager',
  'administrator',
  'customer',
] as const;
export type Role = (typeof ROLES)[number];

/** What a page shows for a word; a word not named here is shown with its dashes as spaces. */
const LABELS: Readonly<Record<string, string>> = {
  'sign-off': 'Engineer sign-off',
  osb: 'OSB',
  'one-shingle-layer': 'over one layer of shingles',
  'steel-deck': 'steel deck',
  'insulated-deck': 'deck with rigid insulation',
  'earth-tone': 'earth tone',
  mill: 'mill finish',
  bare: 'bare metal',
  'service-50yr': 'service level, 50 years',
};

export const label = (word: string): string => LABELS[word] ?? word.replaceAll('-', ' ');

/** "a roof", "an interior". */
export const aSurface = (kind: SurfaceKind): string =>
  kind === 'interior' ? `an ${kind}` : `a ${kind}`;

const UNIT_AT_THE_END = /_(in|ft|psf|mph|per_12|squares|per_square_usd|years)$/;

/** A fact's key as a page shows it: "support_spacing_in" is "support spacing". */
export const factLabel = (key: string): string =>
  key.replace(UNIT_AT_THE_END, '').replaceAll('_', ' ');
