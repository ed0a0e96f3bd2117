// Deflection limits as span over a number, as settings by edition of the building code: Table
// 1604.3 and its notes for formed metal sheets, from memory, to be confirmed before use.

export interface DeflectionLimits {
  /** Roofing or siding of formed metal sheets, total load: L/60. */
  readonly panelTotal: number;
  /** Secondary members under formed metal roofing, live load: L/150. */
  readonly roofSecondaryLive: number;
  /** Secondary wall members under formed metal siding, wind: L/90. */
  readonly wallSecondaryWind: number;
  /** Of the strength-level cladding wind that may be used for deflection. */
  readonly windFactor: number;
}

const LIMITS: DeflectionLimits = {
  panelTotal: 60,
  roofSecondaryLive: 150,
  wallSecondaryWind: 90,
  windFactor: 0.42,
};

export const BUILDING_CODES = ['ibc-2018', 'ibc-2021'] as const;
export type BuildingCode = (typeof BUILDING_CODES)[number];

export const DEFLECTION_LIMITS: Readonly<Record<BuildingCode, DeflectionLimits>> = {
  'ibc-2018': LIMITS,
  'ibc-2021': LIMITS,
};

export const DEFLECTION_UNCONFIRMED =
  'deflection limits of Table 1604.3 are from memory: edition text to be confirmed';
