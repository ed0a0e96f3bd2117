// What snow on one surface is found from and what comes out, as typed for the product.

import type { Fault } from '../check.js';
import type { AsceEdition, Citation } from '../sources.js';
import type { Feet, Pcf, Psf } from '../units.js';
import type { DriftPlace, WindwardCap } from './drift.js';
import type { RiskCategory } from './factors.table.js';
import type { NarrowLowerRoof, SlidingSnow } from './sliding.js';
import type { Slope } from './slope.js';
import type { SnowSurface, WarmRoofReading } from './slope-factor.js';
import { unbalancedRequired, type UnbalancedSnow } from './unbalanced.js';

/** A factor and where it came from: a table's row, or "entered". */
export interface Factor {
  readonly value: number;
  readonly from: string;
  readonly cite: Citation;
}

/** How the disputed rules are read. The standing reading is the larger load each time. */
export interface SnowReadings {
  readonly warmRoof722: WarmRoofReading;
  readonly windwardCap722: WindwardCap;
  readonly narrowLowerRoof: NarrowLowerRoof;
}

export const LARGER_READINGS: SnowReadings = {
  warmRoof722: 'no-slippery-when-warm',
  windwardCap722: 'uncapped',
  narrowLowerRoof: 'whole',
};

export interface SnowRoof {
  readonly edition: AsceEdition;
  /** 7-10, 7-16: 50-year service level. 7-22: strength level for the risk category. */
  readonly pg: Psf;
  readonly riskCategory: RiskCategory;
  readonly Ce: Factor;
  readonly Ct: Factor;
  readonly surface: SnowSurface;
  readonly R?: number;
  readonly ventilated?: boolean;
  readonly shape: 'flat' | 'gable' | 'hip' | 'monoslope';
  readonly slope: Slope;
  /** Eave to ridge, horizontal. */
  readonly W: Feet;
  /** 7-22 alone, and there never assumed: asked for unbalanced loads and drifts. */
  readonly W2?: number;
  /** Only where it is entered in place of 0.13 p_g + 14. */
  readonly gamma?: Pcf;
  readonly drift?: Omit<DriftPlace, 'lowerRoof'>;
  /** Length of this roof where a higher roof drifts or sheds onto it. */
  readonly lowerRoof?: Feet;
  /** Eave to ridge of the roof above that sheds onto this one. */
  readonly slidingFrom?: Feet;
}

export interface SnowLoads {
  readonly Ce: number;
  readonly Ct: number;
  readonly Is: number;
  readonly Cs: number;
  readonly gamma_pcf: Pcf;
  readonly pf_psf: Psf;
  /** Null where no least load applies. */
  readonly pm_psf: Psf | null;
  readonly ps_psf: Psf;
  readonly unbalanced: UnbalancedSnow | null;
  readonly drift: DriftLoad | null;
  readonly sliding: SlidingSnow | null;
  readonly rain_on_snow_psf: Psf;
}

export interface DriftLoad {
  readonly hd_ft: Feet;
  readonly pd_psf: Psf;
  readonly width_ft: Feet;
  readonly height_ft: Feet;
  readonly hb_ft: Feet;
  readonly hc_ft: Feet | null;
}

/** Where the edition, the roof and what is asked call for W2. */
export const needsW2 = (roof: SnowRoof): boolean =>
  roof.edition === '7-22' && (roof.drift !== undefined || hasUnbalanced(roof));

export const W2_MISSING: Fault = {
  pointer: '/drift/W2',
  message:
    'is missing: the winter wind parameter of 7-22 for this place, a fraction; it has no default',
};

/** Gable and hip roofs from 1/2:12 to 7:12 have an unbalanced case. */
export const hasUnbalanced = (roof: Pick<SnowRoof, 'shape' | 'slope'>): boolean =>
  (roof.shape === 'gable' || roof.shape === 'hip') && unbalancedRequired(roof.slope.rise);
