// What goes in and out of the product: commands, events, the catalogue, evaluations and views, with
// the fact dictionary. This is all the pages know of the rest.

export * from './contract/amounts.js';
export * from './contract/fact-dictionary.js';
export * from './contract/catalogue.js';
export * from './contract/commands-parts.js';
export * from './contract/after-order.js';
export * from './contract/take-off.js';
export * from './contract/take-off-weights.js';
export * from './contract/chosen-field.js';
export * from './contract/prose.js';
export * from './contract/commands.js';
export * from './contract/evaluation.js';
export * from './contract/events.js';
export type * from './contract/decision-record.js';
export type * from './contract/after-order-events.js';
export * from './contract/cause.js';
export * from './contract/views.js';
export * from './contract/rulebook.js';
export * from './contract/load-comparison.js';
export * from './contract/impact.js';
export { PART_NAMES, PART_WORDS, PARTS, type Part } from './catalogue/parts.js';
export * from './contract/after-order-views.js';
export {
  AVAILABILITIES,
  COLOR_GROUPS,
  CONDENSATION_CONTROLS,
  CORROSIVITIES,
  ENCLOSURES,
  FAMILIES,
  HOWS,
  INSIDE_AIR,
  label,
  METALLIC_COATINGS,
  METALS,
  PAINT_SYSTEMS,
  PRIORITIES,
  ROLES,
  STAGES,
  SUBSTRATES,
  SURFACE_KINDS,
  WATERS,
} from '#rules';
export type {
  Availability,
  ColorGroup,
  Finding,
  Priority,
  Role,
  Severity,
  Stage,
  Substrate,
  SurfaceKind,
} from '#rules';
