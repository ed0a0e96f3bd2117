// One building's surface as the wind calculation asks for it.

import type { AsceEdition } from '../sources.js';
import type { Degrees, Feet, Mph, SquareFeet } from '../units.js';
import type { Enclosure, Exposure } from './exposure.table.js';
import type { RoofShape } from './roof-figure.js';

export interface WindSurfaceInput {
  readonly edition: AsceEdition;
  /** Basic wind speed for the risk category, strength level. */
  readonly V: Mph;
  readonly exposure: Exposure;
  /** Mean roof height; the eave height may be entered where theta <= 10 degrees. */
  readonly h: Feet;
  readonly Kzt: number;
  readonly elevation: Feet;
  readonly enclosure: Enclosure;
  readonly roof: {
    readonly shape: RoofShape;
    readonly theta: Degrees;
    /** Least horizontal dimension of the building, without overhangs. */
    readonly width: Feet;
    readonly length: Feet;
    readonly overhang: boolean;
  };
  readonly areas: readonly SquareFeet[];
  /** Where K_z is entered instead of calculated. */
  readonly Kz?: number;
  /** Parapet all round; 3 ft or more gives zones 2 and 3 the positive of the wall (7-16, 7-22). */
  readonly parapet?: Feet;
}
